package org.measuredmile.trial.braking;

import java.util.Optional;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.CandidateMatching.Held;
import org.measuredmile.trial.ResolvedReadings.Value;

/// One run as this trial sees it: what was written down, the stop in a recording, and why either does not count.
///
/// Shape: `screened` is why nothing of the run counts (empty when it does); `slope` uphill positive.
record BrakingRun(
        Run run,
        BrakingRules.Nominal nominal,
        String screened,
        Optional<Tape> tape,
        Held<TracedStop> held,
        double slope) {
    /// A distance taped from the mark to the front wheel's contact point, and the entry speed that was read.
    record Tape(Value entry, Value distance) {
        double entryMps() {
            return entry.si();
        }

        double distanceM() {
            return distance.si();
        }

        /// The standard uncertainty of this one distance at the nominal speed: tape, mark and entry speed.
        ///
        /// Source: handbook page of the trial, step 2.
        double standardUncertaintyM(double nominalMps) {
            double markM = entryMps() * BrakingRules.MARK_RUN_S;
            double measuredM = Math.sqrt(BrakingRules.square(BrakingRules.TAPE_M) + markM * markM);
            double scale = BrakingRules.square(nominalMps / entryMps());
            double bySpeedM = 2 * BrakingRules.ENTRY_MPS / entryMps() * distanceM() * scale;
            return Math.sqrt(BrakingRules.square(measuredM * scale) + bySpeedM * bySpeedM);
        }
    }

    boolean isTaped() {
        return run.variant().has("method", "tape");
    }

    /// The stop in a recording.
    Optional<TracedStop> traced() {
        return held.candidate();
    }

    /// The taped distance at the nominal speed, on level road.
    Optional<Double> tapedM() {
        return tape.map(one -> BrakingCorrection.levelDistance(
                BrakingCorrection.atNominal(one.distanceM(), one.entryMps(), nominal.speedMps()),
                nominal.speedMps(),
                slope));
    }

    /// Why the trace of this run gives nothing; empty text when it does.
    String traceReason() {
        if (!screened.isEmpty()) {
            return screened;
        }
        if (traced().isEmpty()) {
            return held.whyNone().isEmpty() ? "no recording holds this run" : held.whyNone();
        }
        if (!traced().get().qualifies()) {
            return traced().get().reason();
        }
        double entry = traced().get().entryMps();
        return nominal.window().contains(entry)
                ? ""
                : "entry speed " + BrakingWords.kmh(entry) + " is outside " + StopFinder.window(nominal);
    }

    /// What the trace gives, where it gives anything.
    Optional<TraceValues> traceValues() {
        return traceReason().isEmpty()
                ? traced().map(stop -> new TraceValues(stop, nominal.speedMps(), slope))
                : Optional.empty();
    }

    /// Why the run does not count for anything; empty text when it does.
    String reason() {
        return isTaped() ? screened : traceReason();
    }
}
