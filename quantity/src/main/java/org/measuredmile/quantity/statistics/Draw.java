package org.measuredmile.quantity.statistics;

import java.util.random.RandomGenerator;

/// Single draws from the distributions that budgets and simulations use; the same bits on every machine.
///
/// Source: JCGM 101:2008, 6.4 (which distribution states which knowledge) and its annex C (generation).
public final class Draw {
    private Draw() {}

    /// From the standard normal distribution.
    ///
    /// Source: Marsaglia and Bray, SIAM Review 6 (1964) 260–264, the polar method; one of its two values is used.
    public static double normal(RandomGenerator random) {
        while (true) {
            double u = 2 * random.nextDouble() - 1;
            double v = 2 * random.nextDouble() - 1;
            double square = u * u + v * v;
            if (square > 0 && square < 1) {
                return u * Math.sqrt(-2 * StrictMath.log(square) / square);
            }
        }
    }

    /// From the normal distribution of a mean and a standard deviation.
    public static double normal(RandomGenerator random, double mean, double standardDeviation) {
        return mean + standardDeviation * normal(random);
    }

    /// From the rectangular distribution between two bounds.
    public static double rectangular(RandomGenerator random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /// From the symmetric triangular distribution between two bounds.
    public static double triangular(RandomGenerator random, double low, double high) {
        return low + (high - low) * (random.nextDouble() + random.nextDouble()) / 2;
    }

    /// From the arcsine (U-shaped) distribution between two bounds.
    public static double arcsine(RandomGenerator random, double low, double high) {
        return (low + high) / 2 + (high - low) / 2 * StrictMath.sin(2 * Math.PI * random.nextDouble());
    }

    /// From Student's t distribution, unscaled.
    ///
    /// Valid: degrees of freedom above 0; infinite ones give the normal distribution.
    public static double studentT(RandomGenerator random, double degreesOfFreedom) {
        double normal = normal(random);
        if (degreesOfFreedom == Double.POSITIVE_INFINITY) {
            return normal;
        }
        return normal / Math.sqrt(chiSquared(random, degreesOfFreedom) / degreesOfFreedom);
    }

    /// From the chi-squared distribution of some degrees of freedom.
    ///
    /// Valid: finite degrees of freedom above 0.
    public static double chiSquared(RandomGenerator random, double degreesOfFreedom) {
        return 2 * gamma(random, degreesOfFreedom / 2);
    }

    /// From the gamma distribution of unit scale.
    ///
    /// Source: Marsaglia and Tsang, ACM Transactions on Mathematical Software 26 (2000) 363–372.
    private static double gamma(RandomGenerator random, double shape) {
        if (!(shape > 0)) {
            throw new IllegalArgumentException("degrees of freedom " + 2 * shape + ", above 0 needed");
        }
        if (shape < 1) {
            double boost = StrictMath.pow(1 - random.nextDouble(), 1 / shape);
            return boost * gamma(random, shape + 1);
        }
        double d = shape - 1.0 / 3;
        double c = 1 / Math.sqrt(9 * d);
        while (true) {
            double x = normal(random);
            double root = 1 + c * x;
            double cube = root * root * root;
            double u = 1 - random.nextDouble();
            if (root > 0 && StrictMath.log(u) < 0.5 * x * x + d - d * cube + d * StrictMath.log(cube)) {
                return d * cube;
            }
        }
    }
}
