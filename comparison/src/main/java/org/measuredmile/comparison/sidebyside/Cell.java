package org.measuredmile.comparison.sidebyside;

import org.measuredmile.comparison.TestedBike;

/// What one bike has to say in one row.
public sealed interface Cell {
    /// A result that stands.
    record Measured(TestedBike.Result result) implements Cell {}

    /// Left out on purpose, and why.
    record NotRidden(String reason) implements Cell {}

    /// Nobody measured it so, or nobody confirmed it yet.
    record NotMeasured() implements Cell {}
}
