package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.Act;
import org.measuredmile.demo.DemoFleet;

/// The sentences of an invented bike as a page, and the page of those that changed.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SentencesHttpTest {
    private static final String BIKE = "ostrelle-lamplight";

    private ServedArchive desk;

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        DemoFleet.days(DemoFleet.SEED).stream()
                .filter(day -> day.name().endsWith("-" + BIKE))
                .limit(1)
                .forEach(day -> desk.archive().importDay(day, new Act("T1", "invented")));
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    @Test
    void eachSentenceIsThereWrittenAndSpokenWithItsIdAndAButtonToCopyIt() {
        String page = desk.get("/bikes/" + BIKE + "/sentences").body();

        assertThat(page)
                .contains("the Lamplight weighs", "Nineteen days in twenty should lie within that.")
                .contains(BIKE + "/weighin.mass/battery=in/figure#")
                .contains("data-copy=\"s-1-written\"", "id=\"s-1-spoken\"", "Copy the spoken sentence")
                .doesNotContain("<script>", " onclick");
        assertThat(desk.get("/bikes/" + BIKE).body()).contains("/bikes/" + BIKE + "/sentences");
    }

    @Test
    void theListIsCutDownToAChapterAndToWords() {
        String carrying =
                desk.get("/bikes/" + BIKE + "/sentences?chapter=CARRYING").body();
        assertThat(carrying).contains("the Lamplight weighs").doesNotContain("the Lamplight stopped in");
        String stops =
                desk.get("/bikes/" + BIKE + "/sentences?words=STOPPED%20in").body();
        assertThat(stops).contains("the Lamplight stopped in").doesNotContain("the Lamplight weighs");
        assertThat(desk.get("/bikes/" + BIKE + "/sentences?words=moonlight").body())
                .contains("No sentence here");
        assertThat(desk.get("/bikes/nobody/sentences").statusCode()).isEqualTo(404);
    }

    @Test
    void theChangedOnesAreListedUntilSomebodySaysThatTheyWereSeen() {
        assertThat(desk.get("/sentences/changed").body())
                .contains("Nobody has looked at the sentences yet", "I have seen these");
        assertThat(desk.get("/history").body()).contains("/sentences/changed");
        var unsigned = desk.post("/sentences/changed", Map.of("bike", "", "who", ""));
        assertThat(unsigned.statusCode()).isEqualTo(422);
        assertThat(unsigned.body()).contains("Give your code");

        var signed = desk.post("/sentences/changed", Map.of("bike", "", "who", "E1"));

        assertThat(signed.statusCode()).isEqualTo(303);
        assertThat(desk.get("/sentences/changed").body())
                .contains("by E1", "Every sentence says what it said")
                .doesNotContain("I have seen these");
    }
}
