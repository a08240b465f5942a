package org.measuredmile.comparison.standing;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.RandomAccess;

/// The probability of each rank, rank 1 first, kept as counts of draws between the first and the last rank that came
/// up.
///
/// Shape: a list that cannot be changed; one entry a bike of the standing.
public final class RankChances extends AbstractList<Double> implements RandomAccess {
    private final int size;
    private final int first;
    private final int[] counts;
    private final int draws;

    private RankChances(int size, int first, int[] counts, int draws) {
        this.size = size;
        this.first = first;
        this.counts = counts;
        this.draws = draws;
    }

    static RankChances of(int[] counts, int draws) {
        int first = 0;
        while (first < counts.length - 1 && counts[first] == 0) {
            first++;
        }
        int after = counts.length;
        while (after > first + 1 && counts[after - 1] == 0) {
            after--;
        }
        return new RankChances(counts.length, first, Arrays.copyOfRange(counts, first, after), draws);
    }

    @Override
    public int size() {
        return size;
    }

    @Override
    public Double get(int index) {
        if (index < 0 || index >= size) {
            throw new IndexOutOfBoundsException(index);
        }
        return at(index);
    }

    private double at(int index) {
        boolean isKept = index >= first && index < first + counts.length;
        return isKept ? (double) counts[index - first] / draws : 0;
    }

    /// The mean of the ranks drawn, from 1.
    public double mean() {
        double sum = 0;
        for (int i = 0; i < counts.length; i++) {
            sum += (double) counts[i] * (first + i + 1);
        }
        return sum / draws;
    }

    /// The smallest rank, from 1, that at least a share of the draws does not exceed.
    public int rankAt(double share) {
        long sum = 0;
        for (int i = 0; i < counts.length; i++) {
            sum += counts[i];
            if (sum >= share * draws) {
                return first + i + 1;
            }
        }
        return size;
    }
}
