package org.measuredmile.trial.coastdown;

import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.CandidateFinder;

/// How coasts are looked for.
record CoastSearch() implements CandidateFinder<TracedCoast> {
    @Override
    public String word() {
        return "coast";
    }

    @Override
    public List<TracedCoast> find(Recording recording, SpeedSource source) {
        return CoastFinder.find(recording, source);
    }

    /// Each coast says it of itself: a ride at a low rate is no fault of this trial.
    @Override
    public Optional<Finding> tooCoarse(Place place, SpeedSource source) {
        return Optional.empty();
    }

    @Override
    public String withoutSpeed() {
        return "time the fall of speed by hand, or use a logger that writes speed";
    }
}
