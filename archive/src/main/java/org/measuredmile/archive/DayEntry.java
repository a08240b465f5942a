package org.measuredmile.archive;

import java.time.Instant;
import java.util.List;
import org.measuredmile.recording.Finding;

/// A test day on a list: what it is about and what became of its reduction.
///
/// Shape: `date`, `bike` and the rest are empty text when the day's own files could not be used; `findings` are those
/// of
/// the day's own files; `message` says why a reduction failed.
public record DayEntry(
        String id,
        long revision,
        Instant at,
        State state,
        String date,
        String place,
        String bike,
        String maker,
        String model,
        String category,
        String drive,
        long figures,
        String message,
        List<Finding> findings) {
    /// What became of the reduction.
    public enum State {
        REDUCED,
        /// The day's own files name no day or no bike; they are kept.
        UNUSABLE,
        /// The program failed; the files are kept, and `mile recompute --renew` tries again.
        FAILED
    }

    public DayEntry {
        findings = List.copyOf(findings);
    }
}
