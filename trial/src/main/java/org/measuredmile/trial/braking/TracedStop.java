package org.measuredmile.trial.braking;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.InertialStop;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.recording.motion.Stops.Stop;
import org.measuredmile.trial.Candidate;

/// A candidate stop in a recording: the fit where it qualifies, its own reasons where it does not.
///
/// Shape: `reasons` give limit and value each and are empty for a stop that can be used; `leverS` is when the
/// control first moved, in the recording's seconds, where there is a lever channel; `samples` are those fitted.
/// `inertial` is what an
/// accelerometer beside it gives, or why it gives nothing; `oneClock` says that it shares the clock of the
/// lever.
record TracedStop(
        Recording recording,
        SpeedSource source,
        Stop stop,
        Channel samples,
        Optional<StopFit.Fitted> fitted,
        Optional<InertialStop> inertial,
        boolean oneClock,
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

    /// The stop by accelerometer and satellite speed, where there is one.
    Optional<InertialStop.Known> sharp() {
        return inertial.flatMap(one -> one instanceof InertialStop.Known known ? Optional.of(known) : Optional.empty());
    }

    /// What the speed was measured by.
    String sourceTitle() {
        return sharp().isPresent() ? BrakingWords.BOTH : source.kind().title();
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
