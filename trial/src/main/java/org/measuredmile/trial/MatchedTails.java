package org.measuredmile.trial;

import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.StudentT;

/// The 95 % intervals of a figure whose scatters are hardly more than stated ones, or of few degrees of freedom.
///
/// A stated scatter of ν degrees of freedom makes a t-distributed contribution, of variance u²·ν/(ν − 2)
/// and excess kurtosis 6/(ν − 4). The sum is given the scaled t distribution of the same variance and
/// kurtosis, which is exact for one contribution; effective degrees of freedom by Welch and
/// Satterthwaite make the tails of two like ones 5 % too narrow.
/// Valid: for more than 4 degrees of freedom in each contribution; else the budget's own interval.
/// Source: JCGM 101:2008, 6.4.9.4 (variance); kurtosis of a sum: its fourth cumulants add.
public final class MatchedTails {
    private static final double LEAST_DEGREES = 4;

    private MatchedTails() {}

    /// The figure with both intervals from its budget.
    public static Figure of(Figure figure, String betweenDays) {
        var thisDay = new Budget(figure.budget().stream()
                .filter(part -> !part.input().equals(betweenDays))
                .toList());
        return figure.known(around(thisDay, figure.value()), around(new Budget(figure.budget()), figure.value()));
    }

    public static Uncertainty around(Budget budget, double value) {
        if (budget.contributions().stream().anyMatch(part -> part.degreesOfFreedom() <= LEAST_DEGREES)) {
            return budget.around(value);
        }
        double variance = 0;
        double fourthCumulant = 0;
        for (var part : budget.contributions()) {
            double own = variance(part);
            variance += own;
            fourthCumulant += own * own * 6 / (part.degreesOfFreedom() - 4);
        }
        double degrees = fourthCumulant == 0 ? Double.POSITIVE_INFINITY : 4 + 6 * variance * variance / fourthCumulant;
        double scale = Math.sqrt(variance * (1 - 2 / degrees));
        return new Uncertainty(
                budget.standardUncertainty(),
                budget.effectiveDegreesOfFreedom(),
                Interval.around(value, StudentT.twoSided95(degrees) * scale));
    }

    private static double variance(Contribution part) {
        double square = part.standardUncertainty() * part.standardUncertainty();
        return square / (1 - 2 / part.degreesOfFreedom());
    }
}
