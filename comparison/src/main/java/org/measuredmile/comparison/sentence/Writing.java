package org.measuredmile.comparison.sentence;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.Printed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.UnitSystem;

/// A sentence to be read: numbers with the digits of prose, the other system in brackets.
record Writing(UnitSystem system) implements Voice {
    @Override
    public String figure(double si, double halfWidthSi, QuantityKind kind) {
        var both = QuantityPrinter.prose(system).figureInBoth(si, halfWidthSi, kind);
        return inBoth(both.first().text(), both.other().text());
    }

    @Override
    public String atLeast(Interval interval, QuantityKind kind) {
        return "at least " + inBoth(floor(interval, kind, system), floor(interval, kind, system.other()));
    }

    private static String floor(Interval interval, QuantityKind kind, UnitSystem system) {
        var unit = kind.shown(system);
        int place = QuantityPrinter.prose(system)
                .rounded(interval.low(), interval.halfWidth(), unit)
                .value()
                .scale();
        var low = BigDecimal.valueOf(unit.fromSi(interval.low())).setScale(place, RoundingMode.FLOOR);
        return new Printed(QuantityPrinter.digits(low), "", unit.symbol()).text();
    }

    @Override
    public String quantity(double si, QuantityKind kind) {
        var printer = QuantityPrinter.prose(system);
        return inBoth(
                printer.value(si, kind, 0).text(),
                printer.other().value(si, kind, 0).text());
    }

    private static String inBoth(String first, String other) {
        return first.equals(other) ? first : first + " (" + other + ")";
    }

    @Override
    public String words(String written) {
        return written;
    }

    @Override
    public String count(long number) {
        return NumberWords.writtenCount(number);
    }

    @Override
    public String ordinal(int place) {
        return NumberWords.writtenOrdinal(place);
    }

    @Override
    public String places(int first, int last) {
        boolean inWords = last <= NumberWords.LAST_WORD;
        return inWords
                ? "from " + ordinal(first) + " to " + ordinal(last)
                : "from " + NumberWords.shortOrdinal(first) + " to " + NumberWords.shortOrdinal(last);
    }

    @Override
    public String day(LocalDate date) {
        return DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK).format(date);
    }

    @Override
    public String chance(double probability) {
        return QuantityPrinter.chance(probability);
    }
}
