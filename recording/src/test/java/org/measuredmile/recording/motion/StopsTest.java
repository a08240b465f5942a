package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

class StopsTest {
    /// 9 m/s for 5 s, stop at 6 m/s² (1.5 s), rest 3 s, off again to 8 m/s, then down to 4 m/s only.
    private static Channel ride(double noiseMps) {
        var random = new Random(3);
        double[] times = new double[300];
        double[] values = new double[300];
        for (int i = 0; i < times.length; i++) {
            double t = i * 0.1;
            double v = t < 5 ? 9 : t < 6.5 ? 9 - 6 * (t - 5) : t < 9.5 ? 0 : Math.min(8, 2 * (t - 9.5));
            v = t < 20 ? v : Math.max(4, 8 - 2 * (t - 20));
            times[i] = t;
            values[i] = Math.abs(v + noiseMps * random.nextGaussian());
        }
        return new Channel(ChannelKind.SPEED, "v", "m/s", new Channel.Series(times, values));
    }

    @Test
    void findsTheStopAndTheFallThatIsNone() {
        var stops = Stops.find(ride(0.08));
        assertThat(stops).hasSize(2);
        assertThat(stops.get(0).cameToRest()).isTrue();
        assertThat(stops.get(0).onsetS()).isCloseTo(4.8, within(0.3));
        assertThat(stops.get(0).entryMps()).isCloseTo(9.0, within(0.1));
        assertThat(stops.get(0).restForS()).isBetween(2.5, 3.5);
        assertThat(stops.get(1).cameToRest()).isFalse();
        assertThat(stops.get(1).lowestMps()).isCloseTo(4.0, within(0.3));
    }

    @Test
    void findsNothingInSteadyRiding() {
        double[] times = {0, 1, 2, 3, 4};
        double[] values = {5, 5.2, 4.9, 5.1, 5};
        assertThat(Stops.find(new Channel(ChannelKind.SPEED, "v", "m/s", new Channel.Series(times, values))))
                .isEmpty();
    }
}
