package org.measuredmile.comparison.expected;

import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.statistics.Quantile;
import org.measuredmile.quantity.statistics.Sample;
import org.measuredmile.quantity.statistics.StudentT;

/// Where the result of a further bike would lie in 95 of 100 cases, were it one of the same kind and
/// measured as well.
///
/// Shape: around the line, half-width t·√(s²·(1 + 1.5/n + 1.1·(x − x̄)²/Σ(x − x̄)²)), with the robust scale
/// s of the residuals. s holds what bikes differ by and how well each was measured, and is never below the
/// standard uncertainty of the middle bike; a bike measured worse than that one has its own excess added.
/// Unit: x as the line is straight in it; the rest in the unit of y.
/// Valid: from `LEAST` points on.
/// Source: the prediction interval of a straight line (any textbook of regression), with the larger
/// variances of median slope and median residual, and 0.8·(n − 2) − 2 degrees of freedom of s; both by
/// simulation of our own, which `BandPropertyTest` repeats.
record Band(TheilSen line, double scale, double typicalStandard, double centre, double sumOfSquares, int n) {
    static final int LEAST = 8;

    private static final double MEDIAN_RESIDUAL = 1.5;
    private static final double MEDIAN_SLOPE = 1.1;

    static Band around(TheilSen line, double[] x, double[] y, double[] standards) {
        double[] residuals = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            residuals[i] = y[i] - line.at(x[i]);
        }
        double centre = Sample.of(x).mean();
        double squares = 0;
        for (double one : x) {
            squares += (one - centre) * (one - centre);
        }
        double forTwoFitted = Math.sqrt((x.length - 1.0) / (x.length - 2));
        double typical = Quantile.median(Sample.of(standards));
        return new Band(
                line,
                Math.max(typical, RobustScale.of(Sample.of(residuals)) * forTwoFitted),
                typical,
                centre,
                squares,
                x.length);
    }

    double degreesOfFreedom() {
        return Math.max(1, 0.8 * (n - 2) - 2);
    }

    /// The band at x for a bike measured as the middle one was.
    Interval at(double x) {
        return at(x, typicalStandard);
    }

    /// The band at x for a bike of the given standard uncertainty.
    Interval at(double x, double standard) {
        double excess = Math.max(0, standard * standard - typicalStandard * typicalStandard);
        double offCentre = (x - centre) * (x - centre) / sumOfSquares;
        double variance = scale * scale * (1 + MEDIAN_RESIDUAL / n + MEDIAN_SLOPE * offCentre) + excess;
        return Interval.around(line.at(x), StudentT.twoSided95(degreesOfFreedom()) * Math.sqrt(variance));
    }
}
