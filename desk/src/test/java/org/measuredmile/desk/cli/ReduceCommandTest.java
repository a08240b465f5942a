package org.measuredmile.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.desk.cli.Ran.mile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.TimeZone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.ContentStore;
import tools.jackson.databind.JsonNode;

class ReduceCommandTest {
    private static final double FOOT_M = 0.3048;

    @TempDir
    private Path folder = Path.of("");

    private static JsonNode stoppingDistance(Ran ran) {
        return ran.json()
                .valueStream()
                .filter(one -> one.path("figure").asString("").equals("braking.stopping-distance"))
                .findFirst()
                .orElseThrow();
    }

    /// By hand: 21.2·(20/20.3)² = 20.578, 20.7·(20/19.8)² = 21.120, 21.9·(20/20.4)² = 21.050; mean 20.916 ft.
    @Test
    void threeTapedStopsComeToTheirMeanAtTheNominalSpeed() throws IOException {
        var ran = mile("reduce", DayOnDisk.usual(folder), "--json");
        assertThat(ran.exit()).isZero();
        var figure = stoppingDistance(ran);
        assertThat(figure.path("value").asDouble() / FOOT_M).isCloseTo(20.916, within(0.0005));
        assertThat(figure.path("unit").asString()).isEqualTo("m");
        assertThat(figure.path("variant").path("method").asString()).isEqualTo("tape");
    }

    @Test
    void theKeysAreThoseOfTheFormatInTheirOrder() throws IOException {
        var figure = stoppingDistance(mile("reduce", DayOnDisk.usual(folder), "--json"));
        assertThat(figure.propertyNames())
                .containsExactly(
                        "bike",
                        "configuration",
                        "date",
                        "trial",
                        "version",
                        "figure",
                        "variant",
                        "value",
                        "unit",
                        "standardUncertainty",
                        "degreesOfFreedom",
                        "interval95",
                        "runs",
                        "runStandardDeviation",
                        "budget",
                        "narrows",
                        "assumed",
                        "used",
                        "correlations",
                        "findings",
                        "inputs");
        assertThat(figure.path("runs").path(0).propertyNames())
                .containsExactly("run", "state", "counted", "reason", "value", "recording", "from", "to", "ends");
        assertThat(figure.path("interval95").propertyNames()).containsExactly("thisDay", "anyDay");
        assertThat(figure.path("inputs").path(0).propertyNames()).containsExactly("kind", "name", "sha256");
    }

    @Test
    void everyInputIsNamedByTheHashOfItsBytes() throws IOException {
        var day = DayOnDisk.usual(folder);
        var inputs = stoppingDistance(mile("reduce", day, "--json")).path("inputs");
        var readings = inputs.valueStream()
                .filter(one -> one.path("name").asString().equals("readings.csv"))
                .findFirst()
                .orElseThrow();
        assertThat(readings.path("sha256").asString())
                .isEqualTo(ContentStore.hashOf(Files.readAllBytes(day.resolve("readings.csv"))));
        assertThat(inputs.findValuesAsString("name")).contains("bike/bike.yaml");
    }

    @Test
    void aRunSaysWhereItLiesAndWhetherAPersonSetItsEnds() throws IOException {
        var day = DayOnDisk.usual(folder);
        Files.createDirectories(day.resolve("recordings"));
        var rows = new StringBuilder("time_s,speed_mps\n");
        for (int i = 0; i <= 200; i++) {
            rows.append(String.format(
                    Locale.ROOT, "%.1f,%.2f%n", i / 10.0, i < 100 ? 8.9 : Math.max(0, 8.9 - (i - 100) * 0.6)));
        }
        Files.writeString(day.resolve("recordings/a.csv"), rows);
        Files.writeString(day.resolve("recordings.csv"), "file,runs\na.csv,b1@1.5-3.25\n");
        var runs = stoppingDistance(mile("reduce", day, "--json")).path("runs");
        assertThat(runs.path(0).path("recording").asString()).isEqualTo("a.csv");
        assertThat(runs.path(0).path("from").asDouble()).isEqualTo(1.5);
        assertThat(runs.path(0).path("to").asDouble()).isEqualTo(3.25);
        assertThat(runs.path(0).path("ends").asString()).isEqualTo("set");
        assertThat(runs.path(1).path("recording").isNull()).isTrue();
        assertThat(runs.path(1).path("ends").isNull()).isTrue();
        assertThat(mile("reduce", day).out()).contains("a.csv 1.50 to 3.25 s, set");
    }

    /// 21.2 mph is 1.93 km/h above 20 mph; 1.5 km/h are allowed.
    @Test
    void aRunOutsideTheWindowIsShownNotCountedAndWidensTheInterval() throws IOException {
        var inside = stoppingDistance(mile("reduce", DayOnDisk.usual(folder), "--json"));
        var ran = mile("reduce", DayOnDisk.write(folder, "fast", "packhorse", "21.2"), "--json");
        assertThat(ran.exit()).isZero();
        var outside = stoppingDistance(ran);
        var run = outside.path("runs").path(0);
        assertThat(run.path("counted").asBoolean()).isFalse();
        assertThat(run.path("reason").asString()).isNotEmpty();
        assertThat(outside.path("runs").findValues("counted").stream().filter(JsonNode::asBoolean))
                .hasSize(2);
        assertThat(width(outside)).isGreaterThan(width(inside));
    }

    private static double width(JsonNode figure) {
        var interval = figure.path("interval95").path("thisDay");
        return interval.path(1).asDouble() - interval.path(0).asDouble();
    }

    @Test
    void theSameBytesComeOutUnderAnotherLocaleAndTimeZone() throws IOException {
        var day = DayOnDisk.usual(folder);
        var locale = Locale.getDefault();
        var zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("de-DE"));
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
            var there = mile("reduce", day, "--json").out();
            var textThere = mile("reduce", day).out();
            Locale.setDefault(Locale.ROOT);
            TimeZone.setDefault(TimeZone.getTimeZone("UTC"));
            assertThat(mile("reduce", day, "--json").out()).isEqualTo(there).endsWith("]\n");
            assertThat(mile("reduce", day).out()).isEqualTo(textThere);
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    @Test
    void peopleGetBothSystemsTheirOwnFirst() throws IOException {
        var day = DayOnDisk.usual(folder);
        assertThat(mile("reduce", day).out()).containsPattern("any day +6\\.38 ± [\\d.]+ m +20\\.9 ± [\\d.]+ ft");
        assertThat(mile("reduce", day, "--units", "imperial").out())
                .containsPattern("any day +20\\.9 ± [\\d.]+ ft +6\\.38 ± [\\d.]+ m");
    }

    @Test
    void aDayWithoutDateSaysWhatIsWrongAndGivesNoFigure() throws IOException {
        var day = DayOnDisk.usual(folder);
        Files.writeString(day.resolve("day.yaml"), "place: Ganderwick\n");
        var ran = mile("reduce", day, "--json");
        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.json().isEmpty()).isTrue();
        assertThat(ran.err()).contains("day.yaml").contains("date");
    }

    @Test
    void aFolderThatIsNoTestDayIsToldApart() throws IOException {
        assertThat(mile("reduce", folder.resolve("nowhere")))
                .satisfies(ran -> assertThat(ran.exit()).isEqualTo(2))
                .satisfies(ran -> assertThat(ran.err()).contains("no such folder"));
        assertThat(mile("reduce", folder).err()).contains("day.yaml");
        var file = Files.writeString(folder.resolve("ride.csv"), "time\n");
        assertThat(mile("reduce", file).err()).contains("mile inspect");
    }
}
