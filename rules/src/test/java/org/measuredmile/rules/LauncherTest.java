package org.measuredmile.rules;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/// The script that finds a development kit, given invented ones.
@EnabledOnOs({OS.LINUX, OS.MAC})
class LauncherTest {
    private record Ended(int exit, String out, String err) {}

    @TempDir
    private Path folder = Path.of("");

    private Path kit(String name, String version) throws IOException {
        var home = folder.resolve(name);
        Files.createDirectories(home.resolve("bin"));
        Files.writeString(home.resolve("release"), "IMPLEMENTOR=\"Nobody\"\nJAVA_VERSION=\"" + version + "\"\n", UTF_8);
        for (var program : List.of("java", "javac")) {
            var file = Files.writeString(home.resolve("bin").resolve(program), "#!/bin/sh\nexit 1\n", UTF_8);
            assertThat(file.toFile().setExecutable(true)).isTrue();
        }
        return home;
    }

    private Ended find(Map<String, String> environment) throws IOException, InterruptedException {
        var out = folder.resolve("out");
        var err = folder.resolve("err");
        var builder = new ProcessBuilder(
                "/bin/sh", House.ROOT.resolve("build/find-jdk").toString());
        builder.environment().remove("JAVA_HOME");
        builder.environment().putAll(environment);
        int exit = builder.redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start()
                .waitFor();
        return new Ended(
                exit,
                Files.readString(out, UTF_8).strip(),
                Files.readString(err, UTF_8).strip());
    }

    @Test
    void javaHomeIsTakenWhenItIsNewEnough() throws Exception {
        var home = kit("kit-26", "26.0.1");
        assertThat(find(Map.of("JAVA_HOME", home.toString()))).isEqualTo(new Ended(0, home.toString(), ""));
    }

    @Test
    void anOldJavaHomeIsPassedOverForALinkOnThePath() throws Exception {
        var old = kit("kit-8", "1.8.0_402");
        var home = kit("kit-25", "25");
        var onPath = Files.createDirectories(folder.resolve("on-path"));
        Files.createSymbolicLink(onPath.resolve("java"), home.resolve("bin/java"));
        var path = onPath + ":" + System.getenv("PATH");
        var ended = find(Map.of("JAVA_HOME", old.toString(), "PATH", path));
        assertThat(ended).isEqualTo(new Ended(0, home.toRealPath().toString(), ""));
    }

    @Test
    void aRuntimeWithoutACompilerIsPassedOver() throws Exception {
        var runtime = kit("runtime-27", "27");
        Files.delete(runtime.resolve("bin/javac"));
        var ended = find(Map.of("JAVA_HOME", runtime.toString()));
        assertThat(ended.exit()).isZero();
        assertThat(ended.out()).isNotEqualTo(runtime.toString());
        assertThat(Path.of(ended.out()).resolve("bin/javac")).isExecutable();
    }
}
