package org.measuredmile.comparison.standing;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.measuredmile.quantity.statistics.StudentT;

/// Which bikes of an order can be told apart: the same decision as [Contrast#tellsApart], for a million pairs.
///
/// Shape: the factor t is taken between two entries of a table first; only a difference that lies between them is
/// decided by its own factor.
final class Neighbours {
    /// Entries of the table: at 1/ν = k/512, from infinitely many degrees of freedom to 1.
    private static final int STEPS = 512;

    private static final double[] FACTORS = factors();

    private final List<Entrant> ordered;
    private final double[] ownVariance;
    private final double[] ownSpent;
    private final double[][] shared;

    Neighbours(List<Entrant> ordered) {
        this.ordered = ordered;
        int n = ordered.size();
        var names = new TreeSet<String>();
        ordered.forEach(entrant -> names.addAll(entrant.shared().keySet()));
        ownVariance = new double[n];
        ownSpent = new double[n];
        shared = new double[n][names.size()];
        for (int i = 0; i < n; i++) {
            var entrant = ordered.get(i);
            double own = entrant.ownUncertainty();
            ownVariance[i] = own * own;
            ownSpent[i] = own * own * own * own / entrant.ownDegreesOfFreedom();
            var contributions = entrant.shared();
            int k = 0;
            for (String name : names) {
                shared[i][k++] = contributions.getOrDefault(name, 0.0);
            }
        }
    }

    private static double[] factors() {
        var factors = new double[STEPS + 1];
        factors[0] = StudentT.twoSided95(Double.POSITIVE_INFINITY);
        for (int k = 1; k <= STEPS; k++) {
            factors[k] = StudentT.twoSided95((double) STEPS / k);
        }
        return factors;
    }

    /// Whether zero lies outside the 95 % interval of the difference of two places of the order.
    boolean apart(int one, int other) {
        double variance = ownVariance[one] + ownVariance[other];
        for (int k = 0; k < shared[one].length; k++) {
            double left = shared[one][k] - shared[other][k];
            variance += left * left;
        }
        double difference =
                Math.abs(ordered.get(one).value() - ordered.get(other).value());
        double standard = Math.sqrt(variance);
        double spent = ownSpent[one] + ownSpent[other];
        double place = variance == 0 ? 0 : Math.min(STEPS, STEPS * spent / (variance * variance));
        int below = (int) place;
        if (difference < 0.999999 * FACTORS[below] * standard) {
            return false;
        }
        if (difference > 1.000001 * FACTORS[Math.min(STEPS, below + 1)] * standard) {
            return true;
        }
        return Contrast.between(ordered.get(one), ordered.get(other)).tellsApart();
    }

    /// For each place the numbers of the groups it belongs to: stretches of the order whose ends can't be told
    /// apart.
    List<List<Integer>> groups() {
        int n = ordered.size();
        var groups = new ArrayList<List<Integer>>();
        ordered.forEach(entrant -> groups.add(new ArrayList<>()));
        int number = 0;
        int reached = 0;
        for (int first = 0; first < n; first++) {
            int last = n - 1;
            while (last > first && apart(first, last)) {
                last--;
            }
            if (last > first && last > reached) {
                number++;
                reached = last;
                for (int place = first; place <= last; place++) {
                    groups.get(place).add(number);
                }
            }
        }
        return groups;
    }
}
