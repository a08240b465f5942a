package org.measuredmile.quantity.statistics;

import org.hipparchus.stat.regression.OLSMultipleLinearRegression;

/// A straight line y = intercept + slope · x through points, by least squares, with what is known about its
/// parameters.
///
/// Shape: `covariance` is that of intercept with slope; `degreesOfFreedom` is the number of points less two.
/// Unit: intercept in that of y, slope in that of y per x.
/// Error: IllegalArgumentException for fewer than three points, unequal lengths, or points that share one x.
/// Source: JCGM 100:2008, H.3.2 (equations H.13 to H.15); solved by QR in the statistics library, about the mean
/// of x.
public record LineFit(
        double intercept,
        double slope,
        double interceptUncertainty,
        double slopeUncertainty,
        double covariance,
        double residualStandardDeviation,
        int degreesOfFreedom) {
    /// The line through the points (x[i], y[i]).
    public static LineFit through(double[] x, double[] y) {
        if (x.length != y.length || x.length < 3) {
            throw new IllegalArgumentException(x.length + " x and " + y.length + " y, three of each needed");
        }
        double centre = Sample.of(x).mean();
        var rows = new double[x.length][1];
        boolean spread = false;
        for (int i = 0; i < x.length; i++) {
            rows[i][0] = x[i] - centre;
            spread |= x[i] != x[0];
        }
        if (!spread) {
            throw new IllegalArgumentException("all points at x = " + x[0] + ", no line goes through them");
        }
        var regression = new OLSMultipleLinearRegression();
        regression.newSampleData(Sample.of(y).array(), rows);
        double[] beta = regression.estimateRegressionParameters();
        double variance = regression.estimateErrorVariance();
        double[][] unscaled = regression.estimateRegressionParametersVariance();
        double varianceOfSlope = variance * unscaled[1][1];
        double covarianceAtCentre = variance * unscaled[0][1];
        double varianceOfIntercept =
                variance * unscaled[0][0] - 2 * centre * covarianceAtCentre + centre * centre * varianceOfSlope;
        return new LineFit(
                beta[0] - centre * beta[1],
                beta[1],
                Math.sqrt(Math.max(0, varianceOfIntercept)),
                Math.sqrt(varianceOfSlope),
                covarianceAtCentre - centre * varianceOfSlope,
                Math.sqrt(variance),
                x.length - 2);
    }

    /// The line's value at x.
    public double at(double x) {
        return intercept + slope * x;
    }

    /// The standard uncertainty of the line's value at x, not of a new point there.
    public double uncertaintyAt(double x) {
        double variance = interceptUncertainty * interceptUncertainty
                + x * x * slopeUncertainty * slopeUncertainty
                + 2 * x * covariance;
        return Math.sqrt(Math.max(0, variance));
    }

    /// How intercept and slope go together, from −1 to 1; 0 for a perfect line.
    public double correlation() {
        double product = interceptUncertainty * slopeUncertainty;
        return product == 0 ? 0 : covariance / product;
    }
}
