package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

/// A ride of known speed with a hard stop in it: 9 m/s for 20 s, 5 m/s² to rest, 10 s of standing, 1.5 m/s² up to 6
/// m/s.
class SmoothedRidePropertyTest {
    private static final double SIGMA_MPS = 0.09;
    private static final double BRAKES_S = 20.03;
    private static final double RESTS_S = BRAKES_S + 9 / 5.0;
    private static final double STARTS_S = 32.07;
    private static final double[] EVENTS_S = {BRAKES_S, RESTS_S, STARTS_S, STARTS_S + 4};

    private static double trueMps(double timeS) {
        if (timeS < BRAKES_S) {
            return 9;
        }
        return timeS < STARTS_S ? Math.max(0, 9 - 5 * (timeS - BRAKES_S)) : Math.min(6, 1.5 * (timeS - STARTS_S));
    }

    private static double trueWayM(double timeS) {
        double braking = Math.clamp(timeS - BRAKES_S, 0, 1.8);
        double rising = Math.clamp(timeS - STARTS_S, 0, 4);
        return 9 * Math.min(timeS, BRAKES_S)
                + 9 * braking
                - 2.5 * braking * braking
                + 0.75 * rising * rising
                + 6 * Math.max(0, timeS - STARTS_S - 4);
    }

    private static Channel sampled(DoubleUnaryOperator speed, double stepS, double spanS) {
        int count = (int) Math.round(spanS / stepS) + 1;
        double[] times = new double[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = i * stepS;
            values[i] = speed.applyAsDouble(times[i]);
        }
        return new Channel(ChannelKind.SPEED, "v", "m/s", new Channel.Series(times, values));
    }

    private static Channel noisy(long seed, double stepS) {
        var random = new Seed(seed).child("smoothed").stream(0);
        return sampled(timeS -> trueMps(timeS) + SIGMA_MPS * Draw.normal(random), stepS, 50);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void speedAndWayHoldTheTruthAsOftenAsTheySay(long seed) {
        var ride = SmoothedRide.of(noisy(seed, 0.1), SIGMA_MPS, EVENTS_S);
        int held = 0;
        int asked = 0;
        for (double timeS = 1; timeS < 49; timeS += 0.37) {
            var state = ride.at(timeS);
            boolean isKink = java.util.Arrays.stream(EVENTS_S)
                    .anyMatch(one ->
                            Math.abs(one - state.map(Smoother.State::timeS).orElse(one)) < 0.1);
            if (state.isPresent() && !isKink) {
                asked++;
                held += Math.abs(state.get().speedMps() - trueMps(timeS))
                                <= 1.96 * state.get().speedSd()
                        ? 1
                        : 0;
                assertThat(state.get().distanceM())
                        .as("way at " + timeS)
                        .isCloseTo(trueWayM(timeS), within(5 * state.get().distanceSd() + 0.05));
            }
        }
        assertThat((double) held / asked).isBetween(0.85, 1.0);
        assertThat(asked).isGreaterThan(100);
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void aHardStopStaysAHardStop(long seed) {
        var samples = noisy(seed, 0.1);
        var byEvents = SmoothedRide.of(samples, SIGMA_MPS, EVENTS_S);
        var acrossThem = SmoothedRide.of(samples, SIGMA_MPS, new double[0]);
        double middleS = BRAKES_S + 0.9;
        assertThat(byEvents.at(middleS).orElseThrow().accelerationMps2()).isCloseTo(-5, within(0.6));
        double justBeforeS = BRAKES_S - 0.05;
        double rounded = Math.abs(acrossThem.at(justBeforeS).orElseThrow().accelerationMps2());
        assertThat(rounded).isGreaterThan(1);
    }

    /// Samples thin out tenfold between 5 and 15 s: what lies between two of them is known less well than they are.
    @Test
    void betweenSamplesFarApartTheUncertaintyGrows() {
        var ride = SmoothedRide.of(sampled(_ -> 7, 2, 20), SIGMA_MPS, new double[0]);
        double at = ride.at(10).orElseThrow().speedSd();
        double between = ride.at(11).orElseThrow().speedSd();
        assertThat(between).isGreaterThan(at);
        assertThat(ride.at(11).orElseThrow().speedMps()).isCloseTo(7, within(1e-6));
        assertThat(ride.at(11).orElseThrow().distanceM()).isCloseTo(77, within(1e-6));
    }

    @Test
    void outsideTheSamplesThereIsNoState() {
        var ride = SmoothedRide.of(noisy(3, 0.1), SIGMA_MPS, EVENTS_S);
        assertThat(ride.at(-1)).isEmpty();
        assertThat(ride.at(51)).isEmpty();
        assertThat(ride.pieces()).isEqualTo(5);
        var nothing = new Channel(ChannelKind.SPEED, "v", "", new Channel.Series(new double[0], new double[0]));
        assertThat(SmoothedRide.of(nothing, SIGMA_MPS, EVENTS_S).at(1)).isEmpty();
        assertThatThrownBy(() -> SmoothedRide.of(nothing, 0, EVENTS_S)).isInstanceOf(IllegalArgumentException.class);
    }

    /// The ride's own stops and starts are found where nobody states them.
    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23})
    void itsOwnStopIsAnEvent(long seed) {
        var events = SmoothedRide.eventsOf(noisy(seed, 0.1));
        assertThat(events).hasSizeGreaterThanOrEqualTo(3);
        assertThat(events[0]).isCloseTo(BRAKES_S, within(0.15));
        assertThat(events[2]).isCloseTo(STARTS_S, within(0.25));
        assertThat(events[1]).isCloseTo(RESTS_S, within(0.15));
    }
}
