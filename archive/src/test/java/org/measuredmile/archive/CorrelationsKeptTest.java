package org.measuredmile.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.Outcome;

/// How figures of a day lean on each other is kept with them, and comes to archives from before by reducing again.
class CorrelationsKeptTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2031-05-05T08:00:00Z"), ZoneOffset.UTC);
    private static final Act ACT = new Act("M1", "taken in");
    private static final double LEANING = -0.123456789012345;

    private static final FigureKey OTHER = new FigureKey("braking.mfdd", Variant.of("surface", "dry"));

    @TempDir
    private Path folder = Path.of("");

    /// Makes the figure of a day lean on another one.
    private static DayReduction.Result leaning(DayFolder day) throws IOException {
        if (!(Reducer.DECLARED.reduce(day) instanceof DayReduction.Result.Reduced reduced)) {
            throw new AssertionError("the usual day is reduced");
        }
        var outcomes = new TreeMap<>(reduced.outcomes());
        outcomes.computeIfPresent(
                TapedDay.TRIAL,
                (id, outcome) ->
                        new Outcome(outcome.figures(), outcome.runs(), outcome.findings(), List.of(said(outcome))));
        return new DayReduction.Result.Reduced(
                reduced.day(), reduced.bike(), reduced.recordings(), outcomes, reduced.findings(), reduced.inputs());
    }

    private static Correlation said(Outcome outcome) {
        return new Correlation(OTHER, outcome.figures().getFirst().key(), LEANING);
    }

    @Test
    void aFigureSaysHowItLeansOnAnotherToTheLastDigit() throws IOException {
        try (var archive = new Archive(folder, CLOCK, CorrelationsKeptTest::leaning)) {
            archive.importDay(TapedDay.usual(), ACT);
            assertThat(archive.figures(FigureQuery.ofDay("day-1")))
                    .singleElement()
                    .satisfies(stored -> assertThat(stored.correlations())
                            .containsExactly(new Correlation(stored.figure().key(), OTHER, LEANING)));
            assertThat(archive.recompute(Progress.NONE).differences()).isEmpty();
        }
    }

    @Test
    void figuresThatStandAloneSaySo() {
        try (var archive = Archive.open(folder, CLOCK)) {
            archive.importDay(TapedDay.usual(), ACT);
            assertThat(archive.figures(FigureQuery.ofDay("day-1")))
                    .singleElement()
                    .satisfies(stored -> {
                        assertThat(stored.json()).contains("\"correlations\":[]");
                        assertThat(stored.correlations()).isEmpty();
                    });
        }
    }

    @Test
    void anArchiveFromBeforeIsReducedAgainAndThenShowsNoDifference() throws IOException, SQLException {
        try (var archive = new Archive(folder, CLOCK, CorrelationsKeptTest::leaning)) {
            archive.importDay(TapedDay.usual(), ACT);
        }
        // What sets the sixth schema's archive apart: it wrote no such key, by the same trials' versions.
        sql("update figure set json = json_remove(json, '$.correlations')");
        sql("delete from flyway_schema_history where version = '7'");

        try (var archive = new Archive(folder, CLOCK, CorrelationsKeptTest::leaning)) {
            assertThat(archive.figures(FigureQuery.ofDay("day-1")))
                    .isNotEmpty()
                    .allSatisfy(stored -> assertThat(stored.correlations()).isEmpty());
            assertThat(archive.renew(Progress.NONE)).containsExactly("day-1");
            assertThat(archive.figures(FigureQuery.ofDay("day-1")))
                    .anySatisfy(stored -> assertThat(stored.correlations()).hasSize(1));
            assertThat(archive.recompute(Progress.NONE).differences()).isEmpty();
            assertThat(archive.renew(Progress.NONE)).isEmpty();
        }
    }

    private void sql(String statement) throws SQLException {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("archive.db"));
                var work = connection.createStatement()) {
            assertThat(work.executeUpdate(statement)).isPositive();
        }
    }
}
