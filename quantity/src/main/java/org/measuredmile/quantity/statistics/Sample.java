package org.measuredmile.quantity.statistics;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.stat.descriptive.moment.Mean;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;

/// Values of one quantity from repeated runs, in the order they were taken.
///
/// Unit: whatever the values are in; the same for mean and standard deviation.
/// Error: IllegalArgumentException for an empty sample and for a value that is not finite.
/// Source: JCGM 100:2008, 4.2.1 to 4.2.3; mean and standard deviation in two passes, by the statistics library.
public record Sample(List<Double> values) {
    public Sample {
        values = List.copyOf(values);
        if (values.isEmpty()) {
            throw new IllegalArgumentException("a sample of no values");
        }
        for (double value : values) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("sample value " + value);
            }
        }
    }

    public static Sample of(double... values) {
        return new Sample(Arrays.stream(values).boxed().toList());
    }

    /// How many values there are.
    public int n() {
        return values.size();
    }

    public double mean() {
        return new Mean().evaluate(array());
    }

    /// The experimental standard deviation s, with n − 1.
    ///
    /// Error: IllegalStateException for a single value, whose scatter is unknown.
    public double standardDeviation() {
        if (n() < 2) {
            throw new IllegalStateException("one value has no standard deviation");
        }
        return new StandardDeviation().evaluate(array());
    }

    /// s/√n, the standard uncertainty of the mean from these values alone.
    ///
    /// Error: IllegalStateException for a single value.
    public double standardUncertaintyOfMean() {
        return standardDeviation() / Math.sqrt(n());
    }

    /// n − 1.
    public int degreesOfFreedom() {
        return n() - 1;
    }

    public double smallest() {
        return Arrays.stream(array()).min().orElseThrow();
    }

    public double largest() {
        return Arrays.stream(array()).max().orElseThrow();
    }

    /// The values as an array of its own.
    public double[] array() {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
