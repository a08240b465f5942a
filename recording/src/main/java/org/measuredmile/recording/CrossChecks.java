package org.measuredmile.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.QuantityKind;

/// Compares what a recording says twice: distance by positions, by speed and by the instrument itself.
///
/// A ratio that is a ratio of units names them; the repair is proposed, never made.
final class CrossChecks {
    private static final double TOO_SHORT_M = 100;
    private static final double AGREE = 0.03;
    private static final double MOVING_MPS = 0.5;
    private static final double SUSPICIOUS_S = 8;
    private static final int FEWEST_HELD = 5;
    private static final double NEAR = 0.025;

    private CrossChecks() {}

    /// A ratio and the mistake that gives it.
    private record Cause(double ratio, String words) {}

    /// Source of the ratios: the units' own definitions (NIST SP 811, appendix B).
    private static final List<Cause> CAUSES = List.of(
            new Cause(1852 / 1609.344, "knots taken for miles per hour, or the reverse"),
            new Cause(1.609344, "miles taken for kilometres, or the reverse"),
            new Cause(1.852, "knots taken for kilometres per hour, or the reverse"),
            new Cause(3600 / 1609.344, "miles per hour taken for metres per second, or the reverse"),
            new Cause(3.6, "kilometres per hour taken for metres per second, or the reverse"),
            new Cause(1000, "metres taken for kilometres, or the reverse"));

    static List<Finding> of(Recording recording, Travel travel) {
        List<Finding> findings = new ArrayList<>();
        compare("track", travel.byTrackM(), "speed", travel.bySpeedM(), recording, findings);
        compare("track", travel.byTrackM(), "the instrument's distance", travel.byInstrumentM(), recording, findings);
        recording.channels().stream()
                .filter(channel -> channel.kind().quantity() == QuantityKind.SPEED)
                .forEach(channel -> stale(channel, recording).ifPresent(findings::add));
        compare("speed", travel.bySpeedM(), "the instrument's distance", travel.byInstrumentM(), recording, findings);
        return findings;
    }

    private static void compare(
            String oneName,
            OptionalDouble one,
            String otherName,
            OptionalDouble other,
            Recording recording,
            List<Finding> findings) {
        if (one.isEmpty() || other.isEmpty() || Math.max(one.getAsDouble(), other.getAsDouble()) < TOO_SHORT_M) {
            return;
        }
        if (Math.min(one.getAsDouble(), other.getAsDouble()) < 1) {
            findings.add(none(oneName, one.getAsDouble(), otherName, other.getAsDouble(), recording));
            return;
        }
        double ratio = one.getAsDouble() / other.getAsDouble();
        if (Math.abs(ratio - 1) <= AGREE) {
            return;
        }
        String said = String.format(
                Locale.ROOT,
                "distance by %s is %.0f m, by %s %.0f m: a ratio of %.3f%s",
                oneName,
                one.getAsDouble(),
                otherName,
                other.getAsDouble(),
                ratio,
                likely(ratio, oneName));
        findings.add(Finding.warning(
                "distances-disagree",
                Place.in(recording.name()),
                said,
                "compare with a surveyed length, and check units and wheel size before using either"));
    }

    /// A speed that stays the same to its last digit for seconds while moving was not measured anew.
    private static Optional<Finding> stale(Channel speed, Recording recording) {
        double longestS = 0;
        double longestFromS = 0;
        int from = 0;
        for (int i = 1; i < speed.size(); i++) {
            boolean same = speed.value(i) == speed.value(from) && speed.value(i) > MOVING_MPS;
            if (!same) {
                from = i;
            }
            double heldS = speed.timeS(i) - speed.timeS(from);
            if (i - from >= FEWEST_HELD && heldS > longestS) {
                longestS = heldS;
                longestFromS = speed.timeS(from);
            }
        }
        return longestS < SUSPICIOUS_S
                ? Optional.empty()
                : Optional.of(Finding.warning(
                        "stale-speed",
                        Place.atTime(recording.name(), longestFromS),
                        String.format(
                                Locale.ROOT,
                                "\"%s\" keeps one value for up to %.0f s while moving: it was held, not measured",
                                speed.name(),
                                longestS),
                        "leave such stretches out of any run"));
    }

    private static Finding none(String oneName, double oneM, String otherName, double otherM, Recording recording) {
        String still = oneM < otherM ? oneName : otherName;
        String moved = oneM < otherM ? otherName : oneName;
        return Finding.warning(
                "distances-disagree",
                Place.in(recording.name()),
                String.format(
                        Locale.ROOT,
                        "distance by %s is %.0f m, but by %s nothing moved: noise of the fixes, or a sensor that "
                                + "was off",
                        moved,
                        Math.max(oneM, otherM),
                        still),
                "use neither before you know which is right");
    }

    private static String likely(double ratio, String oneName) {
        double large = Math.max(ratio, 1 / ratio);
        for (Cause cause : CAUSES) {
            if (Math.abs(large / cause.ratio - 1) <= NEAR) {
                return ", as when " + cause.words.replace(" taken", " are taken");
            }
        }
        boolean longTrack = oneName.equals("track") && ratio > 1 && ratio < 1.6;
        return longTrack ? ", as when noise of the fixes lengthens the track" : "";
    }
}
