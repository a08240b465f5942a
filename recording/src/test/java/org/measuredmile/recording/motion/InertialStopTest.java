package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

/// Hard stops of known truth by accelerometer and satellite speed together: see [HardStops].
class InertialStopTest {
    private static final double SIGMA_MPS = 0.087;

    private static InertialStop stop(HardStops ride) {
        return stop(ride, ride.accelerometer());
    }

    private static InertialStop stop(HardStops ride, Accelerations accelerations) {
        var speed = ride.receiver();
        return InertialStop.of(
                accelerations, speed, SIGMA_MPS, Stops.find(speed).getLast());
    }

    private static String refusal(InertialStop stop) {
        return ((InertialStop.Refused) stop).reason();
    }

    /// 80 stops: of intervals of 95 %, more than 10 miss the truth once in a thousand such tests, and more than
    /// 8 on one side. That they are not idly wide, the last line says.
    @Test
    void theIntervalsOfDistanceSpeedAndLagHoldTheTruthAsOftenAsTheySay() {
        int stops = 80;
        int known = 0;
        int[] low = new int[3];
        int[] high = new int[3];
        double widths = 0;
        for (int seed = 0; seed < stops; seed++) {
            var ride = new HardStops(seed).ride();
            if (stop(ride) instanceof InertialStop.Known found) {
                known++;
                var way = found.derive(
                        (curve, onset) -> HardStops.atTwentyMph(curve.toRestM(onset), curve.speedMps(onset)));
                var entry = found.derive((curve, onset) -> curve.speedMps(onset));
                count(low, high, 0, way, HardStops.atTwentyMph(ride.trueDistanceM(), ride.trueEntryMps()));
                count(low, high, 1, entry, ride.trueEntryMps());
                double lagS = found.settled().values()[InertialCurve.LAG];
                double lagSd = Math.sqrt(found.settled().covariance()[InertialCurve.LAG][InertialCurve.LAG]);
                count(low, high, 2, new InertialStop.Known.Derived(lagS, lagSd, 0, 0), ride.lagS);
                widths += way.standardUncertainty() / way.value();
            }
        }
        assertThat(known).isGreaterThanOrEqualTo(77);
        for (int i = 0; i < 3; i++) {
            assertThat(low[i] + high[i]).as("outside, quantity " + i).isLessThanOrEqualTo(10);
            assertThat(Math.max(low[i], high[i]))
                    .as("on one side, quantity " + i)
                    .isLessThanOrEqualTo(8);
        }
        assertThat(widths / known).isBetween(0.015, 0.04);
    }

    private static void count(int[] low, int[] high, int at, InertialStop.Known.Derived derived, double truth) {
        double error = (derived.value() - truth) / derived.standardUncertainty();
        low[at] += error < -1.96 ? 1 : 0;
        high[at] += error > 1.96 ? 1 : 0;
    }

    @Test
    void theMountingIsFoundHoweverTheInstrumentIsTurned() {
        for (int seed = 0; seed < 10; seed++) {
            var ride = new HardStops(seed).ride();
            var accelerations = ride.accelerometer();
            var mounting = (Mounting.Known) Mounting.of(accelerations, ride.receiver());
            var forward = accelerations.along(mounting.forward());
            var up = accelerations.along(mounting.up());
            double atRest = Stops.median(forward, 1, 2);
            // A hard stop is 4.5 to 6.5 m/s² and a little more for the pitch; the ride's start is 1.2 m/s².
            assertThat(Stops.median(forward, ride.onsetS() + 0.4, ride.onsetS() + 1) - atRest)
                    .isBetween(-8.5, -3.9);
            assertThat(Stops.median(forward, 4, 9) - atRest).isCloseTo(1.2, within(0.3));
            assertThat(Stops.median(up, 1, 2)).isCloseTo(9.8, within(0.5));
            assertThat(mounting.lagS()).isCloseTo(ride.lagS, within(0.08));
        }
    }

    @Test
    void speedAndWayAtAnyTimeComeWithTheirUncertainty() {
        var ride = new HardStops(3).ride();
        var found = (InertialStop.Known) stop(ride);
        var onset = found.at(found.onsetS());
        var later = found.at(found.onsetS() + 0.6);
        var rest = found.at(found.curve().restS() + 0.1);
        assertThat(onset.distanceM()).isZero();
        assertThat(later.speedMps()).isLessThan(onset.speedMps());
        assertThat(rest.speedMps()).isZero();
        assertThat(rest.distanceM()).isCloseTo(ride.trueDistanceM(), within(4 * rest.distanceSd()));
        assertThat(later.accelerationMps2()).isBetween(-9.0, -3.5);
        assertThat(later.speedSd()).isBetween(0.01, 0.2);
    }

    @ParameterizedTest
    @ValueSource(doubles = {12, 40, -25})
    void aMountingThatMovedIsRefused(double degrees) {
        var ride = new HardStops(5);
        ride.turnHalfwayDegrees = degrees;
        assertThat(refusal(stop(ride.ride()))).containsPattern("mounting moved.*at most 4.0°|not firmly mounted");
    }

    @Test
    void anInstrumentAtTheEndOfItsRangeIsRefused() {
        int saturated = 0;
        for (int seed = 0; seed < 10; seed++) {
            var ride = new HardStops(seed);
            ride.clipMps2 = 5;
            saturated += refusal(stop(ride.ride())).contains("saturated") ? 1 : 0;
        }
        // Gravity alone, or what is left of forward, is cut off: most are told as such, none gives a stop.
        assertThat(saturated).isGreaterThanOrEqualTo(5);
    }

    @Test
    void aStopWithoutARestIsRefused() {
        var ride = new HardStops(6);
        ride.restsForS = 0.5;
        assertThat(refusal(stop(ride.ride()))).contains("at rest for", "at least 1.00 s");
    }

    @Test
    void tooFewReadingsASecondAreRefused() {
        var ride = new HardStops(7).ride();
        var fast = ride.accelerometer();
        var slow = new Accelerations(every(fast.x(), 10), every(fast.y(), 10), every(fast.z(), 10));
        assertThat(refusal(stop(ride, slow))).contains("sampled every 0.10 s");
    }

    private static Channel every(Channel channel, int step) {
        int count = channel.size() / step;
        double[] times = new double[count];
        double[] values = new double[count];
        Arrays.setAll(times, i -> channel.timeS(i * step));
        Arrays.setAll(values, i -> channel.value(i * step));
        return Simulated.channel(ChannelKind.ACCELERATION_X, times, values);
    }

    @Test
    void anotherRidesAccelerationIsRefused() {
        var ride = new HardStops(8).ride();
        var times = ride.accelerometer().x().timesS();
        var shaken = new Accelerations(
                Simulated.channel(ChannelKind.ACCELERATION_X, times, t -> 0.3 * StrictMath.sin(t)),
                Simulated.channel(ChannelKind.ACCELERATION_Y, times, t -> 0.3 * StrictMath.cos(1.7 * t)),
                Simulated.channel(ChannelKind.ACCELERATION_Z, times, t -> 9.8));
        assertThat(refusal(stop(ride, shaken))).contains("the accelerations explain");
    }
}
