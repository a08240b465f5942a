package org.measuredmile.comparison.standing;

import java.time.LocalDate;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.recording.day.Variant;

/// One bike's result, as it may stand among others.
///
/// Unit: value, uncertainty and contributions in the SI unit of the figure.
/// Shape: `version` is the trial's version, or [#LEDGER] for a result of the ledger; `anyDay` is what counts between
/// bikes; `budget` holds the contributions to it, those that other bikes share among them.
public record Entrant(
        String bike,
        String title,
        String category,
        String maker,
        String drive,
        LocalDate date,
        Variant variant,
        int version,
        double value,
        Uncertainty anyDay,
        List<Contribution> budget,
        Origin origin,
        Traits traits) {
    /// The version of results that were written down in earlier years.
    public static final int LEDGER = 0;

    /// Where a result comes from: the test day's id and the bike's configuration on it, or the ledger's name.
    public record Origin(String day, String configuration) {
        public static final Origin UNKNOWN = new Origin("", "");
    }

    public Entrant {
        budget = List.copyOf(budget);
    }

    /// A result of a bike of which nothing more is known, from an unknown day.
    public Entrant(
            String bike,
            String title,
            String category,
            String maker,
            String drive,
            LocalDate date,
            Variant variant,
            int version,
            double value,
            Uncertainty anyDay,
            List<Contribution> budget) {
        this(
                bike,
                title,
                category,
                maker,
                drive,
                date,
                variant,
                version,
                value,
                anyDay,
                budget,
                Origin.UNKNOWN,
                Traits.UNKNOWN);
    }

    public boolean isFromLedger() {
        return version == LEDGER;
    }

    /// The contributions that other bikes may share, by what is shared.
    SortedMap<String, Double> shared() {
        var shared = new TreeMap<String, Double>();
        for (var contribution : budget) {
            if (!contribution.shared().isEmpty()) {
                shared.merge(contribution.shared(), contribution.standardUncertainty(), StrictMath::hypot);
            }
        }
        return shared;
    }

    /// The standard uncertainty that is this bike's own: what is left when the shared contributions are taken out.
    double ownUncertainty() {
        double variance = anyDay.standard() * anyDay.standard();
        for (double one : shared().values()) {
            variance -= one * one;
        }
        return Math.sqrt(Math.max(0, variance));
    }

    /// Degrees of freedom of the own uncertainty, as they follow from those of the whole when the shared
    /// contributions have infinitely many (JCGM 100:2008, equation G.2b).
    double ownDegreesOfFreedom() {
        double degrees = anyDay.degreesOfFreedom();
        if (degrees == Double.POSITIVE_INFINITY || anyDay.standard() == 0) {
            return degrees;
        }
        double ratio = ownUncertainty() / anyDay.standard();
        return Math.max(1, degrees * ratio * ratio * ratio * ratio);
    }
}
