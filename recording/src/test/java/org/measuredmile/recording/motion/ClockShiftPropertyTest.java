package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.random.RandomGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

/// Rides with stops, and the power of a motor that works only while riding, on a clock that is off by anything up to
/// half an hour.
class ClockShiftPropertyTest {
    static java.util.stream.IntStream seeds() {
        return java.util.stream.IntStream.range(0, 25);
    }

    private static final int SPAN_S = 3600;

    /// Whether the bike rides, second by second: stretches of two to eight minutes, stops of ten to sixty seconds.
    private static boolean[] riding(RandomGenerator random) {
        boolean[] rides = new boolean[SPAN_S];
        int at = 0;
        boolean now = true;
        while (at < SPAN_S) {
            int spanS = now ? 120 + random.nextInt(360) : 10 + random.nextInt(50);
            for (int i = at; i < Math.min(SPAN_S, at + spanS); i++) {
                rides[i] = now;
            }
            at += spanS;
            now = !now;
        }
        return rides;
    }

    private static Channel channel(ChannelKind kind, double shiftS, double[] values) {
        double[] times = new double[values.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = i + shiftS;
        }
        return new Channel(kind, "x", "", new Channel.Series(times, values));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void aClockThatIsOffByMinutesIsFoundWithinSeconds(int seed) {
        var random = new Seed(seed).child("clocks").stream(0);
        boolean[] rides = riding(random);
        double[] speed = new double[SPAN_S];
        double[] watts = new double[SPAN_S];
        for (int i = 0; i < SPAN_S; i++) {
            speed[i] = rides[i] ? Math.max(0, Draw.normal(random, 6, 1)) : 0;
            watts[i] = rides[i] ? Math.max(0, Draw.normal(random, 220, 60)) : 6;
        }
        double offS = Math.rint(Draw.rectangular(random, -1700, 1700));
        var found = ClockShift.of(channel(ChannelKind.SPEED, 0, speed), channel(ChannelKind.OTHER, -offS, watts));
        assertThat(found).isInstanceOfSatisfying(ClockShift.Known.class, known -> {
            assertThat(known.shiftS()).isCloseTo(offS, within(3.0));
            assertThat(known.likeness()).isGreaterThan(0.8);
        });
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void anotherRidesLogIsRefused(int seed) {
        var random = new Seed(seed).child("other rides").stream(0);
        boolean[] rides = riding(random);
        boolean[] other = riding(random);
        double[] speed = new double[SPAN_S];
        double[] watts = new double[SPAN_S];
        for (int i = 0; i < SPAN_S; i++) {
            speed[i] = rides[i] ? 6 : 0;
            watts[i] = other[i] ? 200 : 6;
        }
        assertThat(ClockShift.of(channel(ChannelKind.SPEED, 0, speed), channel(ChannelKind.OTHER, 0, watts)))
                .isInstanceOf(ClockShift.Refused.class);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void aRideWithoutStopsIsRefused(int seed) {
        var random = new Seed(seed).child("no stops").stream(0);
        double[] speed = new double[SPAN_S];
        double[] watts = new double[SPAN_S];
        for (int i = 0; i < SPAN_S; i++) {
            speed[i] = 6 + random.nextDouble();
            watts[i] = 150 + 100 * random.nextDouble();
        }
        assertThat(ClockShift.of(channel(ChannelKind.SPEED, 0, speed), channel(ChannelKind.OTHER, 30, watts)))
                .isInstanceOf(ClockShift.Refused.class);
    }
}
