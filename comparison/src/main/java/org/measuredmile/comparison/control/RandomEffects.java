package org.measuredmile.comparison.control;

import java.util.List;
import java.util.stream.IntStream;

/// Several values of known standard uncertainty that also differ among themselves: their mean, and by how
/// much they differ.
///
/// Shape: `between` is a standard deviation; 0 is an answer and means that the values need not differ at
/// all. `shrunk` are the values drawn towards the mean by how little each is known, in the order given.
/// Unit: that of the values; `heterogeneity` is the weighted sum of squares Q, without unit.
/// Error: IllegalArgumentException for fewer than two values and for an uncertainty that is not above 0.
/// Source: DerSimonian and Laird, Controlled Clinical Trials 7 (1986) 177–188.
public record RandomEffects(
        double heterogeneity, double between, double mean, double standardUncertainty, List<Double> shrunk) {
    public RandomEffects {
        shrunk = List.copyOf(shrunk);
    }

    public static RandomEffects of(double[] values, double[] standards) {
        if (values.length < 2 || values.length != standards.length) {
            throw new IllegalArgumentException(values.length + " values, " + standards.length + " uncertainties");
        }
        for (double standard : standards) {
            if (!(standard > 0)) {
                throw new IllegalArgumentException("standard uncertainty " + standard + ", above 0 needed");
            }
        }
        var alike = weighted(values, standards, 0);
        double sum = 0;
        double squares = 0;
        double heterogeneity = 0;
        for (int i = 0; i < values.length; i++) {
            double weight = 1 / (standards[i] * standards[i]);
            sum += weight;
            squares += weight * weight;
            heterogeneity += weight * (values[i] - alike.mean()) * (values[i] - alike.mean());
        }
        double variance = Math.max(0, (heterogeneity - (values.length - 1)) / (sum - squares / sum));
        var found = weighted(values, standards, variance);
        var shrunk = IntStream.range(0, values.length)
                .mapToObj(i -> {
                    double own = standards[i] * standards[i];
                    return values[i] + own / (own + variance) * (found.mean() - values[i]);
                })
                .toList();
        return new RandomEffects(heterogeneity, Math.sqrt(variance), found.mean(), found.standardUncertainty(), shrunk);
    }

    private record Weighted(double mean, double standardUncertainty) {}

    private static Weighted weighted(double[] values, double[] standards, double variance) {
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < values.length; i++) {
            double weight = 1 / (standards[i] * standards[i] + variance);
            sum += weight * values[i];
            weights += weight;
        }
        return new Weighted(sum / weights, Math.sqrt(1 / weights));
    }
}
