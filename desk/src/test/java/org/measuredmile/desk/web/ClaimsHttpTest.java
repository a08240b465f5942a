package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.Act;
import org.measuredmile.demo.DemoFleet;
import org.measuredmile.recording.day.DayFolder;

/// The pages of a bike's claims and the sheet for its maker, over one invented day.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ClaimsHttpTest {
    private static final String BIKE = "/bikes/skelloway-marram";

    private ServedArchive desk;

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        DemoFleet.days(DemoFleet.SEED).stream()
                .filter(day -> day.name().endsWith("skelloway-marram"))
                .forEach(day -> desk.archive()
                        .importDay(new DayFolder(day.name(), day.texts(), new TreeMap<>()), new Act("T1", "test")));
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    @Test
    void the_claims_page_says_the_word_the_sentence_and_the_rule() {
        String page = desk.get(BIKE + "/claims").body();

        assertThat(page)
                .contains("falls short", "“58 lb”", "claim, 58 lb", "without its battery", "JCGM 106:2012")
                .contains("id=\"claim-mass\"", "href=\"#mark-short\"")
                .doesNotContain("style=\"");
        assertThat(desk.get("/bikes/nobody/claims").statusCode()).isEqualTo(404);
    }

    @Test
    void the_claims_are_a_table_too() {
        var answer = desk.get(BIKE + "/claims/csv");

        assertThat(answer.headers().firstValue("Content-Type").orElse("")).startsWith("text/csv");
        assertThat(answer.body())
                .startsWith("item,claimed,conditions,")
                .contains("\nmass,58 lb,")
                .contains(",falls-short,")
                .contains("weighin.mass battery=out");
    }

    @Test
    void the_bikes_page_says_the_verdict_beside_the_figure() {
        assertThat(desk.get(BIKE).body())
                .contains("href=\"/bikes/skelloway-marram/claims#claim-mass\"", "claim, 58 lb", "falls short");
    }

    @Test
    void the_sheet_for_the_maker_is_recorded_as_sent_with_who_and_due() {
        // 30 June 2031 is a Monday.
        assertThat(desk.get(BIKE + "/reply?sent=2031-06-30").body())
                .contains("Sent 30 June 2031; an answer is due by 7 July 2031.", "SHA-256", "What we ask")
                .doesNotContain("falls short", "can’t tell", "<p class=\"small\">Sheet 1");
        var alone = desk.post(BIKE + "/reply", Map.of("sent", "2031-06-30", "due", "2031-06-01", "who", ""));
        assertThat(alone.statusCode()).isEqualTo(422);
        assertThat(alone.body()).contains("Who sent it?", "due before the sheet is sent");
        var kept = desk.post(BIKE + "/reply", Map.of("sent", "2031-07-01", "due", "2031-07-09", "who", "T1"));
        assertThat(kept.statusCode()).isEqualTo(303);
        assertThat(desk.get(BIKE + "/reply").body())
                .contains("Sheet 1: sent 1 July 2031, an answer is due by 9 July 2031; recorded by T1");
        assertThat(desk.archive().history().getLast().act()).isEqualTo("sent");
        assertThat(desk.get("/history").body()).contains("reply skelloway-marram");
    }
}
