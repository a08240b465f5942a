package org.measuredmile.trial;

/// How many runs, fixed before riding.
///
/// Shape: `usual` runs a variant; `least` that any figure needs; `bothDirections` when runs go both ways in pairs.
public record RunPlan(int usual, int least, boolean bothDirections) {
    /// Nothing is ridden or repeated: the trial's readings belong to the day.
    public static final RunPlan NONE = new RunPlan(0, 0, false);
}
