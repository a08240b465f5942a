package org.measuredmile.trial.coastdown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.coastdown.CoastDays.Coast;
import org.measuredmile.trial.coastdown.CoastDays.Ride;

class CoastdownTest {
    private static final Coast BIKE = new Coast(0.008, 0.6, 0, 0);

    /// Newtons of that bike at 20 km/h, less what is taken off for gusts.
    private static final double FORCE_N =
            105 * 9.80665 * 0.008 + CoastDays.AIR * 0.3 * (Math.pow(20 / 3.6, 2) - CoastdownRules.GUSTS_M2PS2);

    private static CoastDays onePair(Coast out, Coast back, double rateHz, double noiseMps, long seed) {
        return CoastDays.day()
                .run("c-01", "out")
                .run("c-02", "back")
                .recording(
                        new Ride().coast(out).coast(back).seen("coasts.csv", rateHz, noiseMps, seed), "c-01", "c-02");
    }

    @ParameterizedTest(name = "wind {0} m/s, grade {1}")
    @CsvSource({"0, 0", "1.5, 0", "-1.5, 0.002", "0, 0.004", "2, -0.003"})
    void bothWaysTogetherTakeOutWindAndGrade(double windMps, double grade) {
        var out = new Coast(0.008, 0.6, grade, windMps);
        var outcome = onePair(out, out.back(), 5, 0, 1).reduce();
        assertThat(CoastDays.figure(outcome, "force-at-20-kmh").value()).isCloseTo(FORCE_N, within(0.006 * FORCE_N));
        assertThat(CoastDays.has(outcome, "wind-not-told-from-grade")).isTrue();
    }

    @ParameterizedTest(name = "{0} Hz")
    @ValueSource(doubles = {1, 2, 5, 10, 25})
    void anyReceiverOfOneHertzOrMoreWillDo(double rateHz) {
        var outcome = onePair(BIKE, BIKE, rateHz, 0.03, 5).reduce();
        assertThat(CoastDays.figure(outcome, "force-at-20-kmh").value()).isCloseTo(FORCE_N, within(0.02 * FORCE_N));
    }

    @Test
    void oneWayAloneGivesNoFigure() {
        var ride = new Ride().coast(BIKE).coast(BIKE);
        var outcome = CoastDays.day()
                .run("c-01", "out")
                .run("c-02", "out")
                .recording(ride.seen("coasts.csv", 5, 0.03, 2), "c-01", "c-02")
                .reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(CoastDays.has(outcome, "one-way-only")).isTrue();
        assertThat(outcome.runs())
                .allMatch(run -> run.reason().contains("no coast the other way"))
                .noneMatch(run -> run.counted());
    }

    @Test
    void aCoastWithoutItsPairIsLeftOutAndTheOthersCount() {
        var ride = new Ride().coast(BIKE).coast(BIKE).coast(BIKE);
        var outcome = CoastDays.day()
                .run("c-01", "out")
                .run("c-02", "back")
                .run("c-03", "out")
                .recording(ride.seen("coasts.csv", 5, 0.03, 3), "c-01", "c-02", "c-03")
                .reduce();
        assertThat(outcome.runs()).extracting(run -> run.counted()).containsExactly(true, true, false);
        assertThat(CoastDays.figure(outcome, "force-at-20-kmh").runs()).hasSize(3);
    }

    @Test
    void speedsTooCloseTogetherGiveAForceAndNoCoefficients() {
        var ride = new Ride().coast(BIKE, 30 / 3.6, 15 / 3.6).coast(BIKE, 30 / 3.6, 15 / 3.6);
        var outcome = CoastDays.day()
                .run("c-01", "out")
                .run("c-02", "back")
                .recording(ride.seen("coasts.csv", 5, 0, 4), "c-01", "c-02")
                .reduce();
        assertThat(outcome.figures())
                .extracting(figure -> figure.key().figure())
                .contains("coastdown.force-at-20-kmh")
                .doesNotContain("coastdown.rolling-coefficient", "coastdown.drag-area", "coastdown.force-at-30-kmh");
        assertThat(CoastDays.has(outcome, "speeds-too-close")).isTrue();
        assertThat(outcome.correlations()).isEmpty();
    }

