package org.measuredmile.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.stream.LongStream;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.archive.Revision.Subject;
import org.measuredmile.trial.Figure.InputHash;

/// The archive on a real database in a temporary folder.
class ArchiveTest {
    private static final Instant NOW = Instant.parse("2031-05-05T08:00:00Z");
    private static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);
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

    @Test
    void aDayIsKeptAndReduced() {
        try (var archive = open()) {
            var report = archive.importDay(TapedDay.usual(), ACT);
            assertThat(report.day()).isEqualTo("day-1");
            assertThat(report.revision()).isEqualTo(1);
            assertThat(report.changes()).extracting(FileChange::line).contains("added recordings/log.csv");
            assertThat(report.reduced()).isPresent();
            assertThat(archive.bikes()).extracting(BikeEntry::title).containsExactly("Ostervald Packhorse");
            assertThat(archive.days()).singleElement().satisfies(day -> {
                assertThat(day.state()).isEqualTo(DayEntry.State.REDUCED);
                assertThat(day.date()).isEqualTo("2031-05-04");
                assertThat(day.figures()).isPositive();
            });
            assertThat(archive.figures(FigureQuery.ofBike("packhorse")))
                    .isNotEmpty()
                    .allSatisfy(stored -> {
                        assertThat(stored.accepted()).isTrue();
                        assertThat(stored.configuration()).isEqualTo("firmware 2.1; battery B1; tyres 50-559");
                        assertThat(stored.figure().inputs())
                                .extracting(InputHash::kind)
                                .contains("day", "readings");
                    });
        }
    }

    @Test
    void aStoredFigureComesBackAsItWasReduced() {
        try (var archive = open()) {
            archive.importDay(TapedDay.usual(), ACT);
            var reduced = archive.reduced("day-1").orElseThrow().figures();
            var stored = archive.figures(FigureQuery.ofDay("day-1"));
            assertThat(stored).hasSameSizeAs(reduced);
            for (var one : reduced) {
                var found = stored.stream()
                        .map(StoredFigure::figure)
                        .filter(figure -> figure.key().equals(one.key()))
                        .findFirst()
                        .orElseThrow();
                assertThat(found.value()).isEqualTo(one.value());
                assertThat(found.anyDay()).isEqualTo(one.anyDay());
                assertThat(found.budget()).isEqualTo(one.budget());
                assertThat(found.runs()).isEqualTo(one.runs());
                assertThat(found.inputs()).isEqualTo(one.inputs());
            }
        }
    }

    @Test
    void theSameBytesMakeNoRevision() {
        try (var archive = open()) {
            archive.importDay(TapedDay.usual(), ACT);
            var again = archive.importDay(TapedDay.usual(), ACT);
            assertThat(again.isNew()).isFalse();
            assertThat(again.revision()).isEqualTo(1);
            assertThat(again.reduced()).isPresent();
            assertThat(archive.history()).hasSize(1);
        }
    }

    @Test
    void aCorrectionIsAnotherRevisionAndTheFirstOneStays() {
        try (var archive = open()) {
            archive.importDay(TapedDay.usual(), ACT);
            double before =
                    archive.figures(FigureQuery.LATEST).getFirst().figure().value();
            var corrected = TapedDay.of("day-1", "packhorse", "21.8");
            var report = archive.revise("day-1", corrected, new Act("R1", "misread the tape"));
            assertThat(report.revision()).isEqualTo(2);
            assertThat(report.changes()).extracting(FileChange::line).containsExactly("changed readings.csv");
            double after =
                    archive.figures(FigureQuery.LATEST).getFirst().figure().value();
            assertThat(after).isNotEqualTo(before);
            var first = archive.day("day-1", 1).orElseThrow();
            assertThat(first.folder().texts().get("readings.csv")).isEqualTo(TapedDay.text("readings.csv"));
            assertThat(archive.history(Subject.DAY, "day-1"))
                    .extracting(HistoryEntry::act, HistoryEntry::who, HistoryEntry::why, HistoryEntry::at)
                    .containsExactly(
                            tuple("imported", "M1", "taken in", NOW), tuple("revised", "R1", "misread the tape", NOW));
        }
    }

    @Test
    void onlyADayThatIsThereIsRevised() {
        try (var archive = open()) {
            assertThatThrownBy(() -> archive.revise("day-1", TapedDay.usual(), ACT))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("day-1");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update history set why = 'other'",
                "delete from history",
                "update revision set who = 'other'",
                "delete from revision_file",
                "update revision_file set sha256 = 'other'",
                "delete from revision"
            })
    void whatWasDoneCannotBeChanged(String statement) {
        try (var archive = open()) {
            archive.importDay(TapedDay.usual(), ACT);
            assertThatThrownBy(() -> sql(statement)).isInstanceOf(SQLException.class);
            assertThat(archive.history()).hasSize(1);
        }
    }

    @Test
    void aFailingReductionLosesNothing() throws IOException {
        Reducer failing = day -> {
            throw new IllegalStateException("a bug");
        };
        try (var archive = new Archive(folder, CLOCK, failing)) {
            var report = archive.importDay(TapedDay.usual(), ACT);
            assertThat(report.reduced()).isEmpty();
            assertThat(report.entry().state()).isEqualTo(DayEntry.State.FAILED);
            assertThat(report.entry().message()).contains("a bug");
            assertThat(archive.day("day-1").orElseThrow().folder().texts())
                    .containsOnlyKeys("bike/bike.yaml", "day.yaml", "readings.csv", "runs.csv");
            assertThat(archive.history()).hasSize(1);
        }
        try (var archive = open()) {
            assertThat(archive.renew(Progress.NONE)).containsExactly("day-1");
            assertThat(archive.figures(FigureQuery.LATEST)).isNotEmpty();
            assertThat(archive.recompute(Progress.NONE).differences()).isEmpty();
        }
    }

    @Test
    void aDayWhoseFilesCannotBeUsedIsKeptWithItsFaults() {
        try (var archive = open()) {
            var report = archive.importDay(TapedDay.withoutDate(), ACT);
            assertThat(report.entry().state()).isEqualTo(DayEntry.State.UNUSABLE);
            assertThat(report.entry().findings()).isNotEmpty();
            assertThat(archive.day("no-date")).isPresent();
            assertThat(archive.reduced("no-date")).isEmpty();
        }
    }

    @Test
    void ofABikesDaysTheLatestFigureStands() {
        try (var archive = open()) {
            archive.importDay(TapedDay.of("day-1", "packhorse", "21.2"), ACT);
            archive.importDay(TapedDay.of("day-2", "packhorse", "21.8"), ACT);
            var latest = archive.figures(FigureQuery.standing(""));
            assertThat(latest).extracting(StoredFigure::day).containsOnly("day-2");
            var every = archive.figures(FigureQuery.standing("").ofEveryDay());
            assertThat(every).extracting(StoredFigure::day).contains("day-1", "day-2");
            assertThat(archive.bikes()).flatExtracting(BikeEntry::days).containsExactlyInAnyOrder("day-1", "day-2");
        }
    }

    @Test
    void twoArchivesOnOneFolderWriteWithoutLosingAnything() throws Exception {
        try (var one = open();
                var other = open();
                var threads = Executors.newFixedThreadPool(2)) {
            Callable<Boolean> first = () -> takeFive(one, "a");
            Callable<Boolean> second = () -> takeFive(other, "b");
            for (var done : threads.invokeAll(List.of(first, second))) {
                assertThat(done.get()).isTrue();
            }
            assertThat(one.days()).hasSize(10);
            assertThat(other.history())
                    .extracting(HistoryEntry::id)
                    .containsExactlyElementsOf(
                            LongStream.rangeClosed(1, 10).boxed().toList());
        }
    }

    private static boolean takeFive(Archive archive, String prefix) {
        boolean allNew = true;
        for (int i = 0; i < 5; i++) {
            allNew &= archive.importDay(TapedDay.of(prefix + i, "packhorse", "21.2"), ACT)
                    .isNew();
        }
        return allNew;
    }

    @Test
    void theStateOfFiguresChangesWithEachFigureAndLedgerAndOnlyThen() {
        try (var archive = open();
                var other = open()) {
            var states = new ArrayList<String>();
            states.add(archive.stateOfFigures());
            archive.importDay(TapedDay.usual(), ACT);
            states.add(other.stateOfFigures());
            other.revise("day-1", TapedDay.of("day-1", "packhorse", "21.8"), ACT);
            states.add(archive.stateOfFigures());
            archive.importLedger("earlier.csv", "bike,value\n".getBytes(StandardCharsets.UTF_8), ACT);
            states.add(archive.stateOfFigures());
            assertThat(states).doesNotHaveDuplicates();
            archive.importDay(TapedDay.of("day-1", "packhorse", "21.8"), ACT);
            assertThat(archive.stateOfFigures()).isEqualTo(states.getLast());
        }
    }

    @Test
    void anArchiveOfTheFirstSchemaIsBroughtUpToDate() throws SQLException {
        Flyway.configure()
                .dataSource("jdbc:sqlite:" + folder.resolve("archive.db"), null, null)
                .locations("classpath:org/measuredmile/archive/schema/tables")
                .target("1")
                .load()
                .migrate();
        sql("insert into revision values ('day', 'old', 1, '2030-01-01T00:00:00.000000Z', 'M1', 'earlier')");
        try (var archive = open()) {
            assertThat(archive.day("old")).isPresent();
            assertThatThrownBy(() -> sql("delete from revision")).isInstanceOf(SQLException.class);
        }
    }
}
