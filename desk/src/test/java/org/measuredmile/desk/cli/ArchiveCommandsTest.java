package org.measuredmile.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.desk.cli.Ran.mile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/// Import, standings, export and recompute, on an archive in a temporary folder.
class ArchiveCommandsTest {
    @TempDir
    private Path folder = Path.of("");

    private Path archive() {
        return folder.resolve("archive");
    }

    private Ran take(Path... days) {
        var words = new java.util.ArrayList<Object>(java.util.List.of("import", "--archive", archive()));
        words.addAll(java.util.List.of(days));
        return mile(words.toArray());
    }

    private Path slow(String name, String bike, String entryMph) throws IOException {
        return DayOnDisk.write(folder, name, bike, entryMph);
    }

    @Test
    void aDayIsTakenInOnceAndThenKnown() throws IOException {
        var day = DayOnDisk.usual(folder);
        var first = take(day);
        assertThat(first.exit()).isZero();
        assertThat(first.out()).contains("day-1: revision 1").contains("figures");
        assertThat(take(day).out()).contains("nothing new");
    }

    @Test
    void aDayThatCannotBeReadIsKeptAndSaidSo() throws IOException {
        var day = DayOnDisk.usual(folder);
        Files.writeString(day.resolve("day.yaml"), "place: Ganderwick\n");
        var ran = take(day);
        assertThat(ran.exit()).isEqualTo(1);
        assertThat(ran.out()).contains("the files are kept").contains("date");
    }

    @Test
    void standingsCountTheBikesAndNameThePopulation() throws IOException {
        take(slow("day-1", "packhorse", "20.3"), slow("day-2", "dray", "20.8"), slow("day-3", "barrow", "20.3"));
        var ran = mile(
                "standings",
                "braking.stopping-distance",
                "method=tape",
                "--among",
                "category=cargo",
                "--archive",
                archive(),
                "--json");
        assertThat(ran.exit()).isZero();
        var standing = ran.json().path(0);
        assertThat(standing.path("population").path("expression").asString()).isEqualTo("category=cargo");
        assertThat(standing.path("population").path("count").asInt()).isEqualTo(3);
        assertThat(standing.path("population").path("date").asString()).isEqualTo("2031-05-04");
        assertThat(standing.path("rows").findValuesAsString("bike")).containsExactly("dray", "barrow", "packhorse");
        assertThat(standing.path("rows").findValues("rank").stream().map(rank -> rank.asInt()))
                .containsExactly(1, 2, 2);
        assertThat(mile("standings", "braking.stopping-distance", "--archive", archive())
                        .out())
                .contains("3 bikes with a valid result")
                .contains("=2")
                .contains("can't be told apart");
    }

    @Test
    void standingsTellTheRuleTheSpreadAndTheChanceOfBeatingABike() throws IOException {
        take(slow("day-1", "packhorse", "20.3"), slow("day-2", "dray", "20.8"));
        var text = mile(
                        "standings",
                        "braking.stopping-distance",
                        "--against",
                        "dray",
                        "--among",
                        "at=measured",
                        "--archive",
                        archive())
                .out();
        assertThat(text)
                .contains("whatever the configuration", "beats dray", "better than", "Hyndman-Fan type 8")
                .contains("among at=measured: 2 bikes");
        assertThat(mile("standings", "braking.stopping-distance", "--against", "barrow", "--archive", archive())
                        .err())
                .contains("does not stand among them; give one of dray, packhorse");
        assertThat(mile("standings", "weighin.mass", "--among", "at=reference", "--archive", archive())
                        .err())
                .contains("is given as measured only");
    }

    @Test
    void anEmptyPopulationIsNoStanding() throws IOException {
        take(DayOnDisk.usual(folder));
        var ran = mile("standings", "braking.stopping-distance", "--among", "category=folding", "--archive", archive());
        assertThat(ran.exit()).isEqualTo(1);
        assertThat(ran.out()).contains("0 bikes").contains("another category");
    }

    @Test
    void wrongQuestionsAreAnsweredWithWhatToWrite() throws IOException {
        take(DayOnDisk.usual(folder));
        assertThat(mile("standings", "braking.length", "--archive", archive()).err())
                .contains("is no figure")
                .contains("braking.stopping-distance");
        assertThat(mile("standings", "braking.stopping-distance", "--among", "colour=red", "--archive", archive()))
                .satisfies(ran -> assertThat(ran.exit()).isEqualTo(2))
                .satisfies(ran -> assertThat(ran.err()).contains("colour"));
        assertThat(mile("standings", "braking.stopping-distance", "method=trace", "--archive", archive())
                        .err())
                .contains("method=tape");
        assertThat(mile("recompute", "--archive", folder.resolve("nowhere")).err())
                .contains("no archive is there");
        assertThat(mile("standings", "--units", "furlongs").exit()).isEqualTo(2);
        assertThat(mile().exit()).isEqualTo(2);
    }

    @Test
    void recomputeFindsNothingUntilAFigureIsTamperedWith() throws IOException, SQLException {
        take(DayOnDisk.usual(folder));
        var before = mile("recompute", "--archive", archive());
        assertThat(before.exit()).isZero();
        assertThat(before.out()).contains("no difference");
        try (var connection =
                        DriverManager.getConnection("jdbc:sqlite:" + archive().resolve("archive.db"));
                var statement = connection.createStatement()) {
            statement.executeUpdate("update figure set value = 5 where figure = 'braking.stopping-distance'");
        }
        var after = mile("recompute", "--archive", archive());
        assertThat(after.exit()).isEqualTo(1);
        assertThat(after.out()).contains("day-1: braking.stopping-distance").contains("stored 5.0, recomputed 6.37");
    }

    @Test
    void anExportComesBackByImport() throws IOException {
        take(DayOnDisk.usual(folder));
        var out = folder.resolve("out");
        assertThat(mile("export", out, "--archive", archive()).exit()).isZero();
        assertThat(out.resolve("days/day-1/bike/bike.yaml")).exists();
        var other = folder.resolve("other");
        assertThat(mile("import", out, "--archive", other).exit()).isZero();
        var words = new Object[] {"standings", "braking.stopping-distance", "--json", "--archive"};
        var here = mile(words[0], words[1], words[2], words[3], archive());
        assertThat(mile(words[0], words[1], words[2], words[3], other).out()).isEqualTo(here.out());
        assertThat(mile("export", out, "--archive", archive()).err()).contains("not empty");
    }
}
