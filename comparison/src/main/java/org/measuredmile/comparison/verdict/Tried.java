package org.measuredmile.comparison.verdict;

import java.util.Optional;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.quantity.budget.Uncertainty;

/// A claim held against one result: as it was measured, or brought to other conditions.
///
/// Unit: `value` and `known` in the SI unit of the figure.
/// Shape: `under` where the result was brought elsewhere.
public record Tried(
        TestedBike.Result result, double value, Uncertainty known, Optional<Under> under, Judgement judgement) {
    /// The conditions that a range was brought to: on the level, without stops.
    ///
    /// Unit: kilograms with gear, kelvin, metres per second, watts.
    /// Shape: `isBest` when they are the best that the claim admits; `isSlower` when the speed is that of
    /// another level than the one ridden.
    public record Under(
            double riderKg,
            double airK,
            double windMps,
            double meanMps,
            double riderW,
            boolean isBest,
            boolean isSlower) {}
}
