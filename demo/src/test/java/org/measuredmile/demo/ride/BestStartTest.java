package org.measuredmile.demo.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/// The expected numbers are worked by hand in the comments.
class BestStartTest {
    private static final double TWENTY_MPS = 20 * 0.44704;

    private static StartedBike bike(double runScatter) {
        return new StartedBike(1.9, 6.75, 0.4, 80, 28, 3, 0.009, 0.60, runScatter, 0.025);
    }

    /// Of 108 kg nobody knows 4 kg: 3.7 % of a force, whatever the trace says of the acceleration, and rolling
    /// 0.003·9.81/1.9 = 1.5 % besides; the prior spread of the thrust, 15 %, is far wider.
    @Test
    void nobodyTellsAForceBetterThanTheMassOfAnUnweighedBike() {
        double relative = BestStart.byTrace(bike(0.001)).sd(RiddenStart::launchN, false) / (1.9 * 108);
        assertThat(relative).isBetween(4 / 108.0, 0.05);
    }

    /// Scatter of 3 % in six runs leaves 1.2 % of the thrust, to which a time answers one to one at least.
    @Test
    void noTraceAveragesTheScatterOfSixRunsAway() {
        var bike = bike(0.03);
        double timeS = RiddenStart.of(bike, RiddenStart.Road.LEVEL).timeToS(TWENTY_MPS);
        double scattering = BestStart.byTrace(bike).sd(ride -> ride.timeToS(TWENTY_MPS), false);
        double steady = BestStart.byTrace(bike(0.001)).sd(ride -> ride.timeToS(TWENTY_MPS), false);
        assertThat(scattering).isGreaterThan(0.03 / Math.sqrt(6) * timeS).isGreaterThan(2 * steady);
    }

    /// The time to 10 mph by a watch has the display's lateness of 0.2 s in it, of which what is usual of
    /// thrust and build-up takes a little off; a trace has neither.
    @Test
    void aWatchTellsATimeNoBetterThanItsDisplayIsLate() {
        double byWatch = BestStart.byWatch(bike(0.03)).sd(ride -> ride.timeToS(TWENTY_MPS / 2), false);
        double byTrace = BestStart.byTrace(bike(0.03)).sd(ride -> ride.timeToS(TWENTY_MPS / 2), false);
        assertThat(byWatch).isBetween(0.14, 0.22).isGreaterThan(2 * byTrace);
    }

    @Test
    void underTheReferenceRiderOneOfTheSameMassIsKnownAsWell() {
        var best = BestStart.byTrace(bike(0.03));
        assertThat(best.sd(ride -> ride.timeToS(TWENTY_MPS), true))
                .isCloseTo(best.sd(ride -> ride.timeToS(TWENTY_MPS), false), within(1e-9));
    }
}
