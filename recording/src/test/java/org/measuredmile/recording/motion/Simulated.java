package org.measuredmile.recording.motion;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import net.sf.geographiclib.Geodesic;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;

/// Channels and recordings of known truth, for the tests of this package.
final class Simulated {
    private Simulated() {}

    /// Times from `fromS` to before `toS`.
    static double[] times(double fromS, double toS, double stepS) {
        double[] times = new double[(int) Math.round((toS - fromS) / stepS)];
        Arrays.setAll(times, i -> fromS + i * stepS);
        return times;
    }

    static Channel channel(ChannelKind kind, double[] times, DoubleUnaryOperator value) {
        return channel(kind, times, Arrays.stream(times).map(value).toArray());
    }

    static Channel channel(ChannelKind kind, double[] times, double[] values) {
        return new Channel(kind, kind.id(), "", new Channel.Series(times, values));
    }

    static Channel noisy(Channel channel, double sd, Random random) {
        return channel(
                channel.kind(),
                channel.timesS(),
                Arrays.stream(channel.values())
                        .map(value -> value + sd * random.nextGaussian())
                        .toArray());
    }

    /// A first-order Gauss–Markov process at equal steps.
    static double[] wander(int count, double sd, double kept, Random random) {
        double[] values = new double[count];
        double value = sd * random.nextGaussian();
        for (int i = 0; i < count; i++) {
            values[i] = value;
            value = kept * value + sd * Math.sqrt(1 - kept * kept) * random.nextGaussian();
        }
        return values;
    }

    /// A speed that wanders about the way a rider's does in town: several sines that share no period.
    static double townMps(double timeS) {
        return 6
                + 2.0 * StrictMath.sin(timeS / 7.3)
                + 1.1 * StrictMath.sin(timeS / 3.1 + 1)
                + 0.9 * StrictMath.sin(timeS / 19 + 2);
    }

    /// The exact integral of [#townMps] from 0.
    static double townM(double timeS) {
        return 6 * timeS
                + 2.0 * 7.3 * (1 - StrictMath.cos(timeS / 7.3))
                + 1.1 * 3.1 * (StrictMath.cos(1) - StrictMath.cos(timeS / 3.1 + 1))
                + 0.9 * 19 * (StrictMath.cos(2) - StrictMath.cos(timeS / 19 + 2));
    }

    /// Latitude and longitude of a straight way from 45° N 10° E along a bearing, displaced by noise.
    static List<Channel> positions(double[] times, double[] alongM, double bearing, double[] noiseM, double[] asideM) {
        double[] latitudes = new double[times.length];
        double[] longitudes = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            var on = Geodesic.WGS84.Direct(45, 10, bearing, alongM[i] + noiseM[i]);
            var at = Geodesic.WGS84.Direct(on.lat2, on.lon2, on.azi2 + 90, asideM[i]);
            latitudes[i] = at.lat2;
            longitudes[i] = at.lon2;
        }
        return List.of(
                channel(ChannelKind.LATITUDE, times, latitudes), channel(ChannelKind.LONGITUDE, times, longitudes));
    }

    static Recording recording(Channel... channels) {
        return recording(List.of(channels));
    }

    static Recording recording(List<Channel> channels) {
        double[] all = channels.stream()
                .flatMapToDouble(one -> Arrays.stream(one.timesS()))
                .sorted()
                .distinct()
                .toArray();
        return new Recording(
                "ride.csv",
                Format.DELIMITED,
                "",
                Optional.empty(),
                true,
                all.length,
                all,
                List.of(new Segment(all[0], all[all.length - 1])),
                channels,
                new TreeMap<>(),
                List.of());
    }
}
