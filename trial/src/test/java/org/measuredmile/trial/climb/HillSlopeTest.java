package org.measuredmile.trial.climb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.CourseHeights;
import org.measuredmile.recording.day.CourseHeights.Point;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Balance;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Outcome;

class HillSlopeTest {
    private static final String FORETOLD = "climb.foretold-time course=hill drive=throttle";
    private static final String REFERENCE = "climb.time at=reference course=hill drive=throttle";
    private static final double WATTS = 399.6;

    private static CourseHeights heights(double middleM, double riseM, double sd) {
        return new CourseHeights(List.of(new Point(0, 0, 0), new Point(600, middleM, sd), new Point(1200, riseM, sd)));
    }

    private static Outcome ridden(CourseHeights heights) {
        return ClimbDays.onAHill(1200, 60, heights)
                .rider(90)
                .weighed(25)
                .used("standingstart.launch-force", Variant.of("drive", "throttle"), QuantityKind.FORCE, 350, 4)
                .used("standingstart.power-limit", Variant.of("drive", "throttle"), QuantityKind.POWER, WATTS, 6)
                .run("c-1", "throttle")
                .reading("c-1", "climb-time", "240.0 s")
                .reading("c-1", "climb-entry-speed", "5.0 m/s")
                .reduce();
    }

    private static Figure figure(CourseHeights heights, String key) {
        return ClimbDays.figure(ridden(heights), key);
    }

    private static double part(Figure figure, String input) {
        return figure.budget().stream()
                .filter(one -> one.input().equals(input))
                .mapToDouble(one -> one.standardUncertainty())
                .sum();
    }

    @Test
    void anEvenProfileForetellsWhatAnEvenSlopeDoes() {
        var even = figure(CourseHeights.NONE, FORETOLD);
        var levelled = figure(heights(30, 60, 0), FORETOLD);
        assertThat(levelled.value()).isCloseTo(even.value(), within(1e-3));
        assertThat(even.assumed()).contains("an even slope between the gates");
        assertThat(levelled.assumed()).doesNotContain("an even slope between the gates");
    }

    /// Two long halves of 3 and 7 %, each near the steady speed that Martin et al. (1998), equation (1), gives: the
    /// time is the sum of both, give or take what the bike takes to slow down.
    @Test
    void aProfileOfTwoSlopesTakesTheTimeOfBoth() {
        var load = new RoadLoad(0.009, 0.6);
        var setting = new Setting(115, 3, 1.1834, 9.80665);
        double sum = 0;
        for (double sine : new double[] {18.0 / 600, 42.0 / 600}) {
            double grade = sine / StrictMath.sqrt(1 - sine * sine);
            sum += 600
                    / Balance.speedMps(load, setting, v -> Math.min(350, WATTS / v), grade, 0)
                            .orElseThrow();
        }
        double even = figure(CourseHeights.NONE, FORETOLD).value();
        double levelled = figure(heights(18, 60, 0), FORETOLD).value();
        assertThat(levelled).isCloseTo(sum, within(2.0));
        assertThat(levelled - even).isGreaterThan(2.0);
    }

    @Test
    void theHeightsOfAProfileAreInTheBudgetAsWellAsTheyAreKnown() {
        for (String key : List.of(FORETOLD, REFERENCE)) {
            var exact = figure(heights(24, 60, 0), key);
            var rough = figure(heights(24, 60, 0.5), key);
            var rougher = figure(heights(24, 60, 1.0), key);
            assertThat(part(exact, "heights of the profile")).isCloseTo(0, within(1e-3));
            assertThat(part(rough, "heights of the profile")).isPositive();
            assertThat(part(rougher, "heights of the profile"))
                    .isCloseTo(
                            2 * part(rough, "heights of the profile"),
                            within(0.1 * part(rougher, "heights of the profile")));
            assertThat(part(rough, "an even slope between the gates (assumed)")).isZero();
        }
        assertThat(part(figure(CourseHeights.NONE, FORETOLD), "an even slope between the gates (assumed)"))
                .isPositive();
    }

    @Test
    void aProfileThatRisesOtherwiseThanTheRecordIsSaidToAndTilted() {
        var outcome = ridden(heights(30, 63, 0.05));
        assertThat(outcome.findings())
                .filteredOn(finding -> finding.code().equals("profile-rises-otherwise"))
                .singleElement()
                .extracting(Finding::message)
                .asString()
                .contains("63.0", "60.0");
        assertThat(ClimbDays.figure(outcome, FORETOLD).value())
                .isCloseTo(figure(heights(28.5, 60, 0.05), FORETOLD).value(), within(1e-3));
    }
}
