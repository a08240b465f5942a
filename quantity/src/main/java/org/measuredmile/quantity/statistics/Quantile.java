package org.measuredmile.quantity.statistics;

import org.hipparchus.stat.descriptive.rank.Percentile;
import org.hipparchus.stat.descriptive.rank.Percentile.EstimationType;

/// Quantiles of a sample, the median, and the median absolute deviation.
///
/// Unit: that of the sample.
/// Source: Hyndman and Fan, The American Statistician 50 (1996) 361–365, by their numbers; computed by the statistics
/// library.
public enum Quantile {
    /// The smallest value that a share of the sample does not exceed: the inverse of the empirical distribution.
    TYPE_1(EstimationType.R_1),
    /// The same, halfway between two values where the share falls between them.
    TYPE_2(EstimationType.R_2),
    /// The value whose number is nearest to np, an even number where two are as near.
    TYPE_3(EstimationType.R_3),
    /// Along the straight lines between the steps of the empirical distribution.
    TYPE_4(EstimationType.R_4),
    /// Along the straight lines between the middles of its steps.
    TYPE_5(EstimationType.R_5),
    /// Each value at the mean share of the distribution below it.
    TYPE_6(EstimationType.R_6),
    /// The one most programs give: Q(p) at 1 + (n − 1)p.
    TYPE_7(EstimationType.R_7),
    /// The one its authors advise: nearly median-unbiased whatever the distribution.
    TYPE_8(EstimationType.R_8),
    /// Nearly unbiased where the distribution is normal.
    TYPE_9(EstimationType.R_9);

    /// Makes the median absolute deviation estimate a normal distribution's standard deviation.
    public static final double NORMAL_CONSISTENCY = 1.482602218505602;

    private final EstimationType estimation;

    Quantile(EstimationType estimation) {
        this.estimation = estimation;
    }

    /// The value that a share of the sample lies below.
    ///
    /// Valid: shares from 0 to 1, anything else is an IllegalArgumentException.
    public double at(double share, Sample sample) {
        if (!(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException("share " + share + " is not from 0 to 1");
        }
        if (share == 0) {
            return sample.smallest();
        }
        return new Percentile().withEstimationType(estimation).evaluate(sample.array(), 100 * share);
    }

    public static double median(Sample sample) {
        return TYPE_7.at(0.5, sample);
    }

    /// The median of the distances from the median; times [#NORMAL_CONSISTENCY] it is comparable to a standard
    /// deviation.
    public static double medianAbsoluteDeviation(Sample sample) {
        double centre = median(sample);
        return median(new Sample(
                sample.values().stream().map(value -> Math.abs(value - centre)).toList()));
    }
}
