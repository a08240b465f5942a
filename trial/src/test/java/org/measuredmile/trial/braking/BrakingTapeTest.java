package org.measuredmile.trial.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.statistics.Sample;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.Outcome;

class BrakingTapeTest {
    private static BrakingDays threeStops() {
        return BrakingDays.day()
                .taped("b-1", "21.2 ft", "20.3 mph")
                .taped("b-2", "20.7 ft", "19.8 mph")
                .taped("b-3", "21.9 ft", "20.4 mph");
    }

    private static Figure only(Outcome outcome) {
        assertThat(outcome.figures()).hasSize(1);
        return outcome.figures().getFirst();
    }

    private static Sample feet(Figure figure) {
        return Sample.of(figure.runs().stream()
                .filter(FigureRun::counted)
                .mapToDouble(run -> Unit.FOOT.fromSi(run.value().orElseThrow()))
                .toArray());
    }

    /// Rows T01 and T02 of the crew's table of check values (computed there by hand from d · (20 / v)²).
    @Test
    void threeStopsOfTheHandbookGiveTheirMeanAndScatter() {
        var figure = only(threeStops().reduce());
        assertThat(figure.key().text()).isEqualTo("braking.stopping-distance method=tape nominal=20-mph surface=dry");
        var corrected = feet(figure);
        assertThat(corrected.values().get(0)).isCloseTo(20.5780, within(0.0001));
        assertThat(corrected.values().get(1)).isCloseTo(21.1203, within(0.0001));
        assertThat(corrected.values().get(2)).isCloseTo(21.0496, within(0.0001));
        assertThat(Unit.FOOT.fromSi(figure.value())).isCloseTo(20.916, within(0.0005));
        assertThat(corrected.standardDeviation()).isCloseTo(0.2948, within(0.00005));
        assertThat(figure.thisDay().interval95().contains(figure.value())).isTrue();
        assertThat(figure.anyDay().standard()).isGreaterThan(figure.thisDay().standard());
    }

    @Test
    void aRunOutsideTheEntryWindowIsShownAndNotCounted() {
        var three = only(threeStops().reduce());
        var outcome = BrakingDays.day()
                .taped("b-1", "21.2 ft", "20.3 mph")
                .taped("b-2", "20.7 ft", "19.8 mph")
                .taped("b-3", "21.9 ft", "21.2 mph")
                .reduce();
        var two = only(outcome);
        assertThat(two.counted()).isEqualTo(2);
        assertThat(two.runs()).hasSize(3);
        assertThat(two.anyDay().interval95().halfWidth())
                .isGreaterThan(three.anyDay().interval95().halfWidth());
        assertThat(two.thisDay().interval95().halfWidth())
                .isGreaterThan(three.thisDay().interval95().halfWidth());
        var third = outcome.runs().get(2);
        assertThat(third.counted()).isFalse();
        assertThat(third.reason()).contains("21.2 mph").contains("19.07 to 20.93 mph");
        assertThat(third.values()).isNotEmpty();
    }

    @Test
    void theEndsOfTheWindowBelongToIt() {
        var window = BrakingRules.Nominal.TWENTY_MPH.window();
        assertThat(window.contains(Unit.MILE_PER_HOUR.toSi(20) + Unit.KILOMETRE_PER_HOUR.toSi(1.5)))
                .isTrue();
        assertThat(window.contains(Unit.MILE_PER_HOUR.toSi(20) - Unit.KILOMETRE_PER_HOUR.toSi(1.5)))
                .isTrue();
        var window25 = BrakingRules.Nominal.TWENTY_FIVE_KMH.window();
        assertThat(window25.contains(Unit.KILOMETRE_PER_HOUR.toSi(23.5))).isTrue();
        assertThat(window25.contains(Unit.KILOMETRE_PER_HOUR.toSi(26.5))).isTrue();
    }

    @Test
    void withoutThePreRideCheckNoRunCounts() {
        var outcome = threeStops().withoutCheck().reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs()).hasSize(3).allSatisfy(run -> {
            assertThat(run.counted()).isFalse();
            assertThat(run.reason()).contains("pre-ride check");
        });
        assertThat(outcome.findings()).extracting(Finding::code).contains("no-pre-ride-check");
    }

    @Test
    void aTapeReadingThatCannotBeIsNotBelievedAndTheRestIsReduced() {
        var outcome = threeStops().taped("b-4", "212 ft", "20.1 mph").reduce();
        assertThat(only(outcome).counted()).isEqualTo(3);
        assertThat(outcome.runs().get(3).counted()).isFalse();
        assertThat(outcome.runs().get(3).reason()).contains("212 ft").contains("131.2 ft");
    }

    @Test
    void aVoidRunWithoutACauseIsNamed() {
        var outcome = threeStops()
                .run("b-4", "tape", Run.State.VOID, "")
                .reading("b-4", "entry-speed", "20 mph")
                .reading("b-4", "stopping-distance", "30 ft")
                .reduce();
        assertThat(only(outcome).counted()).isEqualTo(3);
        assertThat(outcome.runs().get(3).reason()).contains("no cause");
        assertThat(outcome.findings()).extracting(Finding::code).contains("void-cause-unknown");
    }

    @Test
    void aStopBeyondPitchingOverIsPointedAtAndKept() {
        var outcome = threeStops().taped("b-4", "18.5 ft", "20 mph").reduce();
        assertThat(only(outcome).counted()).isEqualTo(4);
        assertThat(outcome.findings()).extracting(Finding::code).contains("beyond-pitch-over");
        assertThat(threeStops().taped("b-4", "19.1 ft", "20 mph").reduce().findings())
                .extracting(Finding::code)
                .doesNotContain("beyond-pitch-over");
    }

    @Test
    void growingStopsAreCalledFade() {
        var fading = BrakingDays.day();
        String[] feet = {"20.0 ft", "20.6 ft", "21.1 ft", "21.7 ft", "22.2 ft", "22.9 ft"};
        for (int i = 0; i < feet.length; i++) {
            fading.taped("b-" + i, feet[i], "20 mph");
        }
        assertThat(only(fading.reduce()).findings()).extracting(Finding::code).contains("fade");
    }
}
