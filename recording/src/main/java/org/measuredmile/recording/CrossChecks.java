package org.measuredmile.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/// Compares what a recording says twice: distance by positions, by speed and by the instrument itself.
///
/// A ratio that is a ratio of units names them; the repair is proposed, never made.
final class CrossChecks {
    private static final double TOO_SHORT_M = 100;
    private static final double AGREE = 0.03;
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
