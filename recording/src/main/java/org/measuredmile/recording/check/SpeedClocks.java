package org.measuredmile.recording.check;

import java.util.Arrays;
import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ClockCause;
import org.measuredmile.recording.motion.Lag;

/// How far the clocks of two instruments on one ride are apart, by where the correlation of their speeds is largest.
///
/// Both speeds are put on a grid of one second; lags up to two minutes either way are tried about no offset and about
/// every whole hour. The peak is refined by [Lag], whose uncertainty it has; where the samples are too far apart for
/// that, by the parabola through its neighbours, half a step of theirs uncertain.
/// Unit: `byS` seconds to add to the second file's clock; `uncertaintyS` its standard uncertainty; `overS` seconds that
/// both have at the peak.
/// Source: delay by cross-correlation, Knapp and Carter, IEEE Transactions on Acoustics, Speech and Signal Processing
/// 24 (1976) 320-327.
record SpeedClocks(double byS, double uncertaintyS, double correlation, double overS) {
    private static final int FARTHEST_S = 120;
    private static final int LONGEST_S = 7200;
    private static final int FEWEST_S = 120;
    private static final double SURE = 0.9;
    private static final double LIVELY_MPS = 1;
    private static final double BRIDGED_S = 3;
    private static final double APART_S = 1;
    private static final double COARSE_S = 1.25;

    static Optional<SpeedClocks> of(DayRecording one, DayRecording two) {
        Optional<Channel> first = one.ownSpeed();
        Optional<Channel> second = two.ownSpeed();
        if (first.isEmpty() || second.isEmpty() || !one.isDated() || !two.isDated()) {
            return Optional.empty();
        }
        SpeedClocks best = new SpeedClocks(0, 0, 0, 0);
        if (one.commonS(two, 0) >= FEWEST_S) {
            best = about(one, two, 0, best);
        }
        for (double byS : ClockCause.known()) {
            boolean zone = Math.abs(byS) >= 2 * FARTHEST_S;
            if (best.correlation < SURE && zone && one.commonS(two, byS) >= FEWEST_S) {
                best = about(one, two, byS, best);
            }
        }
        return best.correlation >= SURE
                ? refined(first.get(), second.get(), best, two.fromS() - one.fromS())
                : Optional.empty();
    }

    /// Whether the clocks differ by more than instruments of one ride do: a second, and beyond doubt.
    boolean areApart() {
        return Math.abs(byS) >= Math.max(APART_S, 3 * uncertaintyS);
    }

    /// The same, with the second file's clock taken for right.
    SpeedClocks turned() {
        return new SpeedClocks(-byS, uncertaintyS, correlation, overS);
    }

    /// @param apartS what to add to the second file's own times to have them on the first one's base, clocks
    /// untouched
    private static Optional<SpeedClocks> refined(Channel first, Channel second, SpeedClocks coarse, double apartS) {
        double stepS = Math.max(first.medianStepS(), second.medianStepS());
        if (stepS > COARSE_S) {
            return Optional.of(new SpeedClocks(coarse.byS, stepS / 2, coarse.correlation, coarse.overS));
        }
        double[] timesS = second.timesS().clone();
        for (int i = 0; i < timesS.length; i++) {
            timesS[i] += apartS + coarse.byS;
        }
        Channel moved = new Channel(
                second.kind(),
                second.name(),
                second.writtenUnit(),
                second.source(),
                new Channel.Series(timesS, second.values()));
        return switch (Lag.between(first, moved)) {
            case Lag.Known(double lagS, double uncertaintyS, double correlation) ->
                Optional.of(new SpeedClocks(coarse.byS - lagS, uncertaintyS, correlation, coarse.overS));
            case Lag.Refused _ -> Optional.empty();
        };
    }

    private static SpeedClocks about(DayRecording one, DayRecording two, double byS, SpeedClocks best) {
        double fromS = Math.max(one.fromS(), two.fromS() + byS) - FARTHEST_S;
        double toS = Math.min(one.toS(), two.toS() + byS) + FARTHEST_S;
        int size = (int) Math.min(LONGEST_S, toS - fromS + 1);
        double[] first = grid(one.ownSpeed().orElseThrow(), fromS - one.fromS(), size);
        double[] second = grid(two.ownSpeed().orElseThrow(), fromS - byS - two.fromS(), size);
        double[] correlations = new double[2 * FARTHEST_S + 1];
        int peak = 0;
        for (int lag = -FARTHEST_S; lag <= FARTHEST_S; lag++) {
            correlations[lag + FARTHEST_S] = correlation(first, second, lag);
            peak = correlations[lag + FARTHEST_S] > correlations[peak] ? lag + FARTHEST_S : peak;
        }
        boolean inside = peak > 0 && peak < correlations.length - 1;
        if (!inside || correlations[peak] <= best.correlation) {
            return best;
        }
        double before = correlations[peak - 1];
        double after = correlations[peak + 1];
        double bend = before - 2 * correlations[peak] + after;
        double part = bend < 0 ? 0.5 * (before - after) / bend : 0;
        return new SpeedClocks(
                byS + peak - FARTHEST_S + part, 0, correlations[peak], common(first, second, peak - FARTHEST_S));
    }

    private static double[] grid(Channel speed, double fromS, int size) {
        double[] grid = new double[size];
        Arrays.fill(grid, Double.NaN);
        int j = 0;
        for (int i = 0; i < size; i++) {
            double timeS = fromS + i;
            while (j + 1 < speed.size() && speed.timeS(j + 1) <= timeS) {
                j++;
            }
            if (j + 1 < speed.size() && speed.timeS(j) <= timeS) {
                double stepS = speed.timeS(j + 1) - speed.timeS(j);
                double share = (timeS - speed.timeS(j)) / stepS;
                grid[i] = stepS <= BRIDGED_S
                        ? speed.value(j) + share * (speed.value(j + 1) - speed.value(j))
                        : Double.NaN;
            }
        }
        return grid;
    }

    /// Pearson's correlation of what both have, the second one moved later by a lag; 0 where there is too little or
    /// where nothing changes.
    private static double correlation(double[] one, double[] two, int lag) {
        int n = 0;
        double sumOne = 0;
        double sumTwo = 0;
        double squareOne = 0;
        double squareTwo = 0;
        double product = 0;
        for (int i = Math.max(0, lag); i < one.length && i - lag < two.length; i++) {
            double a = one[i];
            double b = two[i - lag];
            if (!Double.isNaN(a) && !Double.isNaN(b)) {
                n++;
                sumOne += a;
                sumTwo += b;
                squareOne += a * a;
                squareTwo += b * b;
                product += a * b;
            }
        }
        double spreadOne = squareOne - sumOne * sumOne / n;
        double spreadTwo = squareTwo - sumTwo * sumTwo / n;
        boolean lively = n >= FEWEST_S && spreadOne > n * LIVELY_MPS && spreadTwo > n * LIVELY_MPS;
        return lively ? (product - sumOne * sumTwo / n) / Math.sqrt(spreadOne * spreadTwo) : 0;
    }

    private static int common(double[] one, double[] two, int lag) {
        int n = 0;
        for (int i = Math.max(0, lag); i < one.length && i - lag < two.length; i++) {
            n += Double.isNaN(one[i]) || Double.isNaN(two[i - lag]) ? 0 : 1;
        }
        return n;
    }
}
