package org.measuredmile.comparison.standing;

/// The share of a population that a bike is better than, in per cent: the mean of the strict and the weak percentage,
/// so
/// that bikes of the same value, itself among them, count half.
///
/// Shape: from 50/n for the last of n to 100 − 50/n for the first.
/// Source: common practice; the four kinds are those that SciPy documents for `stats.percentileofscore`.
public record Percentile(int worse, int same, int count) {
    /// Error: IllegalArgumentException where the bike itself is not among those of the same value.
    public Percentile {
        if (same < 1 || worse < 0 || worse + same > count) {
            throw new IllegalArgumentException(worse + " worse and " + same + " the same of " + count);
        }
    }

    /// The share of bikes that are worse.
    public double strict() {
        return 100.0 * worse / count;
    }

    /// The share of bikes that are not better.
    public double weak() {
        return 100.0 * (worse + same) / count;
    }

    /// What is shown: halfway between the two.
    public double mean() {
        return (strict() + weak()) / 2;
    }
}
