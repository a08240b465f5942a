package org.measuredmile.comparison.verdict;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.verdict.ReplySheet.Fact;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.Rounding;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.trial.Figure;

/// Writes the facts of a reply sheet, in one system of units with the other in brackets.
final class ReplyFacts {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK);

    private final TestedBike bike;
    private final UnitSystem system;
    private final Wording wording;
    private final List<Fact> facts = new ArrayList<>();

    ReplyFacts(TestedBike bike, UnitSystem system) {
        this.bike = bike;
        this.system = system;
        this.wording = new Wording(system);
    }

    List<Fact> of(ClaimVerdict verdict) {
        facts.clear();
        String conditions = Wording.conditions(verdict.claim());
        add("Claimed", "“" + verdict.claim().words() + "”" + (conditions.isEmpty() ? "" : ", " + conditions));
        add("Source", joined(", seen ", verdict.line().source(), verdict.line().date()));
        verdict.measured().ifPresentOrElse(tried -> measured(tried.result()), () -> add("Measured", "not measured"));
        verdict.atConditions().ifPresent(this::brought);
        return List.copyOf(facts);
    }

    private void add(String name, String words) {
        if (!words.isBlank()) {
            facts.add(new Fact(name, words));
        }
    }

    private static String joined(String by, String first, String second) {
        return second.isBlank() ? first : first.isBlank() ? second : first + by + second;
    }

    private void measured(TestedBike.Result result) {
        var figure = result.figure();
        add("Measured", stated(result) + "; the ± is the 95 % interval of any day");
        bike.of(figure.key().figure()).stream()
                .filter(one -> !one.figure().key().equals(figure.key()))
                .filter(one -> Claims.variant(one).get("at").isEmpty())
                .forEach(one -> add("Measured too", stated(one)));
        add("Runs", figure.runs().stream().map(run -> run(run, figure.kind())).collect(Collectors.joining("; ")));
        add("Uncertainty", budget(figure));
        add("Assumed", String.join("; ", figure.assumed()));
        add("Configuration", result.configuration());
        add("Method", ReplySheet.method(figure.trial(), figure.version()));
        figure.inputs().forEach(input -> add("File", input.name() + ", SHA-256 " + input.sha256()));
    }

    private String stated(TestedBike.Result result) {
        var figure = result.figure();
        String how = Wording.how(result);
        return value(figure.value(), figure.anyDay().interval95().halfWidth(), figure.kind())
                + (how.isEmpty() ? "" : ", " + how) + ", on " + DAY.format(result.date());
    }

    private void brought(Tried tried) {
        String under = tried.under().map(wording::under).orElse("");
        add(
                "Brought by the road load to " + under,
                wording.value(
                                tried.value(),
                                tried.known(),
                                tried.result().figure().kind())
                        + "; a calculation from the ride, not another ride");
        add("Assumed for it", String.join("; ", tried.result().figure().assumed()));
    }

    private String run(Figure.FigureRun run, QuantityKind kind) {
        String value = run.value().isPresent() ? " " + plain(run.value().getAsDouble(), kind, 2) : "";
        String fate = run.counted() ? "" : run.reason().isBlank() ? ", not counted" : ", not counted: " + run.reason();
        return run.run() + value + fate;
    }

    private String budget(Figure figure) {
        return figure.budget().stream()
                .map(one -> one.input() + " "
                        + both(printer -> small(one.standardUncertainty(), figure.kind(), printer.system())))
                .collect(Collectors.joining("; ", "standard uncertainties: ", ""));
    }

    private static String small(double si, QuantityKind kind, UnitSystem system) {
        Unit unit = kind.shown(system);
        return QuantityPrinter.digits(Rounding.toSignificant(unit.differenceFromSi(si), 2)) + "\u00a0" + unit.symbol();
    }

    List<Fact> of(TestDay day) {
        facts.clear();
        add("Where", day.place());
        configuration(day.configuration());
        conditions(day);
        // Who rode is nobody's business; what was ridden with is.
        day.riders().stream()
                .filter(rider -> day.runs().stream().anyMatch(run -> run.rider().equals(rider.code())))
                .filter(rider -> rider.massAsRiddenKg().isPresent())
                .forEach(rider ->
                        add("Rider with gear", plain(rider.massAsRiddenKg().getAsDouble(), QuantityKind.MASS, 1)));
        day.instruments().forEach(one -> add("Instrument " + one.id(), instrument(one)));
        day.notRidden()
                .forEach(one -> add(
                        "Not ridden", joined(", ", one.trial(), one.variant().text()) + ": " + one.reason()));
        return List.copyOf(facts);
    }

    private void configuration(Configuration set) {
        add("Firmware", set.firmware());
        add("Battery", set.battery());
        add("Tyres", set.tyres());
        condition("Tyre pressure, front", set.tyrePressureFrontPa(), QuantityKind.PRESSURE, 0);
        condition("Tyre pressure, rear", set.tyrePressureRearPa(), QuantityKind.PRESSURE, 0);
        add("Fitted", String.join(", ", set.accessories()));
    }

    private void conditions(TestDay day) {
        var met = day.conditions();
        condition("Air", met.airTemperatureK(), QuantityKind.TEMPERATURE, 1);
        condition("Battery at", met.batteryTemperatureK(), QuantityKind.TEMPERATURE, 1);
        condition("Pressure", met.pressurePa(), QuantityKind.PRESSURE, 1);
        condition("Humidity", met.relativeHumidity(), QuantityKind.RATIO, 0);
        condition("Wind", met.windSpeedMps(), QuantityKind.SPEED, 1);
        add("Wind from", met.windFrom());
        add("Surface", met.surface());
        condition("State of charge", met.stateOfCharge(), QuantityKind.RATIO, 0);
    }

    private void condition(String name, OptionalDouble si, QuantityKind kind, int decimals) {
        si.ifPresent(value -> add(name, plain(value, kind, decimals)));
    }

    private static String instrument(Instrument one) {
        String calibration = one.calibration()
                .map(done -> "calibrated, factor " + Rounding.toDecimals(done.factor(), 4) + " ± "
                        + Rounding.toDecimals(2 * done.standardUncertainty(), 4)
                        + done.date().map(date -> ", " + DAY.format(date)).orElse(""))
                .orElse("no calibration on record");
        return one.kind().id().replace('-', ' ') + ", " + calibration;
    }

    private String value(double si, double halfWidth, QuantityKind kind) {
        return both(printer -> printer.figure(si, halfWidth, kind).text());
    }

    private String plain(double si, QuantityKind kind, int decimals) {
        return both(printer -> printer.value(si, kind, decimals).text());
    }

    private String both(Function<QuantityPrinter, String> print) {
        String first = print.apply(QuantityPrinter.desk(system));
        String other = print.apply(QuantityPrinter.desk(system.other()));
        return first.equals(other) ? first : first + " (" + other + ")";
    }
}
