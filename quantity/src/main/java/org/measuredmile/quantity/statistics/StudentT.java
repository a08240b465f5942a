package org.measuredmile.quantity.statistics;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/// Factors of Student's t distribution, by formula and never from a copied table.
///
/// Source: JCGM 100:2008, G.3; computed by the statistics library.
public final class StudentT {
    private StudentT() {}

    /// The factor t for a two-sided 95 % interval.
    ///
    /// Valid: degrees of freedom of at least 1, infinite included (then 1.960).
    public static double twoSided95(double degreesOfFreedom) {
        return quantile(0.975, degreesOfFreedom);
    }

    /// The value that a t variable with the given degrees of freedom stays below with the given probability.
    public static double quantile(double probability, double degreesOfFreedom) {
        if (!(degreesOfFreedom >= 1)) {
            throw new IllegalArgumentException("degrees of freedom " + degreesOfFreedom + ", at least 1 needed");
        }
        return degreesOfFreedom > 1e8
                ? new NormalDistribution().inverseCumulativeProbability(probability)
                : new TDistribution(degreesOfFreedom).inverseCumulativeProbability(probability);
    }

    /// The probability that a t variable with the given degrees of freedom stays at or below a value.
    ///
    /// Valid: degrees of freedom of at least 1, infinite included (then the normal distribution).
    public static double below(double value, double degreesOfFreedom) {
        if (!(degreesOfFreedom >= 1)) {
            throw new IllegalArgumentException("degrees of freedom " + degreesOfFreedom + ", at least 1 needed");
        }
        return degreesOfFreedom > 1e8
                ? new NormalDistribution().cumulativeProbability(value)
                : new TDistribution(degreesOfFreedom).cumulativeProbability(value);
    }
}
