package org.measuredmile.trial;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;

/// A finder of candidates put together from its parts: what one is called, how they are found, and what to say where a
/// recording cannot hold any.
///
/// Shape: `coarse` gives what is wrong with a source that is sampled too coarsely, and nothing for any other.
public record SpeedFinder<C extends Candidate>(
        String word,
        BiFunction<Recording, SpeedSource, List<C>> finding,
        Function<SpeedSource, Optional<String>> coarse,
        String coarseRemedy,
        String withoutSpeed)
        implements CandidateFinder<C> {
    @Override
    public List<C> find(Recording recording, SpeedSource source) {
        return finding.apply(recording, source);
    }

    @Override
    public Optional<Finding> tooCoarse(Place place, SpeedSource source) {
        return coarse.apply(source).map(why -> Finding.refused("too-coarse", place, why, coarseRemedy));
    }
}
