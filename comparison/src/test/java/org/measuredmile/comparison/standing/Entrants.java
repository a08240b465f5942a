package org.measuredmile.comparison.standing;

import java.time.LocalDate;
import java.util.List;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.FigureSpec;

/// Invented results for the tests of standings.
final class Entrants {
    static final FigureSpec LESS_IS_BETTER =
            FigureSpec.of("trial.length", "Length", QuantityKind.LENGTH, Better.LESS, Chapter.STOPPING);
    static final FigureSpec MORE_IS_BETTER =
            FigureSpec.of("trial.more", "More", QuantityKind.LENGTH, Better.MORE, Chapter.STOPPING);
    static final LocalDate DAY = LocalDate.of(2031, 5, 4);

    private Entrants() {}

    static Entrant exactly(String bike, double value) {
        return of(bike, value, Budget.of());
    }

    static Entrant of(String bike, double value, double standardUncertainty) {
        return of(bike, value, Budget.of(Contribution.typeB("all", standardUncertainty)));
    }

    static Entrant of(String bike, double value, Budget budget) {
        return new Entrant(
                bike,
                bike,
                "cargo",
                "Maker",
                "both",
                DAY,
                Variant.NONE,
                1,
                value,
                budget.around(value),
                budget.contributions());
    }

    static Entrant fromLedger(String bike, double value, double standardUncertainty) {
        var own = of(bike, value, standardUncertainty);
        return new Entrant(
                bike,
                bike,
                "cargo",
                "Maker",
                "",
                DAY.minusYears(3),
                Variant.NONE,
                Entrant.LEDGER,
                value,
                own.anyDay(),
                own.budget());
    }

    static Entrant onDay(Entrant one, LocalDate date) {
        return new Entrant(
                one.bike(),
                one.title(),
                one.category(),
                one.maker(),
                one.drive(),
                date,
                one.variant(),
                one.version(),
                one.value(),
                one.anyDay(),
                one.budget());
    }

    static Standing standing(List<Entrant> entrants) {
        return Standing.of(LESS_IS_BETTER, Variant.NONE, Population.EVERY_BIKE, entrants);
    }
}
