package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

/// Channels of the same ride, one later than the other by a known time.
class LagTest {
    private static Channel later(double rateHz, double lagS, double sd, Random random) {
        var times = Simulated.times(0.013, 240, 1 / rateHz);
        var exact = Simulated.channel(ChannelKind.SPEED, times, t -> Simulated.townMps(t - lagS));
        var wander = Simulated.wander(times.length, sd, StrictMath.exp(-1 / rateHz / 0.8), random);
        double[] values = exact.values().clone();
        for (int i = 0; i < values.length; i++) {
            values[i] += wander[i];
        }
        return Simulated.channel(ChannelKind.SPEED, times, values);
    }

    private static Channel wheel(double rateHz) {
        return Simulated.channel(ChannelKind.WHEEL_SPEED, Simulated.times(0, 240, 1 / rateHz), Simulated::townMps);
    }

    @ParameterizedTest(name = "{0} s at {1} Hz and {2} Hz")
    @CsvSource({"0.2, 10, 10", "1.4, 10, 1", "-0.7, 5, 10", "2.16, 1, 1", "0.05, 50, 10"})
    void theLagIsFoundWithinItsUncertaintyAndRemoved(double lagS, double firstHz, double secondHz) {
        var second = later(secondHz, lagS, 0.1, new Random(4));
        var lag = (Lag.Known) Lag.between(wheel(firstHz), second);
        assertThat(lag.lagS()).isCloseTo(lagS, within(3 * lag.standardUncertaintyS()));
        assertThat(lag.standardUncertaintyS()).isBetween(0.001, 0.05);
        var mended = lag.removedFrom(second);
        var again = (Lag.Known) Lag.between(wheel(firstHz), mended);
        assertThat(again.lagS()).isCloseTo(0, within(0.02));
    }

    /// 200 rides; a 95 % interval that holds the truth in 90 to 99 % of them is neither too narrow nor idle.
    @Test
    void theIntervalHoldsTheTruthAsOftenAsItSays() {
        int held = 0;
        for (int seed = 0; seed < 200; seed++) {
            var random = new Random(seed);
            double lagS = 3 * random.nextDouble() - 1;
            var lag = (Lag.Known) Lag.between(wheel(5), later(5, lagS, 0.25, random));
            held += Math.abs(lag.lagS() - lagS) <= 2 * lag.standardUncertaintyS() ? 1 : 0;
        }
        assertThat(held).isBetween(180, 198);
    }

    @Test
    void anAccelerometerIsComparedWithTheRateOfASpeed() {
        var times = Simulated.times(0, 200, 0.02);
        var forward = Simulated.noisy(
                Simulated.channel(
                        ChannelKind.ACCELERATION_X,
                        times,
                        t -> (Simulated.townMps(t + 0.01) - Simulated.townMps(t - 0.01)) / 0.02),
                0.5,
                new Random(8));
        var speed = later(10, 0.3, 0.05, new Random(9));
        var lag = (Lag.Known) Lag.between(forward, Lag.rate(speed, 0.6));
        assertThat(lag.lagS()).isCloseTo(0.3, within(3 * lag.standardUncertaintyS()));
    }

    @Test
    void channelsThatShowNothingInCommonAreRefused() {
        var random = new Random(7);
        var noise = Simulated.noisy(
                Simulated.channel(ChannelKind.SPEED, Simulated.times(0, 240, 0.2), t -> 6), 0.2, random);
        assertThat(Lag.between(wheel(5), noise))
                .isInstanceOfSatisfying(
                        Lag.Refused.class,
                        refused -> assertThat(refused.reason()).contains("too little alike"));
        var constant = Simulated.channel(ChannelKind.SPEED, Simulated.times(0, 240, 0.2), t -> 6);
        assertThat(Lag.between(wheel(5), constant))
                .isInstanceOfSatisfying(
                        Lag.Refused.class,
                        refused -> assertThat(refused.reason()).contains("never changes"));
    }

    @Test
    void aRhythmThatFitsTwiceIsAmbiguous() {
        var times = Simulated.times(0, 240, 0.2);
        var one = Simulated.channel(ChannelKind.SPEED, times, t -> 6 + StrictMath.sin(2 * Math.PI * t / 3));
        assertThat(Lag.between(one, one))
                .isInstanceOfSatisfying(
                        Lag.Refused.class,
                        refused -> assertThat(refused.reason()).contains("ambiguous"));
    }

    @Test
    void clocksThatAreFarApartAreRefused() {
        assertThat(Lag.between(wheel(5), later(5, 30, 0.1, new Random(1)))).isInstanceOf(Lag.Refused.class);
    }
}
