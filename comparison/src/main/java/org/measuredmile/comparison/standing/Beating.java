package org.measuredmile.comparison.standing;

import java.util.List;

/// How often each bike of a standing is better than one of them, in the very draws that the ranks are made from.
///
/// Shape: by place in the order; equal draws count half, so the bike itself has 0.5.
final class Beating {
    private Beating() {}

    static double[] chances(List<Entrant> ordered, boolean lessIsBetter, int rival, int draws) {
        var columns = new DrawColumns(ordered, lessIsBetter);
        var values = columns.room();
        int n = columns.count();
        var halves = new long[n];
        for (int block = 0; block * DrawColumns.BLOCK < draws; block++) {
            columns.fill(block, values);
            int times = Math.min(DrawColumns.BLOCK, draws - block * DrawColumns.BLOCK);
            int rivals = rival * DrawColumns.STRIDE;
            for (int i = 0; i < n; i++) {
                int mine = i * DrawColumns.STRIDE;
                for (int draw = 0; draw < times; draw++) {
                    double lead = values[rivals + draw] - values[mine + draw];
                    halves[i] += lead > 0 ? 2 : lead == 0 ? 1 : 0;
                }
            }
        }
        var chances = new double[n];
        for (int i = 0; i < n; i++) {
            chances[i] = halves[i] / (2.0 * draws);
        }
        return chances;
    }
}
