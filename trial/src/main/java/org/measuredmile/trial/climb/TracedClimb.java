package org.measuredmile.trial.climb;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.statistics.LineFit;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Course;
import org.measuredmile.recording.motion.Pass;
import org.measuredmile.recording.motion.Passes;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.Candidate;

/// A ride up a surveyed hill in a recording, or an attempt that is none with its reason.
///
/// Shape: it begins some seconds before the first gate and ends as much after the last, so that what lies between its
/// ends, looked at by itself, still crosses both gates.
/// Unit: seconds of the recording.
record TracedClimb(
        Recording recording,
        SpeedSource source,
        Course course,
        double beginS,
        double endS,
        Optional<Pass> pass,
        String reason)
        implements Candidate {
    /// What the fixes about a gate need, s.
    private static final double MARGIN_S = 5;

    /// A speed at a place and how well it is known, m/s.
    record Speed(double mps, double standardUncertainty) {}

    static TracedClimb whole(Recording recording, SpeedSource source, Course course, Pass pass) {
        double lastS = Math.max(pass.toS(), pass.fromS() + pass.byGates().durationS());
        String reason = pass.durationS() < ClimbRules.SHORTEST_S
                ? String.format(
                        Locale.ROOT, "a climb of %.1f s, at least %.0f s", pass.durationS(), ClimbRules.SHORTEST_S)
                : "";
        return new TracedClimb(
                recording, source, course, pass.fromS() - MARGIN_S, lastS + MARGIN_S, Optional.of(pass), reason);
    }

    static TracedClimb refused(Recording recording, SpeedSource source, Course course, Passes.Partial partial) {
        return new TracedClimb(
                recording,
                source,
                course,
                partial.fromS() - MARGIN_S,
                partial.toS() + MARGIN_S,
                Optional.empty(),
                partial.reason());
    }

    @Override
    public boolean qualifies() {
        return pass.isPresent() && reason.isEmpty();
    }

    double durationS() {
        return pass.orElseThrow().durationS();
    }

    boolean isBySpeed() {
        return pass.orElseThrow().method() == Pass.Method.SPEED_OVER_LENGTH;
    }

    /// What is this run's alone of the duration's uncertainty: without the length and the speed's scale, which the
    /// runs of a day share.
    double ownSdS(double lengthSdM) {
        double all = pass.orElseThrow().uDurationS();
        if (!isBySpeed()) {
            return all;
        }
        double ofLength = lengthSdM / meanMps();
        double ofScale = ClimbRules.SPEED_SCALE * durationS();
        return Math.sqrt(Math.max(1e-4, all * all - ofLength * ofLength - ofScale * ofScale));
    }

    private double meanMps() {
        return course.length().map(one -> one.valueM() / durationS()).orElse(4.0);
    }

    /// What a metre more of length adds to the duration, in seconds; nothing where both ends are fixes.
    double secondsPerMetre() {
        return isBySpeed() ? 1 / Math.max(1, exit().mps()) : 0;
    }

    Speed entry() {
        return at(pass.orElseThrow().fromS());
    }

    Speed exit() {
        return at(pass.orElseThrow().toS());
    }

    private Speed at(double timeS) {
        double half = ClimbRules.END_SPEED_HALF_S;
        var near = samples().between(timeS - half, timeS + half);
        boolean byFixes = source.kind() == SpeedSource.Kind.POSITIONS;
        double sd = byFixes ? ClimbRules.END_SPEED_BY_FIXES_SD : ClimbRules.END_SPEED_SD;
        if (near.size() >= 3) {
            return new Speed(
                    Math.max(0, LineFit.through(near.timesS(), near.values()).at(timeS)), sd);
        }
        int at = Math.min(samples().indexAtOrAfter(timeS), samples().size() - 1);
        return new Speed(samples().value(at), 2 * sd);
    }

    /// The samples from the beginning to the end.
    Channel samples() {
        return source.channel();
    }

    /// The lowest mean speed over ten seconds, past the first quarter of the way; empty where positions alone tell
    /// the speed, or the climb is too short.
    OptionalDouble lowestMps() {
        if (source.kind() == SpeedSource.Kind.POSITIONS || course.length().isEmpty()) {
            return OptionalDouble.empty();
        }
        var one = pass.orElseThrow();
        double lengthM = course.length().get().valueM();
        double share = ClimbRules.LOWEST_FROM_SHARE;
        double fromS = one.atS(one.direction() == Pass.Direction.OUT ? share * lengthM : (1 - share) * lengthM);
        var part = samples().between(fromS, one.toS());
        double lowest = Double.POSITIVE_INFINITY;
        double way = 0;
        int first = 0;
        for (int i = 1; i < part.size(); i++) {
            way += step(part, i);
            while (part.timeS(i) - part.timeS(first + 1) >= ClimbRules.LOWEST_OVER_S) {
                way -= step(part, ++first);
            }
            double spanS = part.timeS(i) - part.timeS(first);
            if (spanS >= ClimbRules.LOWEST_OVER_S) {
                lowest = Math.min(lowest, way / spanS);
            }
        }
        return Double.isInfinite(lowest)
                ? OptionalDouble.empty()
                : OptionalDouble.of(lowest + ClimbRules.LOWEST_TOO_LOW_MPS);
    }

    private static double step(Channel part, int i) {
        return (part.value(i - 1) + part.value(i)) / 2 * (part.timeS(i) - part.timeS(i - 1));
    }
}
