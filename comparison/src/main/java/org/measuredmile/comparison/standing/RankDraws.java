package org.measuredmile.comparison.standing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.random.RandomGenerator;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;

/// How often each bike takes each rank when every result is drawn from its uncertainty; what bikes share (a
/// calibration)
/// is drawn once for all of them.
///
/// Shape: `counts[bike][rank − 1]`, each row and each column adding up to the number of draws. The same entrants give
/// the same counts on every machine.
/// Source: JCGM 101:2008, clause 7; the draw of a t variable is scaled by the any-day standard uncertainty.
final class RankDraws {
    static final int DRAWS = 10_000;

    private static final int BLOCK = 256;
    private static final Seed SEED = new Seed(20_260_412).child("standing");

    private final List<Entrant> entrants;
    private final double direction;
    private final int[][] counts;
    private final int draws;

    private RankDraws(List<Entrant> entrants, boolean lessIsBetter, int draws) {
        this.entrants = List.copyOf(entrants);
        this.direction = lessIsBetter ? 1 : -1;
        this.counts = new int[entrants.size()][entrants.size()];
        this.draws = draws;
    }

    static RankDraws of(List<Entrant> entrants, boolean lessIsBetter, int draws) {
        var ranks = new RankDraws(entrants, lessIsBetter, draws);
        for (int block = 0; block * BLOCK < draws; block++) {
            ranks.draw(SEED.stream(block), Math.min(BLOCK, draws - block * BLOCK));
        }
        return ranks;
    }

    private void draw(RandomGenerator random, int times) {
        int n = entrants.size();
        var names = new TreeSet<String>();
        entrants.forEach(entrant -> names.addAll(entrant.shared().keySet()));
        double[][] shared = new double[names.size()][n];
        double[] own = new double[n];
        double[] degrees = new double[n];
        for (int i = 0; i < n; i++) {
            var entrant = entrants.get(i);
            own[i] = entrant.ownUncertainty();
            degrees[i] = entrant.ownDegreesOfFreedom();
            int k = 0;
            for (String name : names) {
                shared[k++][i] = entrant.shared().getOrDefault(name, 0.0);
            }
        }
        var drawn = new Drawn[n];
        for (int time = 0; time < times; time++) {
            double[] values = new double[n];
            for (double[] contributions : shared) {
                double common = Draw.normal(random);
                for (int i = 0; i < n; i++) {
                    values[i] += common * contributions[i];
                }
            }
            for (int i = 0; i < n; i++) {
                double alone = own[i] == 0 ? 0 : own[i] * Draw.studentT(random, degrees[i]);
                drawn[i] = new Drawn(i, direction * (entrants.get(i).value() + values[i] + alone));
            }
            Arrays.sort(drawn);
            for (int rank = 0; rank < n; rank++) {
                counts[drawn[rank].bike()][rank]++;
            }
        }
    }

    private record Drawn(int bike, double value) implements Comparable<Drawn> {
        @Override
        public int compareTo(Drawn other) {
            int byValue = Double.compare(value, other.value);
            return byValue != 0 ? byValue : Integer.compare(bike, other.bike);
        }
    }

    /// The probability of each rank, from 1.
    List<Double> probabilities(int bike) {
        var all = new ArrayList<Double>();
        for (int count : counts[bike]) {
            all.add((double) count / draws);
        }
        return all;
    }

    /// The smallest rank that at least a share of the draws does not exceed.
    int rankAt(int bike, double share) {
        long sum = 0;
        for (int rank = 0; rank < counts.length; rank++) {
            sum += counts[bike][rank];
            if (sum >= share * draws) {
                return rank + 1;
            }
        }
        return counts.length;
    }
}
