package org.measuredmile.trial.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;

/// A value times a ratio of known draws.
class ReferenceRatioReferenceTest {
    private static final int DRAWS = 20_000;

    private static ReferenceRatio ratio(double[] draws) {
        return new ReferenceRatio(1.2, draws, 20, 0.1);
    }

    private static double[] all(double value) {
        double[] draws = new double[DRAWS];
        Arrays.fill(draws, value);
        return draws;
    }

    private static Uncertainty known(double sd) {
        return new Uncertainty(sd, Double.POSITIVE_INFINITY, new Interval(42_000 - 1.96 * sd, 42_000 + 1.96 * sd));
    }

    @Test
    void aCertainRatioScalesTheValuesOwnUncertainty() {
        var scaled = ratio(all(1.2)).times(42_000, known(500), false);

        // 20,000 draws: quantiles within three per cent, the standard deviation within two.
        assertThat(scaled.standard()).isCloseTo(1.2 * 500, withinPercentage(2));
        assertThat(scaled.interval95().low()).isCloseTo(1.2 * (42_000 - 1.96 * 500), within(40.0));
        assertThat(scaled.interval95().high()).isCloseTo(1.2 * (42_000 + 1.96 * 500), within(40.0));
    }

    @Test
    void aCostFallsAsTheRatioGrows() {
        var scaled = ratio(all(1.25)).times(30, known(0), true);

        assertThat(scaled.interval95().low()).isEqualTo(24);
        assertThat(scaled.interval95().high()).isEqualTo(24);
    }

    /// Draws spread evenly from 1 to 2: the interval goes from 1.025 to 1.975, the standard deviation is 1/√12.
    @Test
    void aCertainValueTakesTheRatiosOwnQuantiles() {
        double[] draws = new double[DRAWS];
        Arrays.setAll(draws, i -> 1 + (i + 0.5) / DRAWS);
        var scaled = ratio(draws).times(1000, known(0), false);

        assertThat(scaled.interval95().low()).isCloseTo(1025, within(0.2));
        assertThat(scaled.interval95().high()).isCloseTo(1975, within(0.2));
        assertThat(scaled.standard()).isCloseTo(1000 / Math.sqrt(12), withinPercentage(0.1));
    }

    @Test
    void drawsWithoutAnEndAreNeverDropped() {
        double[] few = all(1);
        Arrays.fill(few, 0, DRAWS * 2 / 100, Double.POSITIVE_INFINITY);
        double[] many = all(1);
        Arrays.fill(many, 0, DRAWS * 3 / 100, Double.POSITIVE_INFINITY);

        assertThat(ratio(few).times(1000, known(0), false).interval95().high()).isEqualTo(1000);
        assertThat(ratio(many).times(1000, known(0), false).interval95().high()).isInfinite();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.8, 1.1, 1.5})
    void aSteadyRideMadeFasterIsTheSteadyRideAtThatSpeed(double times) {
        var setting = new Setting(105, 3, 1.19, 9.80665);
        var load = new RoadLoad(0.009, 0.6);
        var faster = RideConditions.steady(setting, 6, 75).faster(times);
        var steady = RideConditions.steady(setting, 6 * times, 75);

        assertThat(EnergyModel.joulesPerMetre(faster, load, 0.75))
                .isCloseTo(EnergyModel.joulesPerMetre(steady, load, 0.75), within(1e-9));
        assertThat(faster.secondsPerMetre()).isCloseTo(1 / (6 * times), within(1e-12));
    }
}
