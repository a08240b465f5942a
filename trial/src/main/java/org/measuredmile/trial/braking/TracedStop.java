package org.measuredmile.trial.braking;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.recording.motion.Stops.Stop;
import org.measuredmile.trial.Candidate;

/// A candidate stop in a recording: the fit where it qualifies, its own reasons where it does not.
///
/// Shape: `reasons` give limit and value each and are empty for a stop that can be used; `leverS` is when the
/// control first moved, in the recording's seconds, where there is a lever channel; `samples` are those fitted.
record TracedStop(
        Recording recording,
        SpeedSource source,
        Stop stop,
        Channel samples,
        Optional<StopFit.Fitted> fitted,
        OptionalDouble leverS,
        List<String> reasons)
        implements Candidate {
    TracedStop {
        reasons = List.copyOf(reasons);
    }

    @Override
    public double beginS() {
        return onsetS();
    }

    @Override
    public double endS() {
        return restS();
    }

    @Override
    public boolean qualifies() {
        return reasons.isEmpty() && fitted.isPresent();
    }

    /// The entry speed: the fit's, or the rough one of a candidate that was not fitted.
    double entryMps() {
        return fitted.map(fit -> fit.curve().entryMps()).orElse(stop.entryMps());
    }

    double onsetS() {
        return fitted.map(StopFit.Fitted::onsetS).orElse(stop.onsetS());
    }

    double restS() {
        return fitted.map(StopFit.Fitted::restS).orElse(stop.restS());
    }

    String reason() {
        return String.join("; ", reasons);
    }
}
