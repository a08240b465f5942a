package org.measuredmile.trial;

/// One kind of road test: declared once, reduced by a pure function.
public interface Trial {
    /// What the trial is. The same value at every call.
    Declaration declaration();

    /// Figures, runs and findings of one day's input. Reads nothing else, changes nothing, never throws for what
    /// the input holds.
    Outcome reduce(TrialInput input);
}
