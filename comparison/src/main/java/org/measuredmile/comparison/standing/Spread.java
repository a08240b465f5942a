package org.measuredmile.comparison.standing;

import java.util.List;
import java.util.OptionalDouble;
import org.measuredmile.quantity.statistics.Quantile;
import org.measuredmile.quantity.statistics.Sample;

/// How the values of a population lie: mean, median, standard deviation, quarters and ends.
///
/// Unit: the SI unit of the figure.
/// Shape: the values as they stand, their uncertainties left aside; a single bike has no standard deviation.
/// Source: quantiles by Hyndman and Fan, The American Statistician 50 (1996) 361–365, type 8.
public record Spread(
        int count,
        double mean,
        double median,
        OptionalDouble standardDeviation,
        double lowest,
        double lowerQuarter,
        double upperQuarter,
        double highest) {
    /// What the quantiles are called where they are shown.
    public static final String DEFINITION = "Hyndman-Fan type 8";

    /// Of at least one value.
    static Spread of(List<Double> values) {
        var sample = new Sample(values);
        return new Spread(
                sample.n(),
                sample.mean(),
                Quantile.TYPE_8.at(0.5, sample),
                sample.n() > 1 ? OptionalDouble.of(sample.standardDeviation()) : OptionalDouble.empty(),
                sample.smallest(),
                Quantile.TYPE_8.at(0.25, sample),
                Quantile.TYPE_8.at(0.75, sample),
                sample.largest());
    }
}
