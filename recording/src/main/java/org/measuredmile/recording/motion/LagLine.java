package org.measuredmile.recording.motion;

import java.util.Arrays;

/// The regression of the later channel on the earlier one and its slope, at one lag.
///
/// Unit: `stepS` is how much later the lag should be, seconds; `uncertaintyS` its standard uncertainty.
record LagLine(boolean isSolved, double stepS, double uncertaintyS) {
    private static final int FEWEST = 40;

    /// What is known at both channels, one entry a cell of the grid.
    private record Cells(double[] later, double[] laterSlope, double[] value, double[] slope) {
        static Cells of(LagSearch search, double lagS) {
            double[] all = search.later();
            double h = search.stepS();
            int reach = search.reach();
            double[] later = new double[all.length];
            double[] laterSlope = new double[all.length];
            double[] value = new double[all.length];
            double[] slope = new double[all.length];
            int used = 0;
            for (int i = 0; i < all.length; i++) {
                double at = i - lagS / h;
                later[used] = all[i];
                value[used] = search.earlierAt(at);
                slope[used] = (search.earlierAt(at + reach) - search.earlierAt(at - reach)) / (2 * reach * h);
                laterSlope[used] = i >= reach && i + reach < all.length
                        ? (all[i + reach] - all[i - reach]) / (2 * reach * h)
                        : Double.NaN;
                if (!Double.isNaN(later[used] + laterSlope[used] + value[used] + slope[used])) {
                    used++;
                }
            }
            return new Cells(
                    centred(later, used), centred(laterSlope, used), centred(value, used), centred(slope, used));
        }

        private static double[] centred(double[] values, int count) {
            double[] centred = Arrays.copyOf(values, count);
            double mean = Arrays.stream(centred).average().orElse(0);
            for (int i = 0; i < count; i++) {
                centred[i] -= mean;
            }
            return centred;
        }
    }

    static LagLine of(LagSearch search, double lagS) {
        var cells = Cells.of(search, lagS);
        int used = cells.later.length;
        double aa = product(cells.value, cells.value);
        // Noise of one channel's slope knows nothing of the other's, so that their product is no larger for it.
        double slopes = product(cells.slope, cells.laterSlope);
        double beta = product(cells.value, cells.later) / aa;
        if (used < FEWEST || !(aa > 0 && slopes > 0 && beta > 0)) {
            return new LagLine(false, 0, Double.NaN);
        }
        int perBlock = Math.clamp((int) Math.round(Lag.BLOCK_S / search.stepS()), 1, Math.max(1, used / 8));
        double score = 0;
        double ofBlocks = 0;
        double block = 0;
        for (int i = 0; i < used; i++) {
            double one = (cells.later[i] - beta * cells.value[i]) * cells.slope[i];
            score += one;
            block += one;
            if ((i + 1) % perBlock == 0 || i + 1 == used) {
                ofBlocks += block * block;
                block = 0;
            }
        }
        // A later lag moves the model by −β·a′, so that what is left over falls with it.
        return new LagLine(true, -score / slopes, Math.sqrt(ofBlocks) / slopes);
    }

    private static double product(double[] one, double[] other) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += one[i] * other[i];
        }
        return sum;
    }
}
