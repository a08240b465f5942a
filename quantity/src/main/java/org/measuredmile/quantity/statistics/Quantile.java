package org.measuredmile.quantity.statistics;

import org.hipparchus.stat.descriptive.rank.Percentile;
import org.hipparchus.stat.descriptive.rank.Percentile.EstimationType;

/// Quantiles of a sample, the median, and the median absolute deviation.
///
/// Unit: that of the sample.
/// Source: Hyndman and Fan, The American Statistician 50 (1996) 361–365, types 7 and 8; computed by the
/// statistics library.
public enum Quantile {
    /// The one most programs give: Q(p) at 1 + (n − 1)p.
    TYPE_7(EstimationType.R_7),
    /// The one its authors advise: nearly median-unbiased whatever the distribution.
    TYPE_8(EstimationType.R_8);

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
