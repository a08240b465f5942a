package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.Revision.Subject;
import org.measuredmile.recording.day.SpecLine;

/// The spec sheet of a bike that was typed in: lines written, changed and marked.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class SpecHttpTest {
    private static final String DAY = "2031-06-30-brindle-causeway";
    private static final String BIKE = "brindle-causeway";
    private static final String PAGE = "/bikes/" + BIKE + "/spec";

    private ServedArchive desk;

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        assertThat(desk.post("/days/new", ServedArchive.typedDay()).statusCode())
                .isEqualTo(303);
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    private static Map<String, String> form(String... cells) {
        var form = new LinkedHashMap<String, String>();
        for (int i = 0; i < cells.length; i += 2) {
            form.put(cells[i], cells[i + 1]);
        }
        return form;
    }

    private java.util.List<SpecLine> spec() {
        return desk.archive().describe(BIKE).orElseThrow().spec();
    }

    private static void was(Map<String, String> form, SpecLine line) {
        form.put("was.item", line.item());
        form.put("was.claimed", line.claimed());
        form.put("was.unit", line.unit());
        form.put("was.conditions", line.conditions());
        form.put("was.source", line.source());
        form.put("was.date", line.date());
        form.put("was.seen", line.seen());
        form.put("was.photo", line.photo());
        form.put("was.note", line.note());
    }

    @Test
    @Order(1)
    void a_sheet_without_lines_says_so_and_offers_the_form() {
        var page = desk.get(PAGE);
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.body()).contains("Nothing known", "Add a line", "aria-current=\"page\">Spec sheet</a>");
        assertThat(desk.get("/bikes/" + BIKE).body()).contains("href=\"/bikes/" + BIKE + "/spec\"");
    }

    @Test
    @Order(2)
    void what_cannot_be_kept_comes_back_as_typed_each_fault_beside_its_field() {
        var answer = desk.post(PAGE, form("other", "Two Words", "date", "14.4.2031", "source", "page 7 of the folder"));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body())
                .contains("id=\"item-fault\"", "id=\"claimed-fault\"", "id=\"date-fault\"", "id=\"why-fault\"")
                .contains("id=\"who-fault\"", "value=\"page 7 of the folder\"");
        assertThat(spec()).isEmpty();
    }

    @Test
    @Order(3)
    void a_line_is_added_with_who_and_why() {
        var form = form("item", "mass", "claimed", "61", "unit", "lb", "conditions", "battery=in");
        form.putAll(form("source", "the maker's page, \"Sizes\"", "date", "2031-06-01", "who", "T1", "why", "as read"));
        assertThat(desk.post(PAGE, form).statusCode()).isEqualTo(303);
        assertThat(spec()).singleElement().satisfies(line -> {
            assertThat(line.claimed()).isEqualTo("61");
            assertThat(line.source()).isEqualTo("the maker's page, \"Sizes\"");
        });
        var history = desk.archive().history(Subject.DAY, DAY);
        assertThat(history.getLast().toString())
                .contains("spec line mass added: as read")
                .contains("T1");
        assertThat(desk.get(PAGE).body()).contains("61 lb", "battery=in", "not checked");
    }

    @Test
    @Order(4)
    void a_line_is_changed_where_it_stands() {
        assertThat(desk.get(PAGE + "?line=0").body()).contains("Change mass", "value=\"battery=in\"");
        var form = form("item", "mass", "claimed", "62", "unit", "lb", "seen", "28 kg", "who", "T1", "why", "new page");
        was(form, spec().getFirst());
        assertThat(desk.post(PAGE, form).statusCode()).isEqualTo(303);
        assertThat(spec()).singleElement().satisfies(line -> {
            assertThat(line.claimed()).isEqualTo("62");
            assertThat(line.seen()).isEqualTo("28 kg");
            assertThat(line.conditions()).isEmpty();
        });
    }

    @Test
    @Order(5)
    void a_line_that_somebody_else_changed_meanwhile_is_added_and_nothing_is_lost() {
        var form = form("item", "mass", "claimed", "64", "unit", "lb", "who", "T2", "why", "another page");
        form.put("was.item", "mass");
        form.put("was.claimed", "61");
        assertThat(desk.post(PAGE, form).statusCode()).isEqualTo(303);
        assertThat(spec()).extracting(SpecLine::claimed).containsExactly("62", "64");
    }

    @Test
    @Order(6)
    void marks_are_typed_on_their_own_sheet_and_stand_beside_the_claims() {
        String sheet = "/days/" + DAY + "/trials/markings";
        assertThat(desk.get(sheet).body()).contains("Class label", "Once a day").doesNotContain("Good run");
        var marks = form("day.class-label", "Class 2, \"20 mph\"", "day.battery-voltage", "48 V", "who", "T1");
        marks.putAll(form("day.battery-charge", "14 Ah", "day.battery-energy", "600 Wh", "day.photo", "plate.jpg"));
        assertThat(desk.post(sheet + "/day", marks).statusCode()).isEqualTo(303);
        assertThat(desk.get(PAGE).body())
                .contains("Class 2, \"20 mph\"", "photo plate.jpg")
                .contains("48 V × 14 Ah = 672 Wh, but the bike says 600 Wh");
        assertThat(desk.get("/days/" + DAY).body()).contains("5\u00a0readings");
        assertThat(desk.get(sheet).body()).contains("of 13 read");
    }

    @Test
    @Order(7)
    void a_claim_that_cannot_be_read_is_kept_and_told() {
        var form = form("item", "rider-height", "claimed", "190-160", "unit", "cm", "who", "T1", "why", "as printed");
        assertThat(desk.post(PAGE, form).statusCode()).isEqualTo(303);
        assertThat(desk.get(PAGE).body()).contains("runs from more to less", "Write 160 to 190");
    }

    @Test
    @Order(8)
    void a_bike_that_is_not_there_is_told() {
        assertThat(desk.get("/bikes/nobody/spec").statusCode()).isEqualTo(404);
    }
}
