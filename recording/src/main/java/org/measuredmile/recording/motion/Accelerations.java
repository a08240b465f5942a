package org.measuredmile.recording.motion;

import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;

/// What an accelerometer recorded along its three axes, however it was mounted.
///
/// Shape: three channels that share their times. Unit: seconds of the speed's recording, m/s²; at rest the three
/// together are as long as gravity, along whichever way the maker calls positive.
public record Accelerations(Channel x, Channel y, Channel z) {
    /// Slower than this it does not see a brake build up, Hz.
    public static final double LEAST_RATE_HZ = 20;

    /// Error: IllegalArgumentException when the axes do not share their times.
    public Accelerations {
        if (!java.util.Arrays.equals(x.timesS(), y.timesS()) || !java.util.Arrays.equals(x.timesS(), z.timesS())) {
            throw new IllegalArgumentException("the three axes do not share their times");
        }
    }

    /// The three axes of a recording, where it has all of them at the same times.
    public static Optional<Accelerations> of(Recording recording) {
        var x = recording.channel(ChannelKind.ACCELERATION_X);
        var y = recording.channel(ChannelKind.ACCELERATION_Y);
        var z = recording.channel(ChannelKind.ACCELERATION_Z);
        if (x.isEmpty() || y.isEmpty() || z.isEmpty()) {
            return Optional.empty();
        }
        boolean together = java.util.Arrays.equals(x.get().timesS(), y.get().timesS())
                && java.util.Arrays.equals(x.get().timesS(), z.get().timesS());
        return together && x.get().size() > 1
                ? Optional.of(new Accelerations(x.get(), y.get(), z.get()))
                : Optional.empty();
    }

    /// Those of another recording, moved to the time base of the one that holds the speed; nothing where either
    /// does not say when it began.
    public static Optional<Accelerations> of(Recording other, Recording ofSpeed) {
        if (other.start().isEmpty() || ofSpeed.start().isEmpty()) {
            return Optional.empty();
        }
        var between =
                java.time.Duration.between(ofSpeed.start().get(), other.start().get());
        double byS = between.toSeconds() + between.toNanosPart() * 1e-9;
        return of(other).map(one -> one.shifted(byS));
    }

    private Accelerations shifted(double byS) {
        double[] times = x.timesS().clone();
        for (int i = 0; i < times.length; i++) {
            times[i] += byS;
        }
        return new Accelerations(at(times, x), at(times, y), at(times, z));
    }

    private static Channel at(double[] times, Channel channel) {
        return new Channel(
                channel.kind(),
                channel.name(),
                channel.writtenUnit(),
                channel.source(),
                new Channel.Series(times, channel.values()));
    }

    public Accelerations between(double fromS, double toS) {
        return new Accelerations(x.between(fromS, toS), y.between(fromS, toS), z.between(fromS, toS));
    }

    public int size() {
        return x.size();
    }

    double stepS() {
        return x.medianStepS();
    }

    Channel[] axes() {
        return new Channel[] {x, y, z};
    }

    /// The part along a direction, which gravity's part along it is still in.
    Channel along(double[] direction) {
        double[] values = new double[x.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = direction[0] * x.value(i) + direction[1] * y.value(i) + direction[2] * z.value(i);
        }
        return new Channel(
                ChannelKind.ACCELERATION_X,
                "forward acceleration",
                "m/s²",
                x.source(),
                new Channel.Series(x.timesS(), values));
    }
}
