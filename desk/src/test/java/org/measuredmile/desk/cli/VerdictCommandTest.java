package org.measuredmile.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.desk.cli.Ran.mile;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/// `mile verdict` and `mile reply`, on an archive in a temporary folder.
class VerdictCommandTest {
    @TempDir
    private Path folder = Path.of("");

    private Path archive(String claimedLb) throws IOException {
        var archive = folder.resolve("archive");
        assertThat(mile("import", "--archive", archive, WeighedDay.write(folder, claimedLb))
                        .exit())
                .isZero();
        return archive;
    }

    @Test
    void aClaimedMassThatFitsTheBikeWithoutItsBatteryFallsShortAsSoldAndAgreesWithTheMassWithout() throws IOException {
        var ran = mile("verdict", "lantern", "--archive", archive("61.0"), "--json", "--units", "imperial");

        assertThat(ran.exit()).isEqualTo(1);
        var mass = ran.json().path(0).path("claims").path(0);
        assertThat(ran.json().path(0).path("bike").asString()).isEqualTo("lantern");
        assertThat(mass.path("item").asString()).isEqualTo("mass");
        assertThat(mass.path("claimed").asString()).isEqualTo("61.0 lb");
        assertThat(mass.path("verdict").asString()).isEqualTo("falls-short");
        assertThat(mass.path("probability").asDouble()).isLessThan(0.001);
        assertThat(mass.path("atConditions").isNull()).isTrue();
        assertThat(mass.path("agreesWith")).hasSize(1);
        assertThat(mass.path("agreesWith")
                        .path(0)
                        .path("variant")
                        .path("battery")
                        .asString())
                .isEqualTo("out");
        assertThat(mass.path("wording").asString())
                .startsWith("The Ostervald Lantern falls short of its claimed mass of “61.0 lb”, by 7.0 to 7.6 lb")
                .contains("we weighed 68.3 ± 0.3 lb (")
                .contains("The claimed value agrees with the mass without its battery, 61.2 ± 0.3 lb (");
        var range = ran.json().path(0).path("claims").path(1);
        assertThat(range.path("verdict").asString()).isEqualTo("cannot-tell");
        assertThat(range.path("measured").isNull()).isTrue();
        assertThat(range.path("remedy").asString()).isEqualTo("a range ride at the lowest level");
    }

    @Test
    void aBikeWithoutAClaimThatFallsShortEndsWell() throws IOException {
        var ran = mile("verdict", "ostervald lantern", "--archive", archive("69"));

        assertThat(ran.exit()).isZero();
        assertThat(ran.out())
                .contains("meets: mass, “69 lb”")
                .contains("The Ostervald Lantern meets its claimed mass of “69 lb”: we weighed ")
                .contains("can’t tell: range")
                .contains("JCGM 106:2012");
    }

    @Test
    void aBikeThatIsNotThereIsAnsweredWithThoseThatAre() throws IOException {
        var ran = mile("verdict", "nobody", "--archive", archive("69"));

        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.err()).contains("\"nobody\" is no bike of this archive").contains("lantern");
    }

    @Test
    void theSheetForTheMakerIsKeptAsItWasSentWithWhoAndWhenAnAnswerIsDue() throws IOException {
        var archive = archive("61.0");
        var ran = mile("reply", "lantern", "--archive", archive, "--sent", "2031-05-09", "--by", "T1");

        // 9 May 2031 is a Friday; five working days on is the next Friday.
        assertThat(ran.exit()).isZero();
        assertThat(ran.out())
                .contains("Sent 9 May 2031; an answer is due by 16 May 2031.")
                .contains("Claimed: “61.0 lb”")
                .contains("Runs: w1 30.98 kg (68.30 lb); w2 30.98 kg (68.30 lb)")
                .contains("calibrated, factor 1.0000 ± 0.0010, 2 March 2031")
                .contains("readings.csv, SHA-256 ")
                .contains("Rider with gear: 83.5 kg (184.1 lb)")
                .doesNotContain("R1")
                .contains("Weigh-in, version 1 of the method")
                .doesNotContain("falls short", "meets", "can’t tell");
        var again =
                mile("reply", "lantern", "--archive", archive, "--sent", "2031-05-09", "--due", "2031-05-20", "--json");
        assertThat(again.json().path(0).path("due").asString()).isEqualTo("2031-05-20");
        assertThat(again.json().path(0).path("history")).hasSize(1);
        assertThat(again.json().path(0).path("history").path(0).path("who").asString())
                .isEqualTo("T1");
        assertThat(again.json().path(0).path("history").path(0).path("due").asString())
                .isEqualTo("2031-05-16");
        var out = folder.resolve("out");
        assertThat(mile("export", out, "--archive", archive).exit()).isZero();
        var other = folder.resolve("other");
        assertThat(mile("import", out, "--archive", other).exit()).isZero();
        var brought = mile("reply", "lantern", "--archive", other, "--sent", "2031-05-09", "--json");
        assertThat(brought.json().path(0).path("history"))
                .isEqualTo(again.json().path(0).path("history"));
    }

    @Test
    void anAnswerIsNotDueBeforeTheSheetIsSent() throws IOException {
        var ran = mile("reply", "lantern", "--archive", archive("61"), "--sent", "2031-05-09", "--due", "2031-05-01");

        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.err()).contains("is before --sent");
    }
}
