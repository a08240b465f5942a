package org.measuredmile.comparison.sidebyside;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/// Holm's adjustment of many probabilities of error, so that the chance of even one false "told apart" among them is
/// at most the level asked for.
///
/// Formula: of m probabilities in rising order the k-th is multiplied by m − k + 1; none may be below the one before it
/// or above 1.
/// Source: Holm, Scandinavian Journal of Statistics 6 (1979) 65-70; valid however the comparisons lean on one another.
public final class Holm {
    /// The level at which a difference counts as real.
    public static final double LEVEL = 0.05;

    private Holm() {}

    /// The adjusted probabilities, in the order given.
    ///
    /// Error: IllegalArgumentException for a probability that is not from 0 to 1.
    public static double[] adjusted(double... probabilities) {
        if (Arrays.stream(probabilities).anyMatch(one -> !(one >= 0 && one <= 1))) {
            throw new IllegalArgumentException("not from 0 to 1: " + Arrays.toString(probabilities));
        }
        int[] rising = IntStream.range(0, probabilities.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> probabilities[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        double[] adjusted = new double[probabilities.length];
        double reached = 0;
        for (int k = 0; k < rising.length; k++) {
            reached = Math.max(reached, Math.min(1, probabilities[rising[k]] * (rising.length - k)));
            adjusted[rising[k]] = reached;
        }
        return adjusted;
    }
}
