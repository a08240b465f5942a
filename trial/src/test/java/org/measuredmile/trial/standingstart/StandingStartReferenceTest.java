package org.measuredmile.trial.standingstart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.statistics.Sample;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

/// Worked examples B1 to B3 of the crew's own study of reduction algorithms (computed there with another
/// program in another language, full convergence), with the tolerances stated there.
class StandingStartReferenceTest {
    private static Channel speed(double[] times, double[] values) {
        return new Channel(ChannelKind.SPEED, "speed", "m/s", new Channel.Series(times, values));
    }

    @Test
    void aStartIsFittedWithItsPriors() {
        double[] times = new double[13];
        for (int i = 0; i < times.length; i++) {
            times[i] = -0.5 + 0.2 * i;
        }
        double[] values = {0.06, 0.06, 0.06, 0.06, 0.15, 0.46, 0.86, 1.25, 1.64, 2.03, 2.41, 2.79, 3.16};
        var fit = switch (StartFit.fit(speed(times, values), 0.07, 0.06)) {
            case StartFit.Result.Good(var fitted) -> fitted;
            case StartFit.Result.Bad(var why) -> throw new AssertionError(why);
        };
        assertThat(fit.motionS()).isCloseTo(0.0738, within(0.002));
        assertThat(fit.motionSd()).isCloseTo(0.063, within(0.002));
        assertThat(fit.curve().buildUpS()).isCloseTo(0.4058, within(0.002));
        assertThat(fit.curve().accelerationMps2()).isCloseTo(2.0311, within(0.002));
        assertThat(fit.curve().fadeMps3()).isCloseTo(0.0703, within(0.002));
        assertThat(fit.settled().cost()).isCloseTo(0.079, within(0.002));
        assertThat(fit.rampS()).isCloseTo(0.2766, within(0.002));
    }

    @Test
    void aSpeedIsCrossedByAParabola() {
        double[] times = {2.6, 2.7, 2.8, 2.9, 3.0, 3.1, 3.2};
        double[] values = {4.21, 4.30, 4.41, 4.50, 4.60, 4.68, 4.79};
        double tenMph = Unit.MILE_PER_HOUR.toSi(10);
        var crossing = Crossing.of(speed(times, values), tenMph, 0.5, 2.9).orElseThrow();
        assertThat(crossing.timeS()).isCloseTo(2.8692, within(0.0002));
        assertThat(crossing.slopeMps2()).isCloseTo(0.9629, within(0.0002));
        assertThat(crossing.residualMps()).isCloseTo(0.0078, within(0.0002));
    }

    @Test
    void theIntervalOfADayAddsWhatItsRunsShare() {
        double mean = Sample.of(3.42, 3.55, 3.47, 3.60).mean();
        var day = Budget.of(
                        Contribution.typeA("scatter of 4 runs", 0.09 / Math.sqrt(4), 12),
                        Contribution.typeB("build-up of thrust", 0.05))
                .around(mean);
        assertThat(mean).isCloseTo(3.5100, within(0.0005));
        assertThat(day.standard()).isCloseTo(0.06727, within(0.0005));
        assertThat(day.degreesOfFreedom()).isCloseTo(59.9, within(0.1));
        assertThat(day.interval95().halfWidth()).isCloseTo(0.1346, within(0.0005));
    }

    /// The closed form against the same by small steps.
    @Test
    void theDistanceOfAStartIsItsSpeedAddedUp() {
        var curve = new StartCurve(0.4, 2.0, 0.05);
        double metres = 0;
        for (int i = 0; i < 20_000; i++) {
            metres += curve.speedMps((i + 0.5) * 1e-4) * 1e-4;
        }
        assertThat(curve.distanceM(2.0)).isCloseTo(metres, within(1e-6));
        assertThat(curve.distanceM(0.2)).isCloseTo(2.0 * 0.2 * 0.2 * 0.2 / 2.4, within(1e-12));
    }
}
