package org.measuredmile.trial.standingstart;

import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.CandidateFinder;

/// How starts are looked for.
record StartSearch() implements CandidateFinder<TracedStart> {
    @Override
    public String word() {
        return "start";
    }

    @Override
    public List<TracedStart> find(Recording recording, SpeedSource source) {
        return StartFinder.find(recording, source);
    }

    @Override
    public Optional<Finding> tooCoarse(Place place, SpeedSource source) {
        return StartFinder.isTooCoarse(source)
                ? Optional.of(
                        Finding.refused("too-coarse", place, StartFinder.tooCoarse(source), StartFinder.COARSE_REMEDY))
                : Optional.empty();
    }

    @Override
    public String withoutSpeed() {
        return "time the start by hand, or use a logger that writes speed";
    }
}
