package org.measuredmile.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/// Recomputing names whatever was changed behind the archive's back; an export loses nothing.
class RecomputationTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2031-05-05T08:00:00Z"), ZoneOffset.UTC);
    private static final Act ACT = new Act("M1", "taken in");

    @TempDir
    private Path folder = Path.of("");

    private Archive open() {
        return Archive.open(folder, CLOCK);
    }

    private void sql(String statement) throws SQLException {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("archive.db"));
                var work = connection.createStatement()) {
            work.executeUpdate(statement);
        }
    }

    private Path kept(byte[] content) {
        var hash = ContentStore.hashOf(content);
        return folder.resolve("content").resolve(hash.substring(0, 2)).resolve(hash.substring(2));
    }

    private static List<Recomputation.Difference> differences(Archive archive) {
        return archive.recompute(Progress.NONE).differences();
    }

    @Test
    void anUntouchedArchiveShowsNoDifference() {
        try (var archive = open()) {
            archive.importDay(TapedDay.usual(), ACT);
            archive.importDay(TapedDay.withoutDate(), ACT);
            var found = archive.recompute(Progress.NONE);
            assertThat(found.differences()).isEmpty();
            assertThat(found.days()).isEqualTo(2);
            assertThat(found.figures()).isPositive();
        }
    }

    @Test
    void aTamperedFigureIsNamedWithBothValues() throws SQLException {
        try (var archive = open()) {
            archive.importDay(TapedDay.usual(), ACT);
            sql("update figure set value = 4.2");
            assertThat(differences(archive)).isNotEmpty().allSatisfy(difference -> {
                assertThat(difference.day()).isEqualTo("day-1");
                assertThat(difference.subject()).startsWith(TapedDay.TRIAL + ".");
                assertThat(difference.what()).isEqualTo("column value");
                assertThat(difference.stored()).isEqualTo("4.2");
                assertThat(difference.recomputed()).isNotEqualTo("4.2");
            });
        }
    }

    @Test
    void aTamperedFigureTextIsNamedByItsKey() throws SQLException {
        try (var archive = open()) {
            archive.importDay(TapedDay.usual(), ACT);
            sql("update figure set json = replace(json, '\"version\":', '\"version\":7')");
            assertThat(differences(archive))
                    .isNotEmpty()
                    .allSatisfy(difference -> assertThat(difference.what()).isEqualTo("version"));
        }
    }

    @Test
    void aMissingFigureIsNamed() throws SQLException {
        try (var archive = open()) {
            archive.importDay(TapedDay.usual(), ACT);
            sql("delete from figure");
            assertThat(differences(archive))
                    .isNotEmpty()
                    .allSatisfy(difference -> assertThat(difference.stored()).isEqualTo("nothing"));
        }
    }

    @Test
    void aTamperedRecordingIsNamedWithItsHash() throws IOException {
        try (var archive = open()) {
            archive.importDay(TapedDay.usual(), ACT);
            var recording = kept(TapedDay.bytes(TapedDay.RECORDING));
            Files.writeString(recording, TapedDay.RECORDING.replace("19.9", "19.8"));
            assertThat(differences(archive)).singleElement().satisfies(difference -> {
                assertThat(difference.day()).isEqualTo("day-1 revision 1");
                assertThat(difference.subject()).isEqualTo("recordings/log.csv");
                assertThat(difference.stored()).isEqualTo(ContentStore.hashOf(TapedDay.bytes(TapedDay.RECORDING)));
            });
            Files.delete(recording);
            assertThat(differences(archive))
                    .singleElement()
                    .extracting(Recomputation.Difference::recomputed)
                    .isEqualTo("is missing");
        }
    }

    @Test
    void aTamperedFileIsNotReadAndTakingItInAgainMendsIt() throws IOException {
        try (var archive = open()) {
            archive.importDay(TapedDay.usual(), ACT);
        }
        Files.writeString(kept(TapedDay.text("readings.csv")), "nothing of what was there");
        try (var archive = open()) {
            assertThatThrownBy(() -> archive.reduced("day-1"))
                    .isInstanceOf(UncheckedIOException.class)
                    .hasMessageContaining("readings.csv");
            archive.importDay(TapedDay.usual(), ACT);
            assertThat(differences(archive)).isEmpty();
        }
    }

    @Test
    void anExportComesBackWithoutLoss(@TempDir Path target) throws IOException {
        var exported = target.resolve("out");
        try (var archive = open();
                var other = Archive.open(target.resolve("other"), Clock.systemUTC())) {
            archive.importDay(TapedDay.usual(), ACT);
            archive.importDay(TapedDay.of("day-1", "packhorse", "21.8"), new Act("R1", "misread the tape"));
            archive.importDay(TapedDay.of("day-2", "dray", "20.1"), ACT);
            archive.export(exported, Progress.NONE);
            assertThat(exported.resolve("days/day-1/readings.csv")).content().contains("21.8");
            assertThat(exported.resolve("earlier/days/day-1/1/readings.csv"))
                    .content()
                    .contains("21.2");
            ArchiveExport.bringIn(other, exported, Progress.NONE);
            var everyFigure = FigureQuery.LATEST.ofEveryDay();
            assertThat(other.figures(everyFigure))
                    .extracting(StoredFigure::json)
                    .isEqualTo(archive.figures(everyFigure).stream()
                            .map(StoredFigure::json)
                            .toList());
            assertThat(other.history())
                    .usingRecursiveComparison()
                    .ignoringFields("act", "id")
                    .ignoringCollectionOrder()
                    .isEqualTo(archive.history());
            assertThat(other.day("day-1", 1).orElseThrow().folder().texts().get("readings.csv"))
                    .isEqualTo(TapedDay.text("readings.csv"));
        }
    }

    @Test
    void anExportThatWasChangedIsNotTakenIn(@TempDir Path target) throws IOException {
        var exported = target.resolve("out");
        try (var archive = open()) {
            archive.importDay(TapedDay.usual(), ACT);
            archive.export(exported, Progress.NONE);
        }
        Files.writeString(exported.resolve("days/day-1/readings.csv"), "run,reading\n");
        try (var other = Archive.open(target.resolve("other"), CLOCK)) {
            assertThatThrownBy(() -> ArchiveExport.bringIn(other, exported, Progress.NONE))
                    .isInstanceOf(IOException.class)
                    .hasMessageContaining("readings.csv");
        }
    }
}
