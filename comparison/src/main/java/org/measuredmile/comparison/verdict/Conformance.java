package org.measuredmile.comparison.verdict;

import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.StudentT;

/// How probable it is that a quantity lies on the good side of a limit, given what was measured.
///
/// Formula: p = F_ν((T − y)/u) for at most T, 1 − that for at least T, with Student's t for few runs. Where the
/// interval's arms differ in length, u is that of the arm towards the limit.
/// Source: JCGM 106:2012, 7.2 to 7.4; t in place of the normal distribution: 7.2.3 and the example of 8.3.3.
public final class Conformance {
    private Conformance() {}

    /// The probability that the quantity is at most the limit.
    public static double atMost(double value, Uncertainty known, double limit) {
        return below(value, known, limit);
    }

    /// The probability that the quantity is at least the limit.
    public static double atLeast(double value, Uncertainty known, double limit) {
        return 1 - below(value, known, limit);
    }

    /// The probability that the quantity lies between two limits.
    public static double between(double value, Uncertainty known, double low, double high) {
        return below(value, known, high) - below(value, known, low);
    }

    /// By how much a value must stay inside a limit, or beyond it to be rejected, for a stated confidence.
    ///
    /// Formula: g = t_ν(confidence)·u.
    /// Source: JCGM 106:2012, 8.3.
    public static double guardBand(double standard, double degreesOfFreedom, double confidence) {
        return StudentT.quantile(confidence, degreesOfFreedom) * standard;
    }

    /// The reading from which on a quantity is over a limit with a stated confidence, its standard
    /// uncertainty a share of the reading.
    ///
    /// Formula: y = T/(1 − z·u/y).
    /// Source: JCGM 106:2012, 8.3.3.2, the example of the speed limit.
    public static double rejectedFrom(double limit, double relativeStandard, double confidence) {
        return limit / (1 - StudentT.quantile(confidence, Double.POSITIVE_INFINITY) * relativeStandard);
    }

    private static double below(double value, Uncertainty known, double limit) {
        double t95 = StudentT.twoSided95(known.degreesOfFreedom());
        double arm = limit >= value
                ? known.interval95().high() - value
                : value - known.interval95().low();
        if (!(arm > 0)) {
            return value == limit ? 0.5 : value < limit ? 1 : 0;
        }
        return StudentT.below(t95 * (limit - value) / arm, known.degreesOfFreedom());
    }
}
