package org.measuredmile.desk.coverage;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Variant;

/// How one figure did over the simulated days of one seed.
///
/// Shape: `study` says what was simulated, `variant` which of the figure's variants was looked at; `days` were
/// simulated, `figures` of them gave the figure; `heldThisDay` and `heldAnyDay` count the 95 %
/// intervals that held the truth.
/// Unit: `bias` is the mean relative difference from the truth of the day, `biasInUncertainties` the same over the
/// mean relative standard uncertainty of that day; half-widths in the SI unit of `kind`, medians over the days. The
/// best ones are those of an ideal analyst: who has the same records and the same knowledge of bike, road and
/// weather, knows how runs and days scatter, and uses all of it by likelihood. `byScatterDecile` is the share of
/// this-day intervals that held the truth in each tenth of the days by how
/// far the runs scattered, least first; empty where runs have no values of their own or days are fewer than a hundred.
public record Coverage(
        String study,
        String figure,
        Variant variant,
        QuantityKind kind,
        long seed,
        int days,
        int figures,
        int heldThisDay,
        int heldAnyDay,
        double bias,
        double biasInUncertainties,
        HalfWidths thisDay,
        HalfWidths anyDay,
        List<Double> byScatterDecile) {
    /// The demand: what a share must be to be called 95 %, a tenth of the uncertainty, and near the best possible.
    public static final double LEAST_SHARE = 0.93;

    public static final double MOST_SHARE = 0.97;
    public static final double MOST_BIAS = 0.1;
    public static final double MOST_OVER_BEST = 1.3;

    public Coverage {
        byScatterDecile = List.copyOf(byScatterDecile);
    }

    /// Median half-width of the intervals, and of the best possible ones.
    public record HalfWidths(double median, double best) {
        /// How many times as wide as the best possible.
        public double overBest() {
            return median / best;
        }
    }

    /// The share of this-day intervals that held the truth; NaN when there was no figure.
    public double shareThisDay() {
        return (double) heldThisDay / figures;
    }

    /// The share of any-day intervals that held the truth; NaN when there was no figure.
    public double shareAnyDay() {
        return (double) heldAnyDay / figures;
    }

    /// What of the demand this row misses, in words; empty where it misses nothing.
    ///
    /// Shape: with few days a share, or a bias, may miss by chance: a true 95 % of a thousand has a standard
    /// deviation of 0.7 points, a bias of 0.03.
    public List<String> misses() {
        var misses = new ArrayList<String>();
        if (!holds(shareThisDay())) {
            misses.add("held this day");
        }
        if (!holds(shareAnyDay())) {
            misses.add("held any day");
        }
        if (!(Math.abs(biasInUncertainties) <= MOST_BIAS)) {
            misses.add("bias");
        }
        if (!(thisDay.overBest() <= MOST_OVER_BEST)) {
            misses.add("width this day");
        }
        if (!(anyDay.overBest() <= MOST_OVER_BEST)) {
            misses.add("width any day");
        }
        return misses;
    }

    private static boolean holds(double share) {
        return share >= LEAST_SHARE && share <= MOST_SHARE;
    }
}
