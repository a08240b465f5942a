package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.Act;
import org.measuredmile.archive.json.Json;
import org.measuredmile.recording.day.DayFolder;

/// The page of a standing over three weighed bikes and eighty lines of a ledger.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class StandingsHttpTest {
    private static final String MASS = "/standings/weighin.mass";
    private static final Act ACT = new Act("T1", "invented");

    private ServedArchive desk;

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        desk.archive().importDay(weighed("packhorse", "38.6 kg", "2031"), ACT);
        desk.archive().importDay(weighed("barrow", "41.3 kg", "2030"), ACT);
        desk.archive().importDay(weighed("drayman", "38.7 kg", "2031"), ACT);
        var ledger = new StringBuilder("bike,category,trial,figure,variant,value,unit,date,runs\n");
        for (int i = 0; i < 80; i++) {
            ledger.append("earlier-").append(i).append(",cargo,weighin,weighin.mass,battery=in,");
            ledger.append(30 + i * 0.25).append(",kg,2028-07-03,1\n");
        }
        ledger.append("packhorse,,weighin,weighin.mass,battery=in,40,kg,2028-07-03,1\n");
        desk.archive().importLedger("earlier.csv", bytes(ledger.toString()), ACT);
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static DayFolder weighed(String bike, String mass, String modelYear) {
        var texts = new TreeMap<String, byte[]>();
        texts.put("day.yaml", bytes("""
                date: 2031-05-04
                timeZone: Europe/Berlin
                place: Ganderwick, invented
                bike: %s
                configuration: {firmware: "2.1"}
                instruments: [{id: scale-1, kind: scale, resolution: 0.1 kg}]
                """.formatted(bike)));
        texts.put("runs.csv", bytes("run,trial,variant,state\nw1,weighin,battery=in,confirmed\n"));
        texts.put(
                "readings.csv",
                bytes("run,reading,value,unit,instrument,by\nw1,mass," + mass.replace(" ", ",") + ",scale-1,R1\n"));
        texts.put("bike/bike.yaml", bytes("""
                id: %s
                maker: Ostervald
                model: %s
                modelYear: %s
                category: cargo
                drive: both
                price: {amount: 1900, currency: EUR}
                """.formatted(bike, bike, modelYear)));
        return new DayFolder("day-" + bike, texts, new TreeMap<>());
    }

    @Test
    void thePageSaysThePopulationTheRuleAndHowTheValuesLie() {
        assertThat(desk.get(MASS + "?model-year=2031&price=1000-2000&currency=EUR")
                        .body())
                .contains("priced 1000 to 2000 EUR, of model year 2031", "whatever the configuration")
                .contains("Hyndman–Fan type 8", "Median", "Most likely", "Another model year")
                .doesNotContain("Ostervald barrow</a>");
    }

    @Test
    void aPriceWithoutItsCurrencyIsAFaultOnThePage() {
        assertThat(desk.get(MASS + "?price=1000-2000").body()).contains("needs its currency");
    }

    @Test
    void conditionsThatTheFigureDoesNotHaveAreSaid() {
        assertThat(desk.get(MASS + "?at=reference").body()).contains("is given as measured only");
    }

    /// 38.6 and 38.7 kg on the same scale, 41.3 far behind.
    @Test
    void theChanceOfBeatingABikeStandsInAColumn() {
        assertThat(desk.get(MASS + "?against=barrow").body()).contains("Beats Ostervald barrow", "over\u00a099\u00a0%");
        assertThat(desk.get(MASS + "?against=nobody").body()).contains("does not stand among them");
    }

    @Test
    void theTableIsHandedOutAsJsonAsTheCommandLineGivesIt() {
        var standing = Json.parse(desk.get(MASS + "/json?full=yes&against=barrow&model-year=2030-2031")
                        .body())
                .path(0);
        assertThat(standing.path("population").path("expression").asString()).isEqualTo("model-year=2030-2031");
        assertThat(standing.path("rows").findValuesAsString("bike")).containsExactly("packhorse", "drayman", "barrow");
        var first = standing.path("rows").path(0);
        assertThat(first.path("probabilityBetterThan").asDouble()).isGreaterThan(0.99);
        assertThat(first.path("percentile").asDouble()).isCloseTo(100 * 2.5 / 3, within(1e-9));
        assertThat(first.path("configuration").asString()).isEqualTo("firmware 2.1");
        assertThat(first.path("rankProbabilities").size()).isPositive();
    }

    @Test
    void manyBikesScrollInTheirTableWithoutCombsAndBars() {
        String body = desk.get(MASS + "?ledger=yes").body();
        assertThat(body).contains("83\u00a0bikes", "standing many", "too many for bars and combs", "earlier-79");
        assertThat(body).contains("Most<br>likely").doesNotContain("Chance of each rank", "bar-begins");
        assertThat(desk.get(MASS + "/csv?ledger=yes").body().lines()).hasSize(84);
    }

    /// A bike of the ledger that was tested since goes by its name.
    @Test
    void aResultOfTheLedgerHasTheTitleOfItsBikeWhereThatIsKnown() {
        assertThat(desk.get(MASS + "?ledger=yes&until=2030-12-31").body())
                .contains(">Ostervald packhorse</a>")
                .contains("cargo, ledger");
    }

    @Test
    void aRevisionIsSeenAtOnce(@TempDir Path folder) {
        try (var other = new ServedArchive(folder)) {
            other.archive().importDay(weighed("packhorse", "38.6 kg", "2031"), ACT);
            assertThat(other.get(MASS).body()).contains("1\u00a0bike<");
            other.archive().importDay(weighed("barrow", "41.3 kg", "2030"), ACT);
            assertThat(other.get(MASS).body()).contains("2\u00a0bikes<");
            other.archive().importDay(weighed("barrow", "55.5 kg", "2030"), ACT);
            assertThat(other.get(MASS + "/csv").body()).contains("55.5").doesNotContain("41.3");
        }
    }
}
