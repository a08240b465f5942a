package org.measuredmile.quantity;

/// A closed interval of values of one kind.
///
/// Unit: that of its bounds; the SI unit wherever the product stores it.
/// Error: IllegalArgumentException when a bound is not a number or the bounds are crossed.
public record Interval(double low, double high) {
    public Interval {
        if (!(low <= high)) {
            throw new IllegalArgumentException("interval from " + low + " to " + high + " has no inside");
        }
    }

    /// The interval of the given half-width around a centre.
    public static Interval around(double centre, double halfWidth) {
        return new Interval(centre - halfWidth, centre + halfWidth);
    }

    public boolean contains(double value) {
        return value >= low && value <= high;
    }

    public double halfWidth() {
        return (high - low) / 2;
    }
}
