package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.Act;
import org.measuredmile.desk.SmallFleet;

/// The pages of expected-value lines and of the control bike.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LinesHttpTest {
    private static final String CONTROL = "/standings/control";

    private ServedArchive desk;

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        assertThat(desk.get(CONTROL).body()).contains("No bike was ridden on two days");
        SmallFleet.weighIns().forEach(day -> desk.archive().importDay(day, new Act("T1", "invented")));
        SmallFleet.controlRides().forEach(day -> desk.archive().importDay(day, new Act("T1", "invented")));
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    @Test
    void a_line_is_drawn_with_its_band_and_told_in_a_table() {
        String page = desk.get("/standings/lines/weight").body();
        assertThat(page)
                .contains("Weight for its battery", "curve-band", "95 of 100 further bikes", "Zornby Packhorse")
                .contains("Wh", "inside the band", "/standings/lines/weight/csv");
        assertThat(desk.get("/standings").body()).contains("/standings/lines/weight", CONTROL);
    }

    @Test
    void a_line_without_bikes_says_why() {
        assertThat(desk.get("/standings/lines/range").body()).contains("No line.", "8 bikes and more");
        assertThat(desk.get("/standings/lines/colour").statusCode()).isEqualTo(404);
    }

    @Test
    void the_control_bikes_chart_shows_its_signal_in_words_and_no_testers_own_effect() {
        String page = desk.get(CONTROL).body();
        assertThat(page)
                .contains("Tullimar Tideline", "beyond the limits", "Stopping distance", "Between testers", "T2")
                .doesNotContain("T1:");
        assertThat(desk.get(CONTROL + "?bike=nobody").statusCode()).isEqualTo(404);
    }

    @Test
    void both_hand_out_their_tables() {
        for (var entry : Map.of("/standings/lines/weight/csv", "bike,title,across", CONTROL + "/csv", "day,date,bike")
                .entrySet()) {
            var answer = desk.get(entry.getKey());
            assertThat(answer.headers().firstValue("Content-Type").orElse("")).startsWith("text/csv");
            assertThat(answer.body()).startsWith(entry.getValue());
            assertThat(answer.body().lines().count()).isGreaterThan(10);
        }
        assertThat(desk.get(CONTROL + "/csv?bike=nobody").statusCode()).isEqualTo(404);
    }

    @Test
    void every_line_there_is_has_a_page() {
        for (String line : List.of(
                "range", "range-throttle", "climb-throttle", "climb-pedal", "climb-claimed", "weight", "stopping")) {
            assertThat(desk.get("/standings/lines/" + line).statusCode())
                    .as(line)
                    .isEqualTo(200);
        }
    }
}
