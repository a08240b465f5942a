package org.measuredmile.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.desk.cli.Ran.mile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/// The demo's first days, taken in as files.
class DemoCommandTest {
    @TempDir
    private Path folder = Path.of("");

    @Test
    void theFirstStartWritesFilesAndTakesThemInAndTheSecondFindsThemThere() throws IOException {
        var archive = folder.resolve("demo");
        var first = mile("demo", "--archive", archive, "--only-fill", "--days", "2");
        assertThat(first.exit()).isZero();
        assertThat(first.out()).contains("2 test days");
        assertThat(first.err()).contains("invented");
        try (var days = Files.list(archive.resolve("files/days"))) {
            assertThat(days)
                    .hasSize(2)
                    .allSatisfy(day -> assertThat(day.resolve("day.yaml")).exists());
        }
        var written = Files.getLastModifiedTime(archive.resolve("files/earlier-years.csv"));
        assertThat(mile("demo", "--archive", archive, "--only-fill").out()).contains("2 test days");
        assertThat(Files.getLastModifiedTime(archive.resolve("files/earlier-years.csv")))
                .isEqualTo(written);
        assertThat(mile("recompute", "--archive", archive).exit()).isZero();
        assertThat(mile("standings", "braking.stopping-distance", "--among", "ledger=yes", "--archive", archive)
                        .out())
                .contains("(ledger)");
    }

    @Test
    void aFolderThatNoDemoMadeIsLeftAlone() throws IOException {
        var own = Files.createDirectories(folder.resolve("own"));
        Files.writeString(own.resolve("notes.txt"), "mine");
        var ran = mile("demo", "--archive", own, "--only-fill");
        assertThat(ran.exit()).isEqualTo(2);
        assertThat(own.resolve("notes.txt")).exists();
    }
}
