package org.measuredmile.comparison.standing;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/// How often each bike takes each rank when every result is drawn from its uncertainty; what bikes share (a
/// calibration) is drawn once for all of them.
///
/// Shape: `counts[bike][rank − 1]`, each row and each column adding up to the number of draws. The same entrants give
/// the same counts on every machine and with any number of workers.
/// Error: of a probability p from K draws √(p(1 − p)/K), 0.0035 at most from 20,000.
/// Source: JCGM 101:2008, clause 7; the draw of a t variable is scaled by the any-day standard uncertainty.
public final class RankDraws {
    /// How many draws a standing is made from.
    public static final int DRAWS = 20_000;

    private final int[][] counts;
    private final int draws;

    private RankDraws(int[][] counts, int draws) {
        this.counts = counts;
        this.draws = draws;
    }

    static RankDraws of(List<Entrant> entrants, boolean lessIsBetter, int draws) {
        return of(entrants, lessIsBetter, draws, Workers.ONE);
    }

    /// The ranks of entrants, given in their order of value: so much the less is to be sorted.
    public static RankDraws of(List<Entrant> entrants, boolean lessIsBetter, int draws, Workers workers) {
        var columns = new DrawColumns(entrants, lessIsBetter);
        int blocks = (draws + DrawColumns.BLOCK - 1) / DrawColumns.BLOCK;
        int parts = Math.max(1, Math.min(workers.count(), blocks));
        var work = new ArrayList<Supplier<int[][]>>();
        for (int part = 0; part < parts; part++) {
            int first = (int) ((long) blocks * part / parts);
            int after = (int) ((long) blocks * (part + 1) / parts);
            work.add(() -> counted(columns, first, after, draws));
        }
        return new RankDraws(sum(workers.all(work)), draws);
    }

    private static int[][] counted(DrawColumns columns, int first, int after, int draws) {
        int n = columns.count();
        var counts = new int[n][n];
        var values = columns.room();
        var order = new DrawOrder(n);
        for (int block = first; block < after; block++) {
            columns.fill(block, values);
            int times = Math.min(DrawColumns.BLOCK, draws - block * DrawColumns.BLOCK);
            for (int draw = 0; draw < times; draw++) {
                order.sort(values, draw);
                for (int rank = 0; rank < n; rank++) {
                    counts[order.bike(rank)][rank]++;
                }
            }
        }
        return counts;
    }

    private static int[][] sum(List<int[][]> parts) {
        var sum = parts.getFirst();
        for (var part : parts.subList(1, parts.size())) {
            for (int bike = 0; bike < sum.length; bike++) {
                for (int rank = 0; rank < sum.length; rank++) {
                    sum[bike][rank] += part[bike][rank];
                }
            }
        }
        return sum;
    }

    /// The probability of each rank, from 1.
    public RankChances probabilities(int bike) {
        return RankChances.of(counts[bike], draws);
    }

    /// The smallest rank that at least a share of the draws does not exceed.
    int rankAt(int bike, double share) {
        return probabilities(bike).rankAt(share);
    }
}
