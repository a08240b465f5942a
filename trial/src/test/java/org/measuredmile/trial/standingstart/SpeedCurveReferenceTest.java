package org.measuredmile.trial.standingstart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

/// Starts whose acceleration is even or falls in a straight line, so that the integrals are known.
class SpeedCurveReferenceTest {
    private static final SpeedCurve EVEN = new SpeedCurve(new double[] {0, 12}, new double[] {2, 2});
    /// a = 2.5 − 0.2·v, told by three nodes.
    private static final SpeedCurve FALLING = new SpeedCurve(new double[] {0, 4, 10}, new double[] {2.5, 1.7, 0.5});

    @ParameterizedTest
    @ValueSource(doubles = {2, 5, 8.9408})
    void aChangeOfAnEvenAccelerationChangesTheTimeByItsShare(double toMps) {
        // ∫ δ/a² dv = δ·v/a².
        assertThat(EVEN.firstOrderS(toMps, v -> 0.1)).isCloseTo(0.1 * toMps / 4, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(doubles = {2, 5, 8.9408})
    void whereAccelerationFallsInALineTheIntegralIsItsReciprocals(double toMps) {
        // ∫ dv/(2.5 − 0.2·v)² = (1/(2.5 − 0.2·v) − 1/2.5)/0.2.
        double integral = (1 / (2.5 - 0.2 * toMps) - 1 / 2.5) / 0.2;

        assertThat(FALLING.firstOrderS(toMps, v -> 1)).isCloseTo(integral, withinPercentage(0.01));
    }

    @ParameterizedTest
    @ValueSource(doubles = {2, 5, 8.9408})
    void moreThrustShortensATimeByWhatItAddsToTheRestOfTheAcceleration(double toMps) {
        double rolling = StandingStartRules.ROLLING_MPS2;
        double drag = StandingStartRules.DRAG_PER_M / 2;
        // Means of rolling + drag·v² over the time, v evenly spread, and over the way, v·dv.
        double byTime = rolling + drag * toMps * toMps / 3;
        double byWay = rolling + drag * toMps * toMps / 2;

        assertThat(EVEN.timeAnswers(toMps)).isCloseTo(1 + byTime / 2, within(1e-4));
        assertThat(EVEN.distanceAnswers(toMps)).isCloseTo(1 + byWay / 2, within(1e-4));
    }

    /// The weight of the middle of a quadratic through 2m + 1 samples, 3·(3n² − 7)/(4n·(n² − 4)) (Savitzky and
    /// Golay, Analytical Chemistry 36 (1964) 1627: 17/35 for five, 7/21 for seven).
    @ParameterizedTest
    @CsvSource({"0.21, 5, 0.485714", "0.31, 7, 0.333333"})
    void aParabolaIsCrossedWhereItIs(double halfWindowS, int samples, double leverage) {
        double crossingS = 10;
        double[] times = new double[201];
        double[] speeds = new double[201];
        for (int i = 0; i < times.length; i++) {
            times[i] = 0.1 * i;
            double t = times[i] - crossingS;
            speeds[i] = 5 + 1.2 * t - 0.15 * t * t;
        }
        var speed = new Channel(ChannelKind.SPEED, "v", "m/s", new Channel.Series(times, speeds));
        var found = Crossing.of(speed, 5, halfWindowS, crossingS + 0.04).orElseThrow();

        assertThat(found.timeS()).isCloseTo(crossingS, within(1e-9));
        assertThat(found.slopeMps2()).isCloseTo(1.2, within(1e-6));
        assertThat(found.residualMps()).isCloseTo(0, within(1e-6));
        assertThat(found.leverage())
                .isCloseTo(
                        (3.0 * (3 * samples * samples - 7)) / (4.0 * samples * (samples * samples - 4)), within(1e-6));
        assertThat(found.leverage()).isCloseTo(leverage, within(1e-4));
    }

    @Test
    void aSpeedThatTheParabolaNeverReachesIsNotCrossed() {
        double[] times = {0, 0.1, 0.2, 0.3, 0.4};
        double[] speeds = {4.0, 4.1, 4.15, 4.1, 4.0};
        var speed = new Channel(ChannelKind.SPEED, "v", "m/s", new Channel.Series(times, speeds));

        assertThat(Crossing.of(speed, 5, 0.25, 0.2)).isEmpty();
        // Three samples lie on any parabola.
        assertThat(Crossing.of(speed, 4.05, 0.11, 0.1)).isEmpty();
    }
}
