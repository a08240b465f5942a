package org.measuredmile.comparison;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.Trials;

/// Invented bikes and results for the tests of comparisons.
public final class TestFigures {
    public static final LocalDate DAY = LocalDate.of(2031, 5, 4);

    private TestFigures() {}

    /// A bike with results of one day, each accepted.
    public static TestedBike bike(String model, Figure... figures) {
        return tested(described(model, 1890), figures);
    }

    public static TestedBike tested(Bike bike, Figure... figures) {
        return new TestedBike(
                bike,
                Arrays.stream(figures)
                        .map(one -> new TestedBike.Result(one, DAY, DAY + "-" + bike.id(), "firmware 1.0", true))
                        .toList());
    }

    /// An invented bike with a price in dollars and what its maker says.
    public static Bike described(String model, double price, SpecLine... spec) {
        return new Bike(
                model.toLowerCase(java.util.Locale.ROOT),
                "Brindle",
                model,
                OptionalInt.of(2031),
                "commuter",
                "both",
                "torque",
                OptionalInt.of(5),
                "28 in",
                new Bike.Price(OptionalDouble.of(price), "USD", "US", "2031-01-15"),
                Bike.Loan.UNKNOWN,
                List.of(spec));
    }

    public static SpecLine line(String item, String claimed, String unit) {
        return new SpecLine(
                item, claimed, unit, "", "the maker's page (invented)", "2031-01-15", "", "", "", Place.NOWHERE);
    }

    /// A result with one normal contribution of its own.
    public static Figure figure(String id, String variant, double value, double standardUncertainty) {
        return figure(id, variant, value, Contribution.typeB("all", standardUncertainty));
    }

    /// A result of the trial's current version; `variant` as in runs.csv.
    public static Figure figure(String id, String variant, double value, Contribution... contributions) {
        var trial = Trials.delivering(id).orElseThrow().declaration();
        var budget = Budget.of(contributions);
        return new Figure(
                new FigureKey(id, variant(variant)),
                trial.requireFigure(id).kind(),
                trial.id(),
                trial.version(),
                value,
                budget.around(value),
                budget.around(value),
                List.of(),
                budget.contributions(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    /// The same result by another version of its trial.
    public static Figure byVersion(int version, Figure of) {
        return new Figure(
                of.key(),
                of.kind(),
                of.trial(),
                version,
                of.value(),
                of.thisDay(),
                of.anyDay(),
                of.runs(),
                of.budget(),
                of.narrows(),
                of.assumed(),
                of.used(),
                of.findings(),
                of.inputs());
    }

    public static Variant variant(String text) {
        var variant = Variant.NONE;
        for (String term : text.strip().split("\\s+")) {
            if (!term.isEmpty()) {
                variant = variant.with(term.substring(0, term.indexOf('=')), term.substring(term.indexOf('=') + 1));
            }
        }
        return variant;
    }
}
