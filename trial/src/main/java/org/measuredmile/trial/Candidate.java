package org.measuredmile.trial;

import org.measuredmile.recording.Recording;

/// Something found in a recording that may be a run, whether it can be used or not.
public interface Candidate {
    /// The recording that it lies in.
    Recording recording();

    /// When it begins, in seconds of the recording.
    double beginS();

    /// When it ends, in seconds of the recording.
    double endS();

    /// Whether the trial can take a value from it.
    boolean qualifies();
}
