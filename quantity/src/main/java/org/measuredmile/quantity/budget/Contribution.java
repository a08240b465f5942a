package org.measuredmile.quantity.budget;

/// What one input adds to the uncertainty of a figure.
///
/// Unit: `standardUncertainty` is |sensitivity| · u(input), in the SI unit of the figure.
/// Shape: `shared` names the thing that other figures have in common with this input (an instrument's
/// calibration, say), so that it can cancel in a difference; empty when nothing is shared.
/// Error: IllegalArgumentException for a negative or non-finite uncertainty, or degrees of freedom below 1
/// (infinite ones are `Double.POSITIVE_INFINITY`).
/// Source: JCGM 100:2008, 4.2 (type A), 4.3 (type B), 5.1.3.
public record Contribution(
        String input, Evaluation evaluation, double standardUncertainty, double degreesOfFreedom, String shared) {
    /// How an input's uncertainty was come by.
    public enum Evaluation {
        /// From the scatter of repeated runs.
        A,
        /// By any other means.
        B
    }

    public Contribution {
        if (!(standardUncertainty >= 0 && standardUncertainty < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(input + ": standard uncertainty " + standardUncertainty);
        }
        if (!(degreesOfFreedom >= 1)) {
            throw new IllegalArgumentException(input + ": degrees of freedom " + degreesOfFreedom);
        }
    }

    /// From the scatter of runs.
    public static Contribution typeA(String input, double standardUncertainty, double degreesOfFreedom) {
        return new Contribution(input, Evaluation.A, standardUncertainty, degreesOfFreedom, "");
    }

    /// From knowledge other than the runs' scatter, taken as exactly known in size.
    public static Contribution typeB(String input, double standardUncertainty) {
        return new Contribution(input, Evaluation.B, standardUncertainty, Double.POSITIVE_INFINITY, "");
    }

    /// The same, shared with other figures under the given name.
    public Contribution sharedAs(String name) {
        return new Contribution(input, evaluation, standardUncertainty, degreesOfFreedom, name);
    }
}
