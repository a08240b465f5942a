package org.measuredmile.recording;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/// Compares what a recording says twice: distance by positions, by wheel, by a receiver's speed and by the instrument
/// itself; and asks positions, sensors and clock whether they can be true.
///
/// A ratio that is a ratio of units names them; the repair is proposed, never made.
public final class CrossChecks {
    private static final double TOO_SHORT_M = 100;
    private static final double AGREE = 0.03;
    private static final double WHEEL_SIZES = 0.12;
    private static final double NEAR = 0.025;
    private static final double NOISE = 1.6;

    private CrossChecks() {}

    /// A ratio and the mistake that gives it.
    private record Cause(double ratio, String words) {}

    /// A distance, what it is by, and whether a wheel's size stands in it.
    private record Way(String by, OptionalDouble metres, boolean byWheel) {
        double m() {
            return metres.orElse(0);
        }
    }

    /// Source of the ratios: the units' own definitions (NIST SP 811, appendix B).
    private static final List<Cause> CAUSES = List.of(
            new Cause(1852 / 1609.344, "knots taken for miles per hour, or the reverse"),
            new Cause(1.609344, "miles taken for kilometres, or the reverse"),
            new Cause(1.852, "knots taken for kilometres per hour, or the reverse"),
            new Cause(3600.0 / 1852, "knots taken for metres per second, or the reverse"),
            new Cause(3600 / 1609.344, "miles per hour taken for metres per second, or the reverse"),
            new Cause(1 / 0.3048, "feet taken for metres, or the reverse"),
            new Cause(3.6, "kilometres per hour taken for metres per second, or the reverse"),
            new Cause(1000, "metres taken for kilometres, or the reverse"));

    /// Everything that a recording's own samples say against it, each once.
    public static List<Finding> of(Recording recording) {
        Fixes fixes = Fixes.of(recording);
        return of(recording, fixes, Travel.of(recording, fixes));
    }

    static List<Finding> of(Recording recording, Fixes fixes, Travel travel) {
        Set<Finding> findings = new LinkedHashSet<>(ClockChecks.of(recording, fixes, travel));
        findings.addAll(PositionChecks.of(recording, fixes, travel));
        findings.addAll(SensorChecks.of(recording, fixes));
        findings.addAll(distances(recording, travel));
        return List.copyOf(findings);
    }

    private static List<Finding> distances(Recording recording, Travel travel) {
        boolean wheelSpeed = recording.channel(ChannelKind.WHEEL_SPEED).isPresent();
        Way track = new Way("track", travel.riddenTrackM(), false);
        Way counted = new Way("the instrument's distance", travel.byInstrumentM(), true);
        Way speed = new Way(wheelSpeed ? "wheel speed" : "speed", travel.bySpeedM(), wheelSpeed);
        List<Finding> findings = new ArrayList<>();
        compare(track, speed, recording, travel).ifPresent(findings::add);
        compare(track, counted, recording, travel).ifPresent(findings::add);
        compare(speed, counted, recording, travel).ifPresent(findings::add);
        others(recording, speed, travel).forEach(findings::add);
        return findings;
    }

    /// Every further speed against the one that the distance is by: a wheel against the receiver.
    private static List<Finding> others(Recording recording, Way speed, Travel travel) {
        Optional<Channel> main = Travel.speed(recording);
        return recording.channels().stream()
                .filter(channel -> channel.kind() == ChannelKind.SPEED || channel.kind() == ChannelKind.WHEEL_SPEED)
                .filter(channel -> main.isPresent() && channel != main.get())
                .map(channel -> new Way(
                        "\"" + channel.name() + "\"",
                        Travel.along(channel, recording),
                        channel.kind() == ChannelKind.WHEEL_SPEED))
                .flatMap(other -> compare(
                        new Way("\"" + main.get().name() + "\"", speed.metres, speed.byWheel), other, recording, travel)
                        .stream())
                .toList();
    }

    private static Optional<Finding> compare(Way one, Way other, Recording recording, Travel travel) {
        if (one.metres.isEmpty() || other.metres.isEmpty() || Math.max(one.m(), other.m()) < TOO_SHORT_M) {
            return Optional.empty();
        }
        if (Math.min(one.m(), other.m()) < 1) {
            return Optional.of(none(one, other, recording));
        }
        double ratio = one.m() / other.m();
        if (Math.abs(ratio - 1) <= AGREE) {
            return Optional.empty();
        }
        boolean stood = one.by.equals("track") && travel.jitterM() >= 0.5;
        String standing = stood ? String.format(Locale.ROOT, " (and %.0f m while standing)", travel.jitterM()) : "";
        return Optional.of(Finding.warning(
                "distances-disagree",
                Place.in(recording.name()),
                String.format(
                        Locale.ROOT,
                        "distance by %s is %.0f m%s, by %s %.0f m: a ratio of %.3f%s",
                        one.by,
                        one.m(),
                        standing,
                        other.by,
                        other.m(),
                        ratio,
                        likely(one, other, ratio)),
                "compare with a surveyed length, and check units and wheel size before using either"));
    }

    private static Finding none(Way one, Way other, Recording recording) {
        Way still = one.m() < other.m() ? one : other;
        Way moved = one.m() < other.m() ? other : one;
        return Finding.warning(
                "distances-disagree",
                Place.in(recording.name()),
                String.format(
                        Locale.ROOT,
                        "distance by %s is %.0f m, but by %s nothing moved: noise of the fixes, or a sensor that "
                                + "was off",
                        moved.by,
                        moved.m(),
                        still.by),
                "use neither before you know which is right");
    }

    private static String likely(Way one, Way other, double ratio) {
        double large = Math.max(ratio, 1 / ratio);
        boolean wheel = one.byWheel != other.byWheel && large < 1 + WHEEL_SIZES;
        if (wheel) {
            double wheelOverOther = one.byWheel ? ratio : 1 / ratio;
            String size = String.format(
                    Locale.ROOT,
                    ": is the wheel size set %.0f %% too %s?",
                    100 * Math.abs(wheelOverOther - 1),
                    wheelOverOther < 1 ? "small" : "large");
            return wheelOverOther < 1 ? size + " Or noise of the fixes lengthens the track" : size;
        }
        for (Cause cause : CAUSES) {
            if (Math.abs(large / cause.ratio - 1) <= NEAR) {
                return ", as when " + cause.words.replace(" taken", " are taken");
            }
        }
        boolean longTrack = one.by.equals("track") && ratio > 1 && ratio < NOISE;
        return longTrack ? ", as when noise of the fixes lengthens the track" : "";
    }
}
