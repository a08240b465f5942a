package org.measuredmile.comparison.expected;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.statistics.Quantile;
import org.measuredmile.quantity.statistics.Sample;

/// A straight line through points that up to 29 % of them cannot pull away: its slope is the median of the
/// slopes of all pairs of points with different x.
///
/// Shape: `intercept` is the median of y − slope·x, so that as many points lie above the line as below;
/// this is the one used. `interceptOfMedians` is the other definition in use, median(y) − slope·median(x);
/// the two differ. `pairSlopes` rise.
/// Unit: intercepts in that of y, slopes in that of y per x.
/// Error: IllegalArgumentException for unequal lengths and for fewer than two different x.
/// Source: Sen (1968), see the package.
public record TheilSen(
        double slope, double intercept, double interceptOfMedians, List<Double> pairSlopes, double sigmaOfCount) {
    public TheilSen {
        pairSlopes = List.copyOf(pairSlopes);
    }

    /// The line through the points (x[i], y[i]).
    public static TheilSen through(double[] x, double[] y) {
        double[] slopes = slopes(x, y);
        if (slopes.length == 0) {
            throw new IllegalArgumentException(x.length + " points, two of different x needed");
        }
        double slope = medianOfRising(slopes);
        double[] rest = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            rest[i] = y[i] - slope * x[i];
        }
        double ofMedians = Quantile.median(Sample.of(y)) - slope * Quantile.median(Sample.of(x));
        return new TheilSen(
                slope,
                Quantile.median(Sample.of(rest)),
                ofMedians,
                Arrays.stream(slopes).boxed().toList(),
                sigmaOfCount(x, y));
    }

    private static double[] slopes(double[] x, double[] y) {
        if (x.length != y.length) {
            throw new IllegalArgumentException(x.length + " x and " + y.length + " y");
        }
        double[] slopes = new double[x.length * (x.length - 1) / 2];
        int count = 0;
        for (int i = 0; i < x.length; i++) {
            for (int j = i + 1; j < x.length; j++) {
                if (x[i] != x[j]) {
                    slopes[count++] = (y[j] - y[i]) / (x[j] - x[i]);
                }
            }
        }
        double[] found = Arrays.copyOf(slopes, count);
        Arrays.sort(found);
        return found;
    }

    private static double medianOfRising(double[] rising) {
        int middle = rising.length / 2;
        return rising.length % 2 == 1 ? rising[middle] : (rising[middle - 1] + rising[middle]) / 2;
    }

    /// The standard deviation of Kendall's count of concordant less discordant pairs when y does not depend
    /// on x, ties taken out.
    ///
    /// Source: Sen (1968), equation 2.6.
    private static double sigmaOfCount(double[] x, double[] y) {
        return Math.sqrt((pairs(x.length) - tied(x) - tied(y)) / 18);
    }

    private static double tied(double[] values) {
        Map<Double, Integer> counts = new HashMap<>();
        for (double value : values) {
            counts.merge(value, 1, Integer::sum);
        }
        return counts.values().stream().mapToDouble(TheilSen::pairs).sum();
    }

    private static double pairs(double n) {
        return n * (n - 1) * (2 * n + 5);
    }

    public double at(double x) {
        return intercept + slope * x;
    }

    /// An interval that holds the slope with the given probability, whatever the distribution of the
    /// residuals.
    ///
    /// Shape: both ends are slopes between two points; with few points it is wider than
    /// asked, never beyond the extremes.
    /// Source: Sen (1968), section 2 (normal approximation of Kendall's count).
    public Interval slopeInterval(double probability) {
        double z = new NormalDistribution().inverseCumulativeProbability((1 + probability) / 2);
        int n = pairSlopes.size();
        int low = (int) Math.rint((n - z * sigmaOfCount) / 2) - 1;
        int high = (int) Math.rint((n + z * sigmaOfCount) / 2);
        return new Interval(pairSlopes.get(Math.max(low, 0)), pairSlopes.get(Math.min(high, n - 1)));
    }
}
