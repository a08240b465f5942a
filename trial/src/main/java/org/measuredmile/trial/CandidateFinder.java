package org.measuredmile.trial;

import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;

/// How a trial finds its candidates in the speed of a recording, or of a part of one.
public interface CandidateFinder<C extends Candidate> {
    /// What one candidate is called ("stop").
    String word();

    /// Every candidate of a recording, in order of time, whether it can be used or not.
    List<C> find(Recording recording, SpeedSource source);

    /// That a source is sampled too coarsely for any candidate of it, and what would do; nothing when it is not.
    Optional<Finding> tooCoarse(Place place, SpeedSource source);

    /// What to do where a recording has no speed at all.
    String withoutSpeed();
}
