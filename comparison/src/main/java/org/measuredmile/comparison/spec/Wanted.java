package org.measuredmile.comparison.spec;

import org.measuredmile.quantity.Interval;

/// What a claim says that a figure is.
///
/// Unit: the SI unit of the item's kind.
public sealed interface Wanted {
    record Exactly(double si) implements Wanted {}

    /// From one value to another, both admitted.
    ///
    /// Shape: `lowSi` is below `highSi`.
    record Between(double lowSi, double highSi) implements Wanted {
        public Between {
            if (!(lowSi < highSi)) {
                throw new IllegalArgumentException("no range from " + lowSi + " to " + highSi);
            }
        }
    }

    /// `up to 65 mi`: some admissible condition reaches it.
    record UpTo(double si) implements Wanted {}

    /// `at least 40 mi`: every admissible condition reaches it.
    record AtLeast(double si) implements Wanted {}

    /// `at most 25 kg`: no admissible condition passes it.
    record AtMost(double si) implements Wanted {}

    /// The values admitted: one point, a range, or everything on one side; `up to` admits all that lies under it.
    default Interval admitted() {
        return switch (this) {
            case Exactly(double si) -> new Interval(si, si);
            case Between(double lowSi, double highSi) -> new Interval(lowSi, highSi);
            case UpTo(double si) -> new Interval(Double.NEGATIVE_INFINITY, si);
            case AtLeast(double si) -> new Interval(si, Double.POSITIVE_INFINITY);
            case AtMost(double si) -> new Interval(Double.NEGATIVE_INFINITY, si);
        };
    }

    /// The finite numbers named, in the order written.
    default double[] named() {
        return switch (this) {
            case Exactly(double si) -> new double[] {si};
            case Between(double lowSi, double highSi) -> new double[] {lowSi, highSi};
            case UpTo(double si) -> new double[] {si};
            case AtLeast(double si) -> new double[] {si};
            case AtMost(double si) -> new double[] {si};
        };
    }
}
