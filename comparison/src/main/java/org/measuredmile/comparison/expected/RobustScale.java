package org.measuredmile.comparison.expected;

import java.util.Arrays;
import org.measuredmile.quantity.statistics.Sample;

/// A standard deviation that half of the values cannot spoil: about the first quartile of the distances
/// between all pairs of values.
///
/// Unit: that of the values.
/// Source: Rousseeuw and Croux (1993), see the package; factors for small samples from Croux and Rousseeuw,
/// Computational Statistics 1 (1992) 411–428, from memory.
final class RobustScale {
    /// Makes it estimate the standard deviation of a normal distribution.
    static final double NORMAL_CONSISTENCY = 2.21914;

    private static final double[] FACTORS = {0.399, 0.994, 0.512, 0.844, 0.611, 0.857, 0.669, 0.872};

    private RobustScale() {}

    /// The distance that is the h·(h − 1)/2-th of all, h being half the values and one.
    ///
    /// Valid: two values and more.
    static double distance(Sample sample) {
        double[] values = sample.array();
        int n = values.length;
        double[] distances = new double[n * (n - 1) / 2];
        int count = 0;
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                distances[count++] = Math.abs(values[i] - values[j]);
            }
        }
        Arrays.sort(distances);
        int half = n / 2 + 1;
        return distances[half * (half - 1) / 2 - 1];
    }

    /// The standard deviation, right on average for normal values however few.
    static double of(Sample sample) {
        return distance(sample) * NORMAL_CONSISTENCY * smallSample(sample.n());
    }

    private static double smallSample(int n) {
        if (n - 2 < FACTORS.length) {
            return FACTORS[n - 2];
        }
        return n % 2 == 1 ? n / (n + 1.4) : n / (n + 3.8);
    }
}
