package org.measuredmile.recording.motion;

import java.util.Locale;
import org.measuredmile.recording.Channel;

/// The search for one lag on a common grid. See [Lag].
final class LagSearch {
    private static final int FEWEST = 40;
    private static final double SMOOTHED_S = 0.6;
    /// Less of its own square is rounding, not change.
    private static final double NO_CHANGE = 1e-18;
    private final double stepS;
    private final double fromS;
    private final double[] gridA;
    private final double[] gridB;
    private final int most;
    private final int reach;

    LagSearch(Channel a, Channel b, double stepS) {
        this.stepS = stepS;
        this.fromS = Math.min(a.timeS(0), b.timeS(0));
        double toS = Math.max(a.timeS(a.size() - 1), b.timeS(b.size() - 1));
        int count = (int) Math.floor((toS - fromS) / stepS) + 1;
        this.reach = (int) Math.floor(SMOOTHED_S / stepS / 2);
        this.gridA = grid(a, count);
        this.gridB = grid(b, count);
        this.most = (int) Math.round(Lag.MOST_LAG_S / stepS);
    }

    /// Means of the line between samples over each cell, NaN in gaps, then a running mean that both channels
    /// share and that therefore moves neither against the other.
    private double[] grid(Channel channel, int count) {
        double longestS = Math.max(2.5 * channel.medianStepS(), 2.5 * stepS);
        double[] area = new double[channel.size()];
        for (int i = 1; i < area.length; i++) {
            double widthS = channel.timeS(i) - channel.timeS(i - 1);
            area[i] = area[i - 1] + widthS * (channel.value(i) + channel.value(i - 1)) / 2;
        }
        double[] cells = new double[count];
        for (int i = 0; i < count; i++) {
            double timeS = fromS + i * stepS;
            cells[i] = (areaAt(channel, area, timeS + stepS / 2, longestS)
                            - areaAt(channel, area, timeS - stepS / 2, longestS))
                    / stepS;
        }
        return smoothed(cells);
    }

    private static double areaAt(Channel channel, double[] area, double timeS, double longestS) {
        double here = Interpolation.at(channel, timeS, longestS).orElse(Double.NaN);
        if (Double.isNaN(here)) {
            return Double.NaN;
        }
        int next = channel.indexAtOrAfter(timeS);
        if (channel.timeS(next) == timeS) {
            return area[next];
        }
        return area[next - 1] + (timeS - channel.timeS(next - 1)) * (here + channel.value(next - 1)) / 2;
    }

    private double[] smoothed(double[] cells) {
        double[] smooth = new double[cells.length];
        for (int i = 0; i < cells.length; i++) {
            double sum = 0;
            for (int k = i - reach; k <= i + reach; k++) {
                sum += k >= 0 && k < cells.length ? cells[k] : Double.NaN;
            }
            smooth[i] = sum / (2 * reach + 1);
        }
        return smooth;
    }

    Lag found() {
        double[] correlation = new double[2 * most + 1];
        int best = -1;
        for (int k = -most; k <= most; k++) {
            correlation[k + most] = correlation(k);
            if (!Double.isNaN(correlation[k + most]) && (best < 0 || correlation[k + most] > correlation[best])) {
                best = k + most;
            }
        }
        if (best < 0) {
            return new Lag.Refused("the channels hardly overlap in time, or one of them never changes");
        }
        if (correlation[best] < Lag.LEAST_CORRELATION) {
            return Lag.flat(correlation[best]);
        }
        if (best == 0 || best == 2 * most) {
            return new Lag.Refused(String.format(
                    Locale.ROOT, "the channels are most alike at ±%.0f s or beyond: set the clocks", Lag.MOST_LAG_S));
        }
        int rival = rival(correlation, best);
        if (rival >= 0) {
            return new Lag.Refused(String.format(
                    Locale.ROOT,
                    "ambiguous: the channels are as alike at %.1f s as at %.1f s",
                    (rival - most) * stepS,
                    (best - most) * stepS));
        }
        return refined((best - most) * stepS, correlation[best]);
    }

    private double correlation(int shift) {
        double sumA = 0;
        double sumB = 0;
        int count = 0;
        for (int i = Math.max(0, shift); i < Math.min(gridB.length, gridA.length + shift); i++) {
            if (!Double.isNaN(gridB[i]) && !Double.isNaN(gridA[i - shift])) {
                sumA += gridA[i - shift];
                sumB += gridB[i];
                count++;
            }
        }
        if (count < FEWEST) {
            return Double.NaN;
        }
        double product = 0;
        double squareA = 0;
        double squareB = 0;
        for (int i = Math.max(0, shift); i < Math.min(gridB.length, gridA.length + shift); i++) {
            if (!Double.isNaN(gridB[i]) && !Double.isNaN(gridA[i - shift])) {
                double one = gridA[i - shift] - sumA / count;
                double other = gridB[i] - sumB / count;
                product += one * other;
                squareA += one * one;
                squareB += other * other;
            }
        }
        // A quotient of two nothings is no likeness.
        double leastA = NO_CHANGE * (1 + sumA * sumA);
        double leastB = NO_CHANGE * (1 + sumB * sumB);
        return squareA > leastA && squareB > leastB ? product / Math.sqrt(squareA * squareB) : Double.NaN;
    }

    /// Another top of the correlation, nearly as high, with a valley between; −1 when there is none.
    private static int rival(double[] correlation, int best) {
        double valley = correlation[best];
        for (int direction : new int[] {-1, 1}) {
            valley = correlation[best];
            for (int k = best + direction; k >= 0 && k < correlation.length; k += direction) {
                if (Double.isNaN(correlation[k])) {
                    continue;
                }
                valley = Math.min(valley, correlation[k]);
                boolean isTop = correlation[k] >= Lag.RIVAL * correlation[best];
                if (isTop && valley < correlation[k] - 0.02) {
                    return k;
                }
            }
        }
        return -1;
    }

    /// A few steps of Gauss and Newton on τ, with α and β solved at each.
    private Lag refined(double startS, double correlation) {
        double lagS = startS;
        LagLine line = LagLine.of(this, lagS);
        for (int i = 0; i < 8 && line.isSolved(); i++) {
            double by = Math.clamp(line.stepS(), -stepS, stepS);
            lagS += by;
            line = LagLine.of(this, lagS);
            if (Math.abs(by) < 1e-6) {
                break;
            }
        }
        double u = line.uncertaintyS();
        if (!line.isSolved() || !(u <= Lag.MOST_UNCERTAINTY_S)) {
            return new Lag.Refused(String.format(
                    Locale.ROOT,
                    "flat: the lag would be known to %.1f s only (standard uncertainty), at most %.1f s is of use",
                    u,
                    Lag.MOST_UNCERTAINTY_S));
        }
        return new Lag.Known(lagS, u, correlation);
    }

    double stepS() {
        return stepS;
    }

    double[] later() {
        return gridB;
    }

    /// How many cells to either side a slope is taken over.
    int reach() {
        return Math.max(1, reach);
    }

    /// The first channel's value on the grid's line at a time that need not lie on the grid.
    double earlierAt(double index) {
        int low = (int) Math.floor(index);
        if (low < 0 || low + 1 >= gridA.length) {
            return Double.NaN;
        }
        double share = index - low;
        return (1 - share) * gridA[low] + share * gridA[low + 1];
    }
}
