package org.measuredmile.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.desk.cli.Ran.mile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/// What a day's recordings say against each other and against the day, as the command tells it.
class DayChecksCommandTest {
    @TempDir
    private Path folder = Path.of("");

    private static String ride(Instant start) {
        var rows = new StringBuilder("time,speed (m/s)\n");
        for (int i = 0; i <= 400; i++) {
            rows.append(start.plusSeconds(i)).append(String.format(Locale.ROOT, ",%.3f%n", 6 + 2 * Math.sin(i / 9.0)));
        }
        return rows.toString();
    }

    private List<JsonNode> findings(Path day) {
        return mile("reduce", day, "--json")
                .json()
                .valueStream()
                .filter(one -> one.path("trial").isNull())
                .flatMap(one -> one.path("findings").valueStream())
                .toList();
    }

    @Test
    void aCopyAndAFileOfTheDayBeforeAreToldWithTheirNames() throws IOException {
        var day = DayOnDisk.usual(folder);
        var recordings = Files.createDirectories(day.resolve("recordings"));
        Files.writeString(recordings.resolve("a.csv"), ride(Instant.parse("2031-05-04T08:00:00Z")));
        Files.writeString(recordings.resolve("copy.csv"), ride(Instant.parse("2031-05-04T08:00:00Z")));
        Files.writeString(recordings.resolve("old.csv"), ride(Instant.parse("2031-05-03T08:00:00Z")));
        assertThat(findings(day))
                .anySatisfy(finding -> {
                    assertThat(finding.path("code").asString()).isEqualTo("same-file");
                    assertThat(finding.toString()).contains("copy.csv").contains("a.csv");
                })
                .anySatisfy(finding -> {
                    assertThat(finding.path("code").asString()).isEqualTo("other-day");
                    assertThat(finding.toString()).contains("old.csv").contains("2031-05-03");
                });
        assertThat(mile("reduce", day).out())
                .contains("is byte for byte the file \"a.csv\"; it is not used, so that no run counts twice")
                .contains("it begins on 2031-05-03 (Europe/Berlin), the test day is 2031-05-04, 1 day later");
    }
}
