package org.measuredmile.desk.coverage;

import java.util.List;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Variant;

/// How one figure did over the simulated days of one seed.
///
/// Shape: `study` says what was simulated, `variant` which of the figure's variants was looked at; `days` were
/// simulated, `figures` of them gave the figure; `heldThisDay` and `heldAnyDay` count the 95 %
/// intervals that held the truth.
/// Unit: `bias` is the mean relative difference from the truth of the day, `biasInUncertainties` the mean difference
/// over the mean standard uncertainty of that day; half-widths in the SI unit of `kind`, medians over the days. The
/// best ones are those of an ideal analyst: who has the same records and the same knowledge of bike, road and
/// weather, knows how runs and days scatter, and uses all of it by likelihood. `byScatterDecile` is the share of
/// this-day intervals that held the truth in each tenth of the days by how far the runs scattered, least first; empty
/// where runs have no values of their own or days are fewer than a hundred.
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
}
