package org.measuredmile.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.desk.cli.Ran.mile;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.Act;
import org.measuredmile.archive.Archive;
import org.measuredmile.demo.DemoFleet;
import org.measuredmile.desk.SmallFleet;

/// Expected-value lines and the control bike on the command line, over the invented fleet's weigh-ins and
/// control rides.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LineCommandsTest {
    private static final Act ACT = new Act("T1", "invented");

    private Path folder = Path.of("");
    private Path empty = Path.of("");

    @BeforeAll
    void fill(@TempDir Path place) {
        folder = place.resolve("archive");
        empty = place.resolve("empty");
        try (var archive = Archive.open(folder, Clock.systemUTC())) {
            SmallFleet.weighIns().forEach(day -> archive.importDay(day, ACT));
            SmallFleet.controlRides().forEach(day -> archive.importDay(day, ACT));
        }
        Archive.open(empty, Clock.systemUTC()).close();
    }

    @Test
    void the_weight_line_has_every_bike_inside_or_named() {
        var line =
                mile("expected", "weight", "--archive", folder, "--json").json().path(0);
        assertThat(line.path("figure").asString()).isEqualTo("weighin.mass");
        assertThat(line.path("bikes").size()).isGreaterThanOrEqualTo(24);
        assertThat(line.path("slopeInterval95").path(0).asDouble())
                .as("a larger battery weighs more")
                .isPositive();
        var range = line.path("between");
        line.path("curve")
                .forEach(one -> assertThat(one.path("across").asDouble())
                        .isBetween(range.path(0).asDouble(), range.path(1).asDouble()));
        line.path("bikes").forEach(bike -> {
            double value = bike.path("value").asDouble();
            boolean inside = value >= bike.path("band").path(0).asDouble()
                    && value <= bike.path("band").path(1).asDouble();
            assertThat(bike.path("place").asString().equals("inside")).isEqualTo(inside);
        });
    }

    @Test
    void the_line_is_told_in_both_systems() {
        var metric = mile("expected", "weight", "--archive", folder);
        assertThat(metric.exit()).isZero();
        assertThat(metric.out()).contains("slope", "kg per Wh", "95 of 100 further bikes", "Zornby Packhorse");
        assertThat(mile("expected", "weight", "--archive", folder, "--units", "imperial")
                        .out())
                .contains("lb per Wh");
    }

    @Test
    void a_line_without_results_says_why_and_what_lines_there_are_is_listed() {
        var ran = mile("expected", "range", "--archive", folder);
        assertThat(ran.exit()).isEqualTo(1);
        assertThat(ran.out()).contains("no line: a line takes 8 bikes and more, there are 0", "not on it: ");
        assertThat(mile("expected", "range", "--archive", folder, "--json")
                        .json()
                        .path(0)
                        .path("slope")
                        .isNull())
                .isTrue();
        assertThat(mile("expected").out()).contains("range.distance", "claimed battery energy");
        assertThat(mile("expected", "colour", "--archive", folder).exit()).isEqualTo(2);
    }

    @Test
    void the_control_bike_is_the_one_of_the_most_days_and_its_oiled_day_is_a_signal() {
        var ran = mile("control", "braking.stopping-distance", "--archive", folder);
        assertThat(ran.exit()).as("a day calls for a look").isEqualTo(1);
        assertThat(ran.out())
                .contains(DemoFleet.CONTROL_BIKE, "mean of 12 days", "limits ±", "beyond the limits")
                .contains("between testers", "between days", "12 days by 3 testers on 1 bike");
        var chart = mile("control", DemoFleet.CONTROL_BIKE, "braking.stopping-distance", "--archive", folder, "--json")
                .json()
                .path(0);
        assertThat(chart.path("days").size()).isEqualTo(12);
        var signals = chart.path("days").findValues("signals").stream()
                .filter(one -> one.size() > 0)
                .toList();
        assertThat(signals).hasSize(1);
        assertThat(chart.path("days").findValuesAsString("tester")).contains("T1", "T2", "R1");
        assertThat(chart.path("components").path("components").size()).isEqualTo(2);
    }

    @Test
    void without_a_figure_every_figure_of_several_days_has_a_line() {
        var ran = mile("control", DemoFleet.CONTROL_BIKE, "--archive", folder);
        assertThat(ran.out()).contains("braking.stopping-distance", "(declared ");
        assertThat(mile("control", DemoFleet.CONTROL_BIKE, "--archive", folder, "--json")
                        .json()
                        .size())
                .isGreaterThanOrEqualTo(1);
    }

    @Test
    void what_cannot_be_answered_says_what_to_do() {
        assertThat(mile("control", "--archive", empty).err()).contains("ride one bike again");
        assertThat(mile("control", "nobody", "--archive", folder).exit()).isEqualTo(2);
        assertThat(List.of(mile("control", DemoFleet.CONTROL_BIKE, "wheels", "--archive", folder)
                        .err()))
                .allMatch(words -> words.contains("is no figure"));
    }
}
