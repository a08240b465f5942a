package org.measuredmile.comparison.sidebyside;

import org.measuredmile.quantity.Interval;

/// The difference of two bikes in one row: first minus second, what both share taken out.
///
/// Unit: the SI unit of the figure; `interval95` is that of this one difference on any day.
/// Shape: `one` and `other` are places in the list of bikes, `one` below `other`. `adjusted` is the probability of so
/// large a difference between equals, adjusted for all pairs of the row; `real` when it is at most 5 %.
public record Difference(
        int one, int other, double value, Interval interval95, double probability, double adjusted, boolean real) {
    /// Whether it is between these two, either way round.
    boolean isBetween(int first, int second) {
        return (one == first && other == second) || (one == second && other == first);
    }
}
