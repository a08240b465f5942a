package org.measuredmile.recording.day;

import java.time.Instant;
import java.util.Optional;
import org.measuredmile.recording.Place;

/// One attempt at a trial, as written down.
///
/// Shape: `direction` is `out`, `back` or empty; `reason` is empty unless the run is void; `start` is absent when no
/// time was written; `end` is present only where a person set both ends of the run on its trace, and then the run is
/// what lies between `start` and `end` and nothing else; `place` is where it stands in its file.
public record Run(
        String id,
        String trial,
        Variant variant,
        String rider,
        Optional<Instant> start,
        Optional<Instant> end,
        String course,
        String direction,
        State state,
        String reason,
        String note,
        Place place) {
    /// A run whose ends nobody set.
    public Run(
            String id,
            String trial,
            Variant variant,
            String rider,
            Optional<Instant> start,
            String course,
            String direction,
            State state,
            String reason,
            String note,
            Place place) {
        this(id, trial, variant, rider, start, Optional.empty(), course, direction, state, reason, note, place);
    }

    /// Where a run stands. The names, in lower case, are those of runs.csv.
    public enum State {
        /// Found by the tool, not yet confirmed by a person.
        PROPOSED,
        /// A person says that it was ridden as written.
        CONFIRMED,
        /// A person says that it does not count, and why.
        VOID
    }
}
