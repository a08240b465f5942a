package org.measuredmile.trial;

import java.util.function.ToDoubleFunction;

/// How two figures of one trial lean on each other, for whoever uses both.
///
/// Shape: `coefficient` from −1 to 1, of the figures' errors on any day; figures without one do not correlate.
/// Error: IllegalArgumentException for a coefficient beyond ±1 or of a figure with itself.
/// Source: JCGM 100:2008, 5.2.2, equation (14).
public record Correlation(FigureKey one, FigureKey other, double coefficient) {
    /// How much of the scatter of runs and of days moves two figures of one drive alike, as the battery's state
    /// and the rider do. House.
    private static final double SCATTER_ALIKE = 0.7;

    public Correlation {
        if (!(Math.abs(coefficient) <= 1) || one.equals(other)) {
            throw new IllegalArgumentException(one.text() + ", " + other.text() + ": " + coefficient);
        }
    }

    /// Whether one of the two is this figure.
    public boolean isOf(FigureKey figure) {
        return one.equals(figure) || other.equals(figure);
    }

    /// The figure that this one leans on.
    ///
    /// Error: IllegalArgumentException for a figure that is neither of the two.
    public FigureKey besides(FigureKey figure) {
        if (!isOf(figure)) {
            throw new IllegalArgumentException(figure.text() + " is neither of the two");
        }
        return one.equals(figure) ? other : one;
    }

    /// Whether it is between these two, either way round.
    public boolean isBetween(FigureKey first, FigureKey second) {
        return (one.equals(first) && other.equals(second)) || (one.equals(second) && other.equals(first));
    }

    /// The coefficient of two figures of the same runs, from their budgets: inputs of one name move both the
    /// same way, each by as much as `alike` says, from −1 to 1.
    ///
    /// Source: JCGM 100:2008, F.1.2.3 (correlation from common inputs).
    public static double byInputs(Figure one, Figure other, ToDoubleFunction<String> alike) {
        double covariance = 0;
        for (var first : one.budget()) {
            for (var second : other.budget()) {
                if (first.input().equals(second.input())) {
                    covariance += alike.applyAsDouble(first.input())
                            * first.standardUncertainty()
                            * second.standardUncertainty();
                }
            }
        }
        double sds = one.anyDay().standard() * other.anyDay().standard();
        return sds == 0 ? 0 : Math.clamp(covariance / sds, -0.99, 0.99);
    }

    /// How much an input of a name moves two figures of one drive alike: scatter mostly, what single fits trade
    /// one for the other not at all as far as anybody knows, everything else wholly.
    public static double ofScatter(String input) {
        if (input.startsWith("scatter") || input.equals("between days")) {
            return SCATTER_ALIKE;
        }
        return input.startsWith("speed noise") || input.startsWith("build-up") ? 0 : 1;
    }
}