    @Test
    void aFallOfSpeedThatNobodyWroteDownIsProposedAndDoesNotCount() {
        var outcome = CoastDays.day()
                .recording(new Ride().coast(BIKE).coast(BIKE).seen("ride.csv", 5, 0.03, 6))
                .reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs())
                .hasSize(2)
                .allMatch(run -> run.state() == Run.State.PROPOSED
                        && run.reason().contains("does not tell it from soft pedalling"));
    }

    @Test
    void tooFewSamplesASecondAreRefusedWithLimitAndValue() {
        var outcome = onePair(BIKE, BIKE, 0.5, 0, 7).reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs().getFirst().reason()).isEqualTo("sampled every 2.0 s, at most 1.0 s allowed");
    }

    @Test
    void twoSplitsOfAWatchDoWithoutARecording() {
        var day = CoastDays.day();
        for (int i = 1; i <= 4; i++) {
            String id = "c-0" + i;
            day.run(id, i % 2 == 1 ? "out" : "back")
                    .reading(id, "time-from-30-to-20-kmh", seconds(BIKE.timeS(30 / 3.6, 20 / 3.6)))
                    .reading(id, "time-from-20-to-10-kmh", seconds(BIKE.timeS(20 / 3.6, 10 / 3.6)));
        }
        var outcome = day.reduce();
        var force = CoastDays.figure(outcome, "force-at-20-kmh");
        assertThat(force.value()).isCloseTo(FORCE_N, within(0.01 * FORCE_N));
        assertThat(force.budget())
                .extracting(one -> one.input())
                .contains("timing by hand, of 2 pairs", "scale of the display (not calibrated)");
        assertThat(CoastDays.figure(outcome, "rolling-coefficient").value()).isCloseTo(0.008, within(0.0002));
    }

    private static String seconds(double value) {
        return String.format(Locale.ROOT, "%.2f s", value);
    }

    @Test
    void aVoidRunTakesItsPairWithIt() {
        var ride = new Ride().coast(BIKE).coast(BIKE);
        var outcome = CoastDays.day()
                .run("c-01", "out")
                .run("c-02", "back", Run.State.VOID, "brake")
                .recording(ride.seen("coasts.csv", 5, 0, 8), "c-01", "c-02")
                .reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs().get(1).reason()).isEqualTo("void: a brake was touched");
    }

    @Test
    void aWindAboveTheLimitVoidsAndAnUnknownOneIsAFinding() {
        assertThat(onePair(BIKE, BIKE, 5, 0, 9)
                        .wind(OptionalDouble.of(4))
                        .reduce()
                        .runs())
                .noneMatch(run -> run.counted());
        var unknown = onePair(BIKE, BIKE, 5, 0, 9).wind(OptionalDouble.empty()).reduce();
        assertThat(CoastDays.has(unknown, "condition-missing")).isTrue();
        assertThat(unknown.figures()).isNotEmpty();
    }

    @Test
    void aBikeThatNobodyWeighedWidensTheIntervalAndTheFigureSaysSo() {
        var ride = new Ride().coast(BIKE).coast(BIKE).seen("coasts.csv", 5, 0, 10);
        var weighed = CoastDays.figure(
                CoastDays.day()
                        .run("c-01", "out")
                        .run("c-02", "back")
                        .recording(ride, "c-01", "c-02")
                        .reduce(),
                "force-at-20-kmh");
        var guessed = CoastDays.figure(
                CoastDays.withoutScale()
                        .run("c-01", "out")
                        .run("c-02", "back")
                        .recording(ride, "c-01", "c-02")
                        .reduce(),
                "force-at-20-kmh");
        assertThat(guessed.thisDay().standard()).isGreaterThan(weighed.thisDay().standard());
        assertThat(guessed.assumed()).contains("mass of the bike: 28 ± 4 kg");
        assertThat(weighed.used()).extracting(used -> used.key().text()).containsExactly("weighin.mass battery=in");
    }

    @Test
    void aRunIsTheCoastBetweenTheEndsThatAPersonSet() {
        var ride = new Ride().coast(BIKE).coast(BIKE);
        var found = onePair(BIKE, BIKE, 5, 0, 11).reduce();
        var second = found.runs().get(1).stretch().orElseThrow();
        var set = CoastDays.day()
                .run("c-01", "out")
                .run("c-02", "back")
                .recording(ride.seen("coasts.csv", 5, 0, 11), "c-01", "c-02")
                .window("coasts.csv", "c-02", second.fromS() - 3, second.toS() + 3)
                .reduce();
        assertThat(set.runs()).allMatch(run -> run.counted());
        assertThat(CoastDays.figure(set, "force-at-20-kmh").value())
                .isCloseTo(CoastDays.figure(found, "force-at-20-kmh").value(), within(0.02));
        var empty = CoastDays.day()
                .run("c-01", "out")
                .recording(ride.seen("coasts.csv", 5, 0, 11), "c-01")
                .window("coasts.csv", "c-01", second.toS() + 1, second.toS() + 4)
                .reduce();
        assertThat(empty.runs().getFirst().reason()).startsWith("no coast lies between");
    }
}
