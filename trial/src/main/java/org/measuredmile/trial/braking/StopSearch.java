package org.measuredmile.trial.braking;

import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.CandidateFinder;

/// How stops are looked for.
record StopSearch() implements CandidateFinder<TracedStop> {
    @Override
    public String word() {
        return "stop";
    }

    @Override
    public List<TracedStop> find(Recording recording, SpeedSource source) {
        return StopFinder.find(recording, source);
    }

    @Override
    public Optional<Finding> tooCoarse(Place place, SpeedSource source) {
        return StopFinder.isTooCoarse(source)
                ? Optional.of(Finding.refused("too-coarse", place, StopFinder.tooCoarse(source), ""))
                : Optional.empty();
    }

    @Override
    public String withoutSpeed() {
        return "use the tape reading, or a logger that writes speed";
    }
}
