package org.measuredmile.trial;

import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;

/// What became of one run: whether it counts, and why not, and what it gave.
///
/// Shape: `reason` is empty when the run counts, else it gives limit and value; `stretch` is where it lies in a
/// recording; `values` are its own results, in the order of the declaration.
public record RunResult(
        String run,
        Variant variant,
        String direction,
        Run.State state,
        boolean counted,
        String reason,
        Optional<Stretch> stretch,
        List<RunValue> values,
        Optional<Trace> trace) {
    /// Part of a recording.
    ///
    /// Unit: seconds from the recording's start.
    public record Stretch(String recording, double fromS, double toS) {}

    /// One result of one run.
    ///
    /// Unit: the SI unit of `kind`, standard uncertainty alike; NaN never.
    public record RunValue(String name, String title, QuantityKind kind, double value, double standardUncertainty) {}

    public RunResult {
        values = List.copyOf(values);
    }
}
