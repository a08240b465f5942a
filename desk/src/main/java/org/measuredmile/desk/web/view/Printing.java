package org.measuredmile.desk.web.view;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.OptionalDouble;
import org.measuredmile.publication.chart.Scale;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.RunResult;

/// Turns what the inner modules compute into the words and numbers of a page, for one system of units.
public record Printing(UnitSystem system) {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK);
    private static final DateTimeFormatter SHORT_DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);
    private static final DateTimeFormatter WEEKDAY = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.UK);
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.UK);
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.UK);

    private static final DateTimeFormatter ZONE = DateTimeFormatter.ofPattern("zzz", Locale.ENGLISH);

    public QuantityPrinter printer() {
        return QuantityPrinter.desk(system);
    }

    public Scale scale(QuantityKind kind) {
        return new Scale(kind, system);
    }

    /// A figure with its any-day interval.
    ValueView anyDay(Figure figure) {
        return value(figure.value(), figure.anyDay(), figure.kind());
    }

    /// A figure with the interval of its own day.
    ValueView thisDay(Figure figure) {
        return value(figure.value(), figure.thisDay(), figure.kind());
    }

    ValueView value(double si, Uncertainty uncertainty, QuantityKind kind) {
        return ValueView.of(printer().figureInBoth(si, uncertainty.interval95().halfWidth(), kind));
    }

    /// A run's own value with the half-width of its 95 % interval (coverage factor 1.96).
    ValueView value(RunResult.RunValue value) {
        return ValueView.of(
                printer().figureInBoth(value.value(), 1.959964 * value.standardUncertainty(), value.kind()));
    }

    /// A written condition, to a fixed number of digits after the point, with the other system in brackets.
    String condition(OptionalDouble si, QuantityKind kind, int decimals) {
        if (si.isEmpty()) {
            return "";
        }
        String first = printer().value(si.getAsDouble(), kind, decimals).text();
        String other = printer().other().value(si.getAsDouble(), kind, decimals).text();
        return first.equals(other) ? first : first + " (" + other + ")";
    }

    static String day(LocalDate date) {
        return DAY.format(date);
    }

    static String shortDay(LocalDate date) {
        return SHORT_DAY.format(date);
    }

    static String weekday(LocalDate date) {
        return WEEKDAY.format(date);
    }

    /// Day and clock time, with the short name of the zone they are in: `30 Jun 2031, 13:00 BST`.
    static String moment(Instant at, ZoneId zone) {
        return MOMENT.format(at.atZone(zone)) + "\u00a0" + zoneName(at, zone);
    }

    /// What a zone's clocks are called at a moment, summer or winter time: `BST`.
    static String zoneName(Instant at, ZoneId zone) {
        String name = ZONE.format(at.atZone(zone));
        return name.equals("Z") ? "UTC" : name;
    }

    static String clock(Instant at, ZoneId zone) {
        return CLOCK.format(at.atZone(zone));
    }

    /// `1 run`, `6 runs`.
    public static String count(long number, String one, String many) {
        return number + "\u00a0" + (number == 1 ? one : many);
    }

    /// The first and last signs of a hash.
    static String hash(String sha256) {
        return sha256.length() < 12 ? sha256 : sha256.substring(0, 4) + "…" + sha256.substring(sha256.length() - 4);
    }

    /// A word with a capital letter at its beginning.
    static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
