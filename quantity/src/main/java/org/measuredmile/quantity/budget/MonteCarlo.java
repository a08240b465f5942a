package org.measuredmile.quantity.budget;

import java.util.Arrays;
import java.util.random.RandomGenerator;
import org.hipparchus.stat.descriptive.moment.Mean;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.statistics.Seed;

/// Propagation of distributions: a model evaluated for many draws of its inputs, and what its values come to.
///
/// Shape: the drawn values in rising order; the same seed, number and model give the same bits.
/// Unit: that of the model's value.
/// Error: IllegalArgumentException for fewer than 100 draws and for a model value that is not finite.
/// Source: JCGM 101:2008, clause 7 (procedure), 7.6 (mean and standard deviation), 7.7 (coverage intervals).
public final class MonteCarlo {
    private static final int FEWEST_DRAWS = 100;

    private final double[] sorted;
    private final double mean;
    private final double standardUncertainty;

    private MonteCarlo(double[] values) {
        if (values.length < FEWEST_DRAWS) {
            throw new IllegalArgumentException(values.length + " draws, at least " + FEWEST_DRAWS + " needed");
        }
        for (double value : values) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("the model gave " + value);
            }
        }
        this.mean = new Mean().evaluate(values);
        this.standardUncertainty = new StandardDeviation().evaluate(values);
        this.sorted = values.clone();
        Arrays.sort(sorted);
    }

    /// A model of a measurement: draws its inputs from the generator and gives one value.
    @FunctionalInterface
    public interface Model {
        double draw(RandomGenerator random);
    }

    /// Evaluates the model for a number of draws from one seeded stream.
    public static MonteCarlo of(Model model, Seed seed, int draws) {
        RandomGenerator random = seed.stream(0);
        var values = new double[draws];
        for (int i = 0; i < draws; i++) {
            values[i] = model.draw(random);
        }
        return new MonteCarlo(values);
    }

    /// What values drawn elsewhere come to.
    public static MonteCarlo ofValues(double[] values) {
        return new MonteCarlo(values);
    }

    public int draws() {
        return sorted.length;
    }

    public double mean() {
        return mean;
    }

    /// The standard deviation of the drawn values.
    ///
    /// Valid: where the model's distribution has one; an input drawn from t with three or fewer runs has none
    /// (JCGM 101:2008, 6.4.9), and then only the intervals mean something.
    public double standardUncertainty() {
        return standardUncertainty;
    }

    /// The 95 % interval that leaves equal shares out on both sides.
    public Interval symmetric95() {
        return symmetric(0.95);
    }

    /// The narrowest interval that holds 95 % of the values.
    public Interval shortest95() {
        return shortest(0.95);
    }

    /// The interval that holds a share of the values and leaves equal shares out on both sides.
    public Interval symmetric(double coverage) {
        int q = heldDraws(coverage);
        int r = (sorted.length - q + 1) / 2;
        return between(r, q);
    }

    /// The narrowest interval that holds a share of the values; the lowest one when several are equally narrow.
    public Interval shortest(double coverage) {
        int q = heldDraws(coverage);
        int narrowest = 1;
        for (int r = 2; r + q <= sorted.length; r++) {
            if (width(r, q) < width(narrowest, q)) {
                narrowest = r;
            }
        }
        return between(narrowest, q);
    }

    /// Mean, standard deviation and symmetric 95 % interval, with infinite degrees of freedom.
    public Uncertainty uncertainty() {
        return new Uncertainty(standardUncertainty, Double.POSITIVE_INFINITY, symmetric95());
    }

    /// The share of the values at or below a limit.
    public double shareUpTo(double limit) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] <= limit) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return (double) low / sorted.length;
    }

    /// The number q of steps between the ends of an interval: pM, rounded (JCGM 101:2008, 7.7.2).
    private int heldDraws(double coverage) {
        if (!(coverage > 0 && coverage < 1)) {
            throw new IllegalArgumentException("coverage " + coverage + " is not between 0 and 1");
        }
        int q = (int) (coverage * sorted.length + 0.5);
        if (q < 1 || q >= sorted.length) {
            throw new IllegalArgumentException(sorted.length + " draws are too few for coverage " + coverage);
        }
        return q;
    }

    private double width(int r, int q) {
        return sorted[r + q - 1] - sorted[r - 1];
    }

    /// From the r-th to the (r + q)-th value, counted from 1.
    private Interval between(int r, int q) {
        return new Interval(sorted[r - 1], sorted[r + q - 1]);
    }
}
