package org.measuredmile.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/// Other processes, started, waited for and timed.
final class Processes {
    /// Debian's own interpreter, which sees Debian's packages; then the one on the path, which may see others.
    private static final List<String> PYTHONS = List.of("/usr/bin/python3", "python3");
    private static final int NOT_INSTALLED = 69;

    private Processes() {}

    /// What a process printed, and how long it lived by the clock.
    record Ended(String output, double wallMs, int status) {}

    /// Empty where no Python has the library that the script needs.
    static Optional<Ended> python(String... arguments) throws InterruptedException {
        for (String python : PYTHONS) {
            var command = new ArrayList<>(List.of(python));
            command.addAll(List.of(arguments));
            try {
                Ended ended = run(command);
                if (ended.status() != NOT_INSTALLED) {
                    return Optional.of(sound(ended, command));
                }
            } catch (IOException noSuchProgram) {
                continue;
            }
        }
        return Optional.empty();
    }

    static Ended java(List<String> options, Class<?> main, String... arguments)
            throws IOException, InterruptedException {
        var command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(options);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), main.getName()));
        command.addAll(List.of(arguments));
        return sound(run(command), command);
    }

    private static Ended sound(Ended ended, List<String> command) {
        if (ended.status() != 0) {
            throw new IllegalStateException("status " + ended.status() + " of " + command);
        }
        return ended;
    }

    private static Ended run(List<String> command) throws IOException, InterruptedException {
        long began = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        int status = process.waitFor();
        return new Ended(output.strip(), (System.nanoTime() - began) / 1e6, status);
    }
}
