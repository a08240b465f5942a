package org.measuredmile.comparison.sentence;

import java.time.LocalDate;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.UnitSystem;

/// In which form a sentence is put: written or spoken, the units of one system first.
sealed interface Voice permits Writing, Speech {
    UnitSystem system();

    /// A value with the half-width of its interval.
    String figure(double si, double halfWidthSi, QuantityKind kind);

    /// A bound that the true value is not below: the low end of an interval, rounded down.
    String atLeast(Interval interval, QuantityKind kind);

    /// A value that is known exactly, in whole units.
    String quantity(double si, QuantityKind kind);

    /// Words that may hold numbers and units.
    String words(String written);

    String count(long number);

    String ordinal(int place);

    /// A stretch of places: `from second to fifth`.
    String places(int first, int last);

    /// A chance in whole per cent.
    String chance(double probability);

    String day(LocalDate date);
}
