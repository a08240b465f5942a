package org.measuredmile.recording.motion;

import java.util.Locale;

/// Reasons why a crossing or a pass does not count, each with its value and its limit.
final class GateWords {
    private GateWords() {}

    static String gap(double stepS, double mostS) {
        return String.format(Locale.ROOT, "no fix for %.1f s at the gate, at most %.1f s", stepS, mostS);
    }

    static String beside(double asideM, double mostM) {
        return String.format(
                Locale.ROOT,
                "crossed %.0f m %s of the gate's middle, at most %.0f m",
                Math.abs(asideM),
                asideM > 0 ? "right" : "left",
                mostM);
    }

    static String slow(double speedMps, double leastMps) {
        return String.format(
                Locale.ROOT, "crossed the gate at %.1f m/s, at least %.1f m/s", Math.max(0, speedMps), leastMps);
    }

    static String angle(double degrees, double mostDegrees) {
        return String.format(
                Locale.ROOT, "crossed the gate at %.0f° to the course, at most %.0f°", degrees, mostDegrees);
    }

    static String offLine(double share, double mostShare, double halfWidthM) {
        return String.format(
                Locale.ROOT,
                "%.0f %% of the fixes lie more than %.0f m beside the course, at most %.0f %%",
                100 * share,
                halfWidthM,
                100 * mostShare);
    }

    static String gatesDisagree(double byGatesS, double bySpeedS, double uS) {
        return String.format(
                Locale.ROOT,
                "%.2f s between the gates, %.2f s by speed over the surveyed length: they differ by more than twice"
                        + " the uncertainty of %.2f s",
                byGatesS,
                bySpeedS,
                uS);
    }

    static String notStraight(double chordM, double lengthM) {
        return String.format(
                Locale.ROOT,
                "the gates are %.0f m apart in a straight line, the course is %.0f m long",
                chordM,
                lengthM);
    }
}
