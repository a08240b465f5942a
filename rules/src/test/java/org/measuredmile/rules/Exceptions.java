package org.measuredmile.rules;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/// The named exceptions to the tidiness rules: one a line, `rule path reason`. One that excuses nothing is a fault.
final class Exceptions {
    private static final String FILE = "exceptions.txt";

    private record Entry(String rule, String path, int line) {}

    private final List<Entry> entries = new ArrayList<>();

    Exceptions() {
        var lines = readLines();
        for (int at = 0; at < lines.size(); at++) {
            var line = lines.get(at).strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            var parts = line.split(" +", 3);
            if (parts.length < 3) {
                throw new AssertionError(FILE + ":" + (at + 1) + ": no reason; write rule, path and why");
            }
            entries.add(new Entry(parts[0], parts[1], at + 1));
        }
    }

    private static List<String> readLines() {
        try (var stream = Exceptions.class.getResourceAsStream("/" + FILE)) {
            var bytes = Objects.requireNonNull(stream, FILE).readAllBytes();
            return new String(bytes, StandardCharsets.UTF_8).lines().toList();
        } catch (IOException e) {
            throw new UncheckedIOException("reading " + FILE, e);
        }
    }

    /// The faults that no exception excuses, and exceptions that excused nothing.
    List<Fault> apply(List<Fault> faults) {
        var left = new ArrayList<Fault>();
        Set<Entry> used = new LinkedHashSet<>();
        for (var fault : faults) {
            var excuse = entries.stream()
                    .filter(entry ->
                            entry.rule().equals(fault.rule()) && entry.path().equals(fault.path()))
                    .findFirst();
            excuse.ifPresentOrElse(used::add, () -> left.add(fault));
        }
        for (var entry : entries) {
            if (!used.contains(entry)) {
                var what = entry.rule() + " " + entry.path() + " excuses nothing";
                left.add(new Fault("exception", "rules/src/test/resources/" + FILE, entry.line(), what, "delete it"));
            }
        }
        return left;
    }
}
