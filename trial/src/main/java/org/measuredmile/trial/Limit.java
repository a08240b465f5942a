package org.measuredmile.trial;

import org.measuredmile.quantity.Interval;
import org.measuredmile.recording.day.Variant;

/// A window that a reading or a condition must lie in, and what follows when it does not.
///
/// Shape: `reading` is the name of a reading or of a condition; `when` restricts the limit to variants that cover it.
/// Unit: `allowed` in the SI unit of the reading, both ends stored and both belonging to it.
public record Limit(String reading, String title, Variant when, Interval allowed, Broken broken, String source) {
    /// What follows when a limit is broken.
    public enum Broken {
        /// The run is shown and does not count.
        RUN_DOES_NOT_COUNT,
        /// No figure is computed.
        NO_FIGURE,
        /// The figure stands with a wider interval.
        WIDER
    }
}
