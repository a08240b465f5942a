package org.measuredmile.desk.coverage;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/// What is demanded of a figure's intervals, held against all its seeds together.
///
/// Shape: one seed of a thousand days strays from a true 95 % by more than two points in one share of 270, so that a
/// table of hundreds would always miss something; three seeds together stray so far in none of a million.
/// Source: ADR 0092.
public final class Demand {
    /// What a share of held intervals must be to be called 95 %.
    public static final double LEAST_SHARE = 0.93;

    public static final double MOST_SHARE = 0.97;
    /// Most bias, in standard uncertainties, and most width, in the best possible ones.
    public static final double MOST_BIAS = 0.1;

    public static final double MOST_OVER_BEST = 1.3;

    private Demand() {}

    /// What of the demand the rows of one figure miss together, in words; empty where they miss nothing.
    public static List<String> missed(List<Coverage> seeds) {
        var misses = new ArrayList<String>();
        if (!holds(seeds, Coverage::heldThisDay)) {
            misses.add("held this day");
        }
        if (!holds(seeds, Coverage::heldAnyDay)) {
            misses.add("held any day");
        }
        if (!(Math.abs(mean(seeds, Coverage::biasInUncertainties)) <= MOST_BIAS)) {
            misses.add("bias");
        }
        if (!(mean(seeds, row -> row.thisDay().overBest()) <= MOST_OVER_BEST)) {
            misses.add("width this day");
        }
        if (!(mean(seeds, row -> row.anyDay().overBest()) <= MOST_OVER_BEST)) {
            misses.add("width any day");
        }
        return misses;
    }

    private static boolean holds(List<Coverage> seeds, ToDoubleFunction<Coverage> held) {
        double share = seeds.stream().mapToDouble(held).sum()
                / seeds.stream().mapToDouble(Coverage::figures).sum();
        return share >= LEAST_SHARE && share <= MOST_SHARE;
    }

    private static double mean(List<Coverage> seeds, ToDoubleFunction<Coverage> of) {
        return seeds.stream().mapToDouble(of).average().orElse(Double.NaN);
    }
}
