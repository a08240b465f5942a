package org.measuredmile.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.desk.cli.Ran.mile;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.comparison.legal.LegalClasses;

/// Sentences of three invented bikes, and what becomes of them when a reading is corrected.
class SentencesCommandTest {
    private static final String STOP = "packhorse/braking.stopping-distance/method=tape,nominal=20-mph,surface=dry";

    @TempDir
    private Path folder = Path.of("");

    @BeforeEach
    void takeThreeDays() throws IOException {
        take("day-1", "packhorse", "20.3");
        take("day-2", "dray", "20.8");
        take("day-3", "barrow", "20.3");
    }

    private Path archive() {
        return folder.resolve("archive");
    }

    private void take(String day, String bike, String entryMph) throws IOException {
        mile("import", "--archive", archive(), DayOnDisk.write(folder, day, bike, entryMph));
    }

    private Ran sentences(Object... more) {
        var words = new java.util.ArrayList<Object>(java.util.List.of("sentences", "--archive", archive()));
        words.addAll(java.util.List.of(more));
        return mile(words.toArray());
    }

    @Test
    void aBikesSentencesAreWrittenOrSpokenEachWithItsId() {
        var written = sentences("packhorse", "--units", "imperial");
        assertThat(written.exit()).isZero();
        assertThat(written.out())
                .contains("From 20 mph in the dry, the packhorse stopped in 20.9 ± 1.8 ft (6.4 ± 0.5 m)")
                .contains("the mean of three stops")
                .contains("Of the three bikes we have tested this way, to 4 May 2031")
                .contains(STOP + "/figure#", STOP + "/rank/every-bike#");
        assertThat(sentences("packhorse", "--units", "imperial", "--spoken").out())
                .contains("From twenty miles an hour in the dry, the packhorse stopped in twenty", "give or take");
    }

    @Test
    void theJsonHoldsBothSystemsAndTheNumbersBehind() {
        var figure = sentences("packhorse", "--json").json().path(0);
        assertThat(figure.path("id").asString()).isEqualTo(STOP + "/figure");
        assertThat(figure.path("hash").asString()).matches("[0-9a-f]{8}");
        assertThat(figure.path("written").path("imperial").asString()).contains("ft");
        assertThat(figure.path("spoken").path("metric").asString()).contains("metres");
        assertThat(figure.path("behind").path("value").asDouble()).isBetween(6.0, 7.0);
        assertThat(figure.path("behind").path("interval95").size()).isEqualTo(2);
        assertThat(figure.path("behind").path("runs").asInt()).isEqualTo(3);
    }

    @Test
    void aCorrectedReadingChangesItsOwnSentencesAndTheRanksOfTheOthers() throws IOException {
        var first = sentences("--changed", "--seen-by", "E1", "--json");
        assertThat(first.exit()).isZero();
        assertThat(first.json().valueStream().map(one -> one.path("change").asString()))
                .hasSizeGreaterThan(6)
                .containsOnly("new");
        assertThat(first.json()
                        .valueStream()
                        .filter(one -> one.path("id").asString().contains("/class/")))
                .isNotEmpty()
                .allSatisfy(one -> assertThat(
                                one.path("now").path("written").path("metric").asString())
                        .contains(LegalClasses.CAUTION));
        assertThat(sentences("--changed").out()).contains("every sentence says what it said");

        take("day-1", "packhorse", "21.1");
        var changed = sentences("--changed", "--json");

        assertThat(changed.exit()).isEqualTo(1);
        assertThat(changed.json().valueStream().map(one -> one.path("id").asString()))
                .contains(STOP + "/figure", STOP + "/rank/every-bike");
        var own = changed.json()
                .valueStream()
                .filter(one -> one.path("id").asString().equals(STOP + "/figure"))
                .findFirst()
                .orElseThrow();
        assertThat(own.path("causes").path(0).asString()).isEqualTo("figure");
        assertThat(own.path("before").path("hash").asString())
                .isNotEqualTo(own.path("now").path("hash").asString());

        assertThat(sentences("packhorse", "--changed", "--seen-by", "E1").out()).contains("kept as seen by E1");
        assertThat(sentences("packhorse", "--changed").exit()).isZero();
    }

    @Test
    void whatSomebodySawComesBackFromAnExport() throws IOException {
        sentences("--changed", "--seen-by", "E1");
        var export = folder.resolve("export");
        mile("export", export, "--archive", archive());
        var second = folder.resolve("second");

        mile("import", export, "--archive", second);

        var changed = mile("sentences", "--changed", "--archive", second);
        assertThat(changed.out()).contains("every sentence says what it said");
    }

    @Test
    void whatCannotBeAskedIsSaidSo() {
        assertThat(sentences().exit()).isEqualTo(2);
        assertThat(sentences("nobody").err()).contains("no bike nobody is in this archive");
        assertThat(sentences("packhorse", "--seen-by", "E1").exit()).isEqualTo(2);
    }
}
