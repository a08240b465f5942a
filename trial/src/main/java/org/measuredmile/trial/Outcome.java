package org.measuredmile.trial;

import java.util.List;
import org.measuredmile.recording.Finding;

/// What a trial makes of a day: figures, what became of each run, and findings.
///
/// Shape: a figure that the data cannot carry is not there; a finding of level refused says so, and what would do.
/// `correlations` are between figures of this trial that others may use together.
public record Outcome(
        List<Figure> figures, List<RunResult> runs, List<Finding> findings, List<Correlation> correlations) {
    /// Nothing was ridden, read or recorded for the trial.
    public static final Outcome NOTHING = new Outcome(List.of(), List.of(), List.of());

    public Outcome {
        figures = List.copyOf(figures);
        runs = List.copyOf(runs);
        findings = List.copyOf(findings);
        correlations = List.copyOf(correlations);
    }

    /// An outcome whose figures stand alone.
    public Outcome(List<Figure> figures, List<RunResult> runs, List<Finding> findings) {
        this(figures, runs, findings, List.of());
    }
}
