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

    /// From bounds that the error surely lies within, every value equally likely: half-width / √3.
    ///
    /// Source: JCGM 100:2008, 4.3.7, equation (7).
    public static Contribution rectangular(String input, double halfWidth) {
        return typeB(input, halfWidth / Math.sqrt(3));
    }

    /// From the step of a display or a scale: step / √12.
    ///
    /// Source: JCGM 100:2008, F.2.2.1.
    public static Contribution resolution(String input, double step) {
        return typeB(input, step / Math.sqrt(12));
    }

    /// From bounds with a likeliest middle: half-width / √6.
    ///
    /// Source: JCGM 100:2008, 4.3.9.
    public static Contribution triangular(String input, double halfWidth) {
        return typeB(input, halfWidth / Math.sqrt(6));
    }

    /// From bounds that the error swings between: half-width / √2.
    ///
    /// Source: JCGM 100:2008, H.1.3.4.
    public static Contribution arcsine(String input, double halfWidth) {
        return typeB(input, halfWidth / Math.sqrt(2));
    }

    /// The same, with its size itself known to a relative uncertainty only: 1 / (2R²) degrees of freedom.
    ///
    /// Valid: from 0 to 0.7; beyond, there is less than one degree of freedom.
    /// Source: JCGM 100:2008, G.4.2, equation (G.3).
    public Contribution reliableTo(double relative) {
        double degrees = relative == 0 ? Double.POSITIVE_INFINITY : 1 / (2 * relative * relative);
        return new Contribution(input, evaluation, standardUncertainty, degrees, shared);
    }

    /// The same through a model's sensitivity to its input: |c| times as large.
    ///
    /// Source: JCGM 100:2008, 5.1.3.
    public Contribution through(double sensitivity) {
        return new Contribution(
                input, evaluation, Math.abs(sensitivity) * standardUncertainty, degreesOfFreedom, shared);
    }

    /// The same, shared with other figures under the given name.
    public Contribution sharedAs(String name) {
        return new Contribution(input, evaluation, standardUncertainty, degreesOfFreedom, name);
    }
}
