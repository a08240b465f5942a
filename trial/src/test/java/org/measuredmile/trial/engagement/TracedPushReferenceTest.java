package org.measuredmile.trial.engagement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;

/// Cranks that speed up in a line and a bike that slows in a line, so that angle and way are known.
class TracedPushReferenceTest {
    private static Channel channel(ChannelKind kind, double stepS, DoubleUnaryOperator at) {
        int count = (int) Math.round(10 / stepS) + 1;
        double[] times = new double[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = i * stepS;
            values[i] = at.applyAsDouble(times[i]);
        }
        return new Channel(kind, kind.id(), "", new Channel.Series(times, values));
    }

    /// Cranks at 0.2 turns a second more each second from 2 s on, to rest at 5 s; thrust at 3.03 s; the bike at
    /// 4 m/s at 5 s, slowing by 0.5 m/s², and the motor gone at 5.47 s.
    private static TracedPush push() {
        var cranks = channel(ChannelKind.CADENCE, 0.1, t -> t < 2 ? 0 : t < 5 ? 0.2 * (t - 2) : 0);
        var speed = channel(ChannelKind.SPEED, 0.5, t -> 4 - 0.5 * (t - 5));
        var acceleration = channel(ChannelKind.ACCELERATION_X, 0.02, t -> 0);
        var recording = new Recording(
                "push.csv",
                Format.DELIMITED,
                "",
                Optional.empty(),
                false,
                cranks.size(),
                cranks.timesS(),
                List.of(new Segment(0, 10)),
                List.of(cranks, acceleration, speed),
                new TreeMap<>(),
                List.of());
        return new TracedPush(
                recording,
                cranks,
                acceleration,
                speed,
                2.0,
                5.0,
                0.04,
                Optional.of(new ThrustChange.Found(3.03, 0.03, 3.2, 0.05, 0.8)),
                Optional.of(new ThrustChange.Found(5.3, 0.05, 5.47, 0.03, -0.8)),
                "");
    }

    @Test
    void delayAndOverrunRunFromTheCranksToTheThrust() {
        assertThat(push().delay().orElseThrow().value()).isCloseTo(1.03, within(1e-9));
        assertThat(push().delay().orElseThrow().sd()).isCloseTo(0.05, within(1e-9));
        assertThat(push().overrunTime().orElseThrow().value()).isCloseTo(0.47, within(1e-9));
        assertThat(push().overrunTime().orElseThrow().sd()).isCloseTo(0.05, within(1e-9));
        assertThat(push().qualifies()).isTrue();
    }

    /// ∫ 0.2·t dt over 1.03 s are 0.1·1.03² turns. The thrust's begin counts by the speed there, 0.206 turns a
    /// second, the cranks' by half of it.
    @Test
    void theCranksAngleIsTheIntegralOfTheirSpeed() {
        var angle = push().crankAngle().orElseThrow();

        assertThat(angle.value()).isCloseTo(2 * Math.PI * 0.1 * 1.03 * 1.03, within(1e-6));
        assertThat(angle.sd()).isCloseTo(2 * Math.PI * Math.hypot(0.206 * 0.03, 0.103 * 0.04), within(1e-6));
    }

    /// 4·0.47 − 0.25·0.47² metres; its uncertainty is the time's at 4 m/s.
    @Test
    void theOverrunsWayIsTheIntegralOfTheSpeed() {
        var way = push().overrunDistance().orElseThrow();

        assertThat(way.value()).isCloseTo(4 * 0.47 - 0.25 * 0.47 * 0.47, within(1e-9));
        assertThat(way.sd()).isCloseTo(4 * 0.05, within(1e-9));
    }

    /// The begin of a ramp in noise: what is stated of it and what it misses agree over many pushes.
    @Test
    void aChangeOfThrustIsKnownAsWellAsItSays() {
        int pushes = 50;
        double begin = 0;
        double end = 0;
        double change = 0;
        for (int k = 0; k < pushes; k++) {
            var random = new Seed(20_310_613).child("thrust").stream(k);
            double beginS = 2.2 + 0.5 * random.nextDouble();
            var acceleration = channel(
                    ChannelKind.ACCELERATION_X,
                    0.02,
                    t -> -0.1 + 0.8 * Math.clamp((t - beginS) / 0.25, 0, 1) + 0.1 * Draw.normal(random));
            var found = (ThrustChange.Found) ThrustChange.find(acceleration, 2, 5, true);
            begin += Math.pow((found.beginS() - beginS) / found.beginSdS(), 2) / pushes;
            end += Math.pow((found.endS() - beginS - 0.25) / found.endSdS(), 2) / pushes;
            change += found.changeMps2() / pushes;
        }

        // Means of 50 squares of normal errors: 1 + 4·√(2/50) is four standard deviations up. A ramp of one length
        // is less than the prior's width allows for.
        assertThat(begin).isBetween(0.4, 1 + 4 * Math.sqrt(2.0 / pushes));
        assertThat(end).isBetween(0.4, 1 + 4 * Math.sqrt(2.0 / pushes));
        assertThat(change).isCloseTo(0.8, within(0.05));
    }
}
