package org.measuredmile.comparison.sentence;

import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.Locale;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.UnitSystem;

/// A sentence to be said aloud: numbers and units in words, one system.
record Speech(UnitSystem system) implements Voice {
    @Override
    public String figure(double si, double halfWidthSi, QuantityKind kind) {
        return SpokenQuantity.figure(si, halfWidthSi, kind, system);
    }

    @Override
    public String atLeast(Interval interval, QuantityKind kind) {
        return SpokenQuantity.atLeast(interval.low(), interval.halfWidth(), kind, system);
    }

    @Override
    public String quantity(double si, QuantityKind kind) {
        return SpokenQuantity.value(si, kind, system, 0);
    }

    @Override
    public String words(String written) {
        return SpokenWords.of(written);
    }

    @Override
    public String count(long number) {
        return NumberWords.whole(number);
    }

    @Override
    public String ordinal(int place) {
        return NumberWords.ordinal(place);
    }

    @Override
    public String places(int first, int last) {
        return "from " + ordinal(first) + " to " + ordinal(last);
    }

    /// `the first of June twenty thirty-one`.
    @Override
    public String day(LocalDate date) {
        String month = date.getMonth().getDisplayName(TextStyle.FULL, Locale.UK);
        return "the " + ordinal(date.getDayOfMonth()) + " of " + month + " " + NumberWords.year(date.getYear());
    }

    @Override
    public String chance(double probability) {
        return SpokenWords.of(QuantityPrinter.chance(probability));
    }
}
