package org.measuredmile.comparison.legal;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.UsedLoad;

/// A bike put together for a test: what it is, what it says, what was measured.
final class Tested {
    private final String drive;
    private final List<SpecLine> spec = new ArrayList<>();
    private final List<Result> results = new ArrayList<>();

    private Tested(String drive) {
        this.drive = drive;
    }

    static Tested driven(String drive) {
        return new Tested(drive);
    }

    Tested claiming(String item, String claimed, String conditions) {
        spec.add(new SpecLine(item, claimed, "", conditions, "", "", "", "", "", Place.atLine("spec.csv", 2)));
        return this;
    }

    Tested marked(String item, String seen) {
        spec.add(new SpecLine(item, "", "", "", "", "", seen, "", "", Place.atLine("spec.csv", 3)));
        return this;
    }

    Tested cutOff(double value, double half, Unit unit) {
        return measured("assistspeed.cut-off", Variant.of("drive", "pedal"), value, half, unit);
    }

    Tested motorAlone(double value, double half, Unit unit) {
        return measured("assistspeed.speed", throttle(), value, half, unit);
    }

    Tested motorAloneAtReference(double value, double half, Unit unit, Finding... findings) {
        results.add(
                result("assistspeed.speed", throttle().with("at", "reference"), value, half, unit, List.of(findings)));
        return this;
    }

    static Variant throttle() {
        return Variant.of("drive", "throttle").with("level", "throttle").with("levelRole", "throttle");
    }

    Tested measured(String figure, Variant variant, double value, double half, Unit unit) {
        results.add(result(figure, variant, value, half, unit, List.of()));
        return this;
    }

    /// What a coast-down's two numbers lean on each other by, of those that were measured already.
    Tested leaning(double coefficient) {
        var said = new Correlation(
                new FigureKey(UsedLoad.ROLLING, Variant.NONE),
                new FigureKey(UsedLoad.DRAG_AREA, Variant.NONE),
                coefficient);
        results.replaceAll(one ->
                new Result(one.figure(), one.date(), one.day(), one.configuration(), one.accepted(), List.of(said)));
        return this;
    }

    private static Result result(
            String id, Variant variant, double value, double half, Unit unit, List<Finding> findings) {
        double si = unit.toSi(value);
        double halfSi = unit.differenceToSi(half);
        var known =
                new Uncertainty(halfSi / 1.959964, Double.POSITIVE_INFINITY, new Interval(si - halfSi, si + halfSi));
        var figure = new Figure(
                new FigureKey(id, variant),
                QuantityKind.SPEED,
                id.substring(0, id.indexOf('.')),
                1,
                si,
                known,
                known,
                List.of(),
                List.of(),
                List.of(new Figure.Narrowing("twice as many passages", new Interval(si - halfSi / 2, si + halfSi / 2))),
                List.of(),
                List.of(),
                findings,
                List.of());
        return new Result(figure, LocalDate.of(2031, 5, 6), "2031-05-06-tested", "as delivered", true);
    }

    TestedBike bike() {
        var known = Bike.known("tested");
        var bike = new Bike(
                "tested",
                "",
                "",
                OptionalInt.empty(),
                "",
                drive,
                "unknown",
                OptionalInt.empty(),
                "",
                known.price(),
                known.loan(),
                spec);
        return new TestedBike(bike, results);
    }

    ClassOutcome in(String id) {
        return LegalClasses.outcome(bike(), LegalRules.find(id).orElseThrow());
    }

    ClassOutcome.RuleOutcome in(String id, LegalRule.Measured measured) {
        return in(id).rules().stream()
                .filter(one -> one.rule().measured() == measured)
                .findFirst()
                .orElseThrow();
    }
}
