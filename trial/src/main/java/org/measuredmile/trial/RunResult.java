package org.measuredmile.trial;

import java.util.ArrayList;
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
    public record Stretch(String recording, double fromS, double toS) {
        /// Whether another stretch of the same recording has more than an end in common with this one.
        public boolean overlaps(double otherFromS, double otherToS) {
            return otherFromS < toS && otherToS > fromS;
        }
    }

    /// One result of one run.
    ///
    /// Unit: the SI unit of `kind`, standard uncertainty alike; NaN never.
    public record RunValue(String name, String title, QuantityKind kind, double value, double standardUncertainty) {}

    public RunResult {
        values = List.copyOf(values);
    }

    /// What came of a run that lies in no recording: it counts when there is no reason against it.
    public static RunResult of(Run run, String reason, List<RunValue> values) {
        return new RunResult(
                run.id(),
                run.variant(),
                run.direction(),
                run.state(),
                reason.isEmpty(),
                reason,
                Optional.empty(),
                values,
                Optional.empty());
    }

    /// The same run with what it gave for a figure, named like the figure without its trial; unchanged for NaN.
    public RunResult with(FigureSpec figure, double si) {
        if (Double.isNaN(si)) {
            return this;
        }
        var more = new ArrayList<>(values);
        double u = figure.prior().betweenRunsAt(si);
        more.add(new RunValue(figure.name(), figure.title(), figure.kind(), si, u));
        return new RunResult(run, variant, direction, state, counted, reason, stretch, more, trace);
    }

    /// The same run lying where a person said; it is drawn even where nothing was found there.
    public RunResult within(Optional<Stretch> set, TrialInput input) {
        if (set.isEmpty()) {
            return this;
        }
        var drawn = trace.or(
                () -> Optional.ofNullable(input.recordings().get(set.get().recording()))
                        .flatMap(recording -> RunWindows.samples(recording, set.get())));
        return new RunResult(run, variant, direction, state, counted, reason, set, values, drawn);
    }

    /// One of the run's own results.
    public Optional<RunValue> value(String name) {
        return values.stream().filter(one -> one.name().equals(name)).findFirst();
    }
}
