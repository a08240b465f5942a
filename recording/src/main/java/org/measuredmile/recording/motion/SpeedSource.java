package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;

/// The best speed that a recording has, with the reason it was taken: a wheel's or a receiver's own speed above
/// differences of positions.
///
/// Shape: `channel` holds one sample an epoch; where a logger repeated the receiver's last value in rows of a
/// faster sensor, the repeats are left out and `repeats` counts them. A wheel stands above a receiver, for it has no
/// delay
/// and reads zero at rest, unless it was recorded less than half as often or for less than four fifths of the time.
/// `wheelScale` is the wheel's true size by satellite where that could be found; it is not applied, see [#scaled].
/// Unit: `sigmaMps` is the usual standard deviation of a sample.
/// Source: sigma of a 10 Hz receiver 0.087 m/s and of a wheel: house values, no published source for the wheel.
public record SpeedSource(
        Kind kind,
        Channel channel,
        double sigmaMps,
        String reason,
        int repeats,
        Optional<WheelScale.Known> wheelScale) {
    private static final double LESS_OFTEN = 2;
    private static final double LEAST_SHARE = 0.8;

    /// Where a speed comes from, best first.
    public enum Kind {
        WHEEL("wheel speed", 0.05),
        RECEIVER("receiver speed", 0.087),
        POSITIONS("differences of positions", 0.5);

        private final String title;
        private final double sigmaMps;

        Kind(String title, double sigmaMps) {
            this.title = title;
            this.sigmaMps = sigmaMps;
        }

        public String title() {
            return title;
        }
    }

    /// The best source, or nothing when the recording has neither speed nor positions.
    public static Optional<SpeedSource> best(Recording recording) {
        var wheel = recording.channel(ChannelKind.WHEEL_SPEED);
        var receiver = recording.channel(ChannelKind.SPEED);
        if (wheel.isPresent() && receiver.isPresent()) {
            return Optional.of(better(recording, wheel.get(), receiver.get()));
        }
        return wheel.map(channel -> of(recording, Kind.WHEEL, channel, "the recording has a wheel's own speed"))
                .or(() -> receiver.map(channel -> of(
                        recording,
                        Kind.RECEIVER,
                        channel,
                        "no wheel speed; the recording's own speed stands above differences of positions")))
                .or(() -> fromPositions(recording)
                        .map(channel -> of(
                                recording,
                                Kind.POSITIONS,
                                channel,
                                "the recording has no speed of its own; steps between positions were used")));
    }

    private static SpeedSource better(Recording recording, Channel wheel, Channel receiver) {
        var byWheel = of(recording, Kind.WHEEL, wheel, "a wheel's own speed has no delay and reads zero at rest");
        var byReceiver = of(recording, Kind.RECEIVER, receiver, "");
        double wheelStepS = byWheel.channel.medianStepS();
        double receiverStepS = byReceiver.channel.medianStepS();
        if (wheelStepS > LESS_OFTEN * receiverStepS) {
            return byReceiver.because(String.format(
                    Locale.ROOT,
                    "the receiver's speed comes every %.2f s, the wheel's only every %.2f s",
                    receiverStepS,
                    wheelStepS));
        }
        double share = spanS(wheel) / spanS(receiver);
        if (share < LEAST_SHARE) {
            return byReceiver.because(String.format(
                    Locale.ROOT, "the wheel was recorded for %.0f %% of the receiver's time only", 100 * share));
        }
        return WheelScale.of(wheel, byReceiver.channel) instanceof WheelScale.Known known
                ? byWheel.sized(Optional.of(known))
                : byWheel;
    }

    private static double spanS(Channel channel) {
        return channel.timeS(channel.size() - 1) - channel.timeS(0);
    }

    private static SpeedSource of(Recording recording, Kind kind, Channel channel, String reason) {
        var epochs = withoutRepeats(recording, channel);
        return new SpeedSource(kind, epochs, kind.sigmaMps, reason, channel.size() - epochs.size(), Optional.empty());
    }

    private SpeedSource because(String why) {
        return new SpeedSource(kind, channel, sigmaMps, why, repeats, wheelScale);
    }

    private SpeedSource sized(Optional<WheelScale.Known> scale) {
        return new SpeedSource(kind, channel, sigmaMps, reason, repeats, scale);
    }

    /// The same with the wheel's true size applied, where it was found; for instruments that nobody calibrated.
    public SpeedSource scaled() {
        return wheelScale
                .map(known -> new SpeedSource(
                        kind,
                        known.applied(channel),
                        sigmaMps,
                        String.format(
                                Locale.ROOT,
                                "%s; multiplied by %.4f ± %.4f, its size by satellite over %.0f m",
                                reason,
                                known.factor(),
                                2 * known.standardUncertainty(),
                                known.wayM()),
                        repeats,
                        wheelScale))
                .orElse(this);
    }

    /// Rows of a fast sensor repeat the receiver's last epoch: position and speed both unchanged. A sample is
    /// left out when neither speed nor position differs from the row before, and only where most rows do so.
    private static Channel withoutRepeats(Recording recording, Channel channel) {
        var latitude = recording.channel(ChannelKind.LATITUDE);
        var longitude = recording.channel(ChannelKind.LONGITUDE);
        if (latitude.isEmpty() || longitude.isEmpty() || latitude.get().size() != channel.size()) {
            return channel;
        }
        var kept = new ArrayList<Integer>();
        for (int i = 0; i < channel.size(); i++) {
            if (i == 0 || differs(channel, i) || differs(latitude.get(), i) || differs(longitude.get(), i)) {
                kept.add(i);
            }
        }
        return kept.size() > channel.size() / 2 ? channel : only(channel, kept);
    }

    private static boolean differs(Channel channel, int index) {
        return channel.value(index) != channel.value(index - 1);
    }

    private static Channel only(Channel channel, List<Integer> kept) {
        double[] times = kept.stream().mapToDouble(channel::timeS).toArray();
        double[] values = kept.stream().mapToDouble(channel::value).toArray();
        return new Channel(channel.kind(), channel.name(), channel.writtenUnit(), new Channel.Series(times, values));
    }

    /// Geodesic steps on WGS-84 over their times, each at the middle of its step; none across a break of the
    /// recording.
    private static Optional<Channel> fromPositions(Recording recording) {
        var latitude = recording.channel(ChannelKind.LATITUDE);
        var longitude = recording.channel(ChannelKind.LONGITUDE);
        if (latitude.isEmpty()
                || longitude.isEmpty()
                || latitude.get().size() != longitude.get().size()) {
            return Optional.empty();
        }
        var times = new ArrayList<Double>();
        var values = new ArrayList<Double>();
        for (int i = 1; i < latitude.get().size(); i++) {
            double from = latitude.get().timeS(i - 1);
            double to = latitude.get().timeS(i);
            if (recording.segments().stream().anyMatch(one -> one.fromS() <= from && one.toS() >= to)) {
                double stepM = Geodesic.WGS84.Inverse(
                                latitude.get().value(i - 1),
                                longitude.get().value(i - 1),
                                latitude.get().value(i),
                                longitude.get().value(i),
                                GeodesicMask.DISTANCE)
                        .s12;
                times.add((from + to) / 2);
                values.add(stepM / (to - from));
            }
        }
        return times.isEmpty()
                ? Optional.empty()
                : Optional.of(new Channel(
                        ChannelKind.SPEED,
                        "steps between positions",
                        "m/s",
                        new Channel.Series(
                                times.stream().mapToDouble(Double::doubleValue).toArray(),
                                values.stream().mapToDouble(Double::doubleValue).toArray())));
    }
}
