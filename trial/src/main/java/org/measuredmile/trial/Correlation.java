package org.measuredmile.trial;

/// How two figures of one trial lean on each other, for whoever uses both.
///
/// Shape: `coefficient` from −1 to 1, of the figures' errors on any day; figures without one do not correlate.
/// Error: IllegalArgumentException for a coefficient beyond ±1 or of a figure with itself.
/// Source: JCGM 100:2008, 5.2.2, equation (14).
public record Correlation(FigureKey one, FigureKey other, double coefficient) {
    public Correlation {
        if (!(Math.abs(coefficient) <= 1) || one.equals(other)) {
            throw new IllegalArgumentException(one.text() + ", " + other.text() + ": " + coefficient);
        }
    }

    /// Whether it is between these two, either way round.
    public boolean isBetween(FigureKey first, FigureKey second) {
        return (one.equals(first) && other.equals(second)) || (one.equals(second) && other.equals(first));
    }
}
