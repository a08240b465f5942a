package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.Act;
import org.measuredmile.comparison.legal.LegalClasses;
import org.measuredmile.comparison.legal.LegalRules;
import org.measuredmile.demo.DemoFleet;
import org.measuredmile.desk.TestedBikes;
import org.measuredmile.desk.cli.ClassesJson;
import tools.jackson.databind.JsonNode;

/// An invented bike whose help ends above 20 mph beside the legal classes, as a page, a table and JSON.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ClassesHttpTest {
    private static final String BIKE = "skelloway-marram";

    private ServedArchive desk;

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        DemoFleet.days(DemoFleet.SEED).stream()
                .filter(day -> day.name().endsWith("-" + BIKE))
                .forEach(day -> desk.archive().importDay(day, new Act("T1", "invented")));
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    @Test
    void the_page_says_over_the_limit_with_its_text_and_the_caution() {
        String page = desk.get("/bikes/" + BIKE + "/classes").body();
        assertThat(page)
                .contains(LegalClasses.CAUTION, "over the limit", "15 USC 2085(b)", "168/2013", "SI 1983/1168")
                .contains("never measured on the road", "as ridden", "classes.csv");
        LegalRules.inForce().forEach(one -> assertThat(page).contains(one.section()));
    }

    @Test
    void every_line_of_the_table_carries_the_caution() {
        String table = desk.get("/bikes/" + BIKE + "/classes.csv").body();
        List<String> lines = table.lines().toList();
        assertThat(lines.getFirst()).isEqualTo("# measured-mile legal-classes 1");
        assertThat(lines.subList(2, lines.size()))
                .hasSize(LegalRules.inForce().stream()
                        .mapToInt(one -> one.rules().size())
                        .sum())
                .allSatisfy(line -> assertThat(line).endsWith("\"" + LegalClasses.CAUTION + "\""));
    }

    @Test
    void every_object_of_the_json_carries_what_decided_and_the_caution() {
        var bike = TestedBikes.of(desk.archive(), BIKE).orElseThrow();
        JsonNode classes = ClassesJson.write(LegalClasses.of(bike));
        assertThat(classes.valueStream().toList())
                .hasSize(LegalRules.inForce().size())
                .allSatisfy(one -> {
                    assertThat(one.path("caution").asString()).isEqualTo(LegalClasses.CAUTION);
                    assertThat(one.path("section").asString()).isNotBlank();
                    assertThat(one.path("decidedBy").asString()).isNotBlank();
                    assertThat(one.path("outcome").asString()).isIn("within", "outside", "cannot-tell", "not-measured");
                });
        // Invented truth: help ends at 20.8 mph, far beyond 25 km/h; the two miles' limits lie within a mile an hour.
        assertThat(classes.valueStream()
                        .filter(one -> one.path("jurisdiction").asString().equals("Great Britain"))
                        .map(one -> one.path("outcome").asString()))
                .containsExactly("outside");
    }

    @Test
    void a_bike_that_is_not_there_has_no_classes() {
        assertThat(desk.get("/bikes/nobodys/classes").statusCode()).isEqualTo(404);
    }
}
