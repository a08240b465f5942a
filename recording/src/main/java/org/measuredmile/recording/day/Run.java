package org.measuredmile.recording.day;

import java.time.Instant;
import java.util.Optional;
import org.measuredmile.recording.Place;

/// One attempt at a trial, as written down.
///
/// Shape: `direction` is `out`, `back` or empty; `reason` is empty unless the run is void; `start` is absent when no
/// time was written; `place` is where it stands in its file. Ends that a person set on its trace belong to the
/// recording they were set on: see [RecordingEntry#windows].
public record Run(
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
