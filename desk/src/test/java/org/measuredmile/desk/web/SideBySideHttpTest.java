package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.Act;
import org.measuredmile.demo.DemoFleet;

/// Bikes side by side and a shortlist, over three bikes of the invented fleet.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SideBySideHttpTest {
    private static final String THREE =
            "/side-by-side?bike=ostrelle-lamplight&bike=corrowan-daybook&bike=&bike=plimble-quayside";

    private ServedArchive desk;

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        DemoFleet.days(DemoFleet.SEED).stream()
                .filter(day -> day.name().matches(".*(ostrelle-lamplight|corrowan-daybook|plimble-quayside)"))
                .forEach(day -> desk.archive().importDay(day, new Act("T1", "invented")));
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    @Test
    void withoutBikesThePageIsAForm() {
        assertThat(desk.get("/side-by-side").body())
                .contains("name=\"bike\"", "Corrowan Daybook", "aria-current=\"page\">Side by side")
                .doesNotContain("field-error", "What can be said");
    }

    @Test
    void threeBikesStandBesideEachOtherWithWhatCanBeSaid() {
        assertThat(desk.get(THREE).body())
                .contains(
                        "Lamplight, Daybook and Quayside",
                        "Stopping distance",
                        "what can be said",
                        "can’t be told apart",
                        "series-key s3",
                        "(Holm)",
                        "3350 USD, US, 2031-01-15",
                        "No throttle is fitted.")
                .containsPattern("Daybook less Quayside <b>[+−]?[0-9.]+.±.[0-9.]+.lb</b>");
    }

    @Test
    void wrongBikesAreSaidWithTheFormKept() {
        assertThat(desk.get("/side-by-side?bike=ostrelle-lamplight").body())
                .contains("name from two to six")
                .contains("<option value=\"ostrelle-lamplight\" selected>");
        assertThat(desk.get("/side-by-side?bike=ostrelle-lamplight&bike=%3Cb%3E")
                        .body())
                .contains("is no bike here")
                .doesNotContain("<b>\"");
        assertThat(desk.get("/side-by-side/csv?bike=nobody").statusCode()).isEqualTo(404);
    }

    @Test
    void theTableIsHandedOut() {
        var answer = desk.get(THREE.replace("/side-by-side", "/side-by-side/csv"));
        assertThat(answer.headers().firstValue("Content-Type").orElse("")).startsWith("text/csv");
        assertThat(answer.body())
                .startsWith("kind,chapter,figure,variant,unit,bike,other,value")
                .contains("difference,Lifting and carrying,weighin.mass,battery=in,kg,ostrelle-lamplight,corrowan-d");
    }

    @Test
    void aShortlistSaysSureMaybeAndNoAndPrintsTheWishesBack() {
        String page = desk.get("/shortlist?wish=rider%3D110kg%20climbs%3D10%25%20price%3C2000%20mass%3C28kg")
                .body();
        assertThat(page).contains("Understood: <b>climbs=10% price&lt;2000 mass&lt;28kg rider=110kg</b>");
        assertThat(page).contains("answer-Sure", "answer-Maybe", "answer-No", "steepest grade by throttle alone");
    }

    @Test
    void aWrongListIsRefusedWithEveryFaultAndKeptInItsField() {
        assertThat(desk.get("/shortlist?wish=mass%3D25kg%20cheap").body())
                .contains("write mass&lt;=25kg", "cheap: it is no wish", "value=\"mass=25kg cheap\"")
                .doesNotContain("answer-Sure");
        assertThat(desk.get("/shortlist").body()).contains("How to write it").doesNotContain("field-error");
    }
}
