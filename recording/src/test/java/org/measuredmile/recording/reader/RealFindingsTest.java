package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.recording.CrossChecks;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Decoding.Refused;

/// What is found in every real recording, against a table that a person has looked at: an ordinary ride gives no false
/// alarm, and a fault that the collection's own page names is found.
///
/// Source: the collection's SOURCES.md tells each file's quirks. With `-Dapproved.write=true` the table is printed
/// instead.
class RealFindingsTest {
    private static final String TABLE = "/approved/real-findings.txt";

    static List<String> files() {
        return SharedRecordings.files();
    }

    /// One line a finding: of a reader's warnings and refusals level and code; of the checks level, code, place and
    /// message.
    private static String text(String file) {
        StringBuilder lines = new StringBuilder();
        switch (SharedRecordings.decode(file)) {
            case Decoded(Recording recording) -> {
                recording.findings().forEach(finding -> lines.append(brief(finding)));
                CrossChecks.of(recording).forEach(finding -> lines.append(whole(finding)));
            }
            case Refused refused -> refused.findings().forEach(finding -> lines.append(brief(finding)));
        }
        return lines.toString();
    }

    private static String brief(Finding finding) {
        return finding.level() == Finding.Level.NOTE
                ? ""
                : finding.level().name().charAt(0) + " " + finding.code() + "\n";
    }

    private static String whole(Finding finding) {
        String where = finding.place().where();
        return finding.level().name().charAt(0) + " " + finding.code() + (where.isEmpty() ? "" : " at " + where) + ": "
                + finding.message() + "\n";
    }

    private static Map<String, String> approved() {
        Map<String, String> table = new LinkedHashMap<>();
        String file = "";
        for (String line : resource().lines().toList()) {
            if (line.startsWith("== ")) {
                file = line.substring(3);
                table.put(file, "");
            } else if (!line.startsWith("#")) {
                table.merge(file, line + "\n", String::concat);
            }
        }
        return table;
    }

    private static String resource() {
        try (InputStream in = RealFindingsTest.class.getResourceAsStream(TABLE)) {
            return new String(Objects.requireNonNull(in, TABLE).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    @ParameterizedTest(allowZeroInvocations = true)
    @MethodSource("files")
    void whatIsFoundIsWhatAPersonApproved(String file) {
        assertThat(text(file)).as(file).isEqualTo(approved().get(file));
    }

    @Test
    void everyFileOfTheTableIsThere() {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no real recordings");
        StringBuilder table = new StringBuilder();
        SharedRecordings.files()
                .forEach(file -> table.append("== ").append(file).append('\n').append(text(file)));
        if (Boolean.getBoolean("approved.write")) {
            System.out.print(table);
        }
        assertThat(approved().keySet()).containsExactlyInAnyOrderElementsOf(SharedRecordings.files());
    }
}
