package org.measuredmile.comparison.verdict;

import java.math.BigDecimal;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.Rounding;
import org.measuredmile.quantity.Unit;

/// A measured value and the ends of its 95 % interval as they are printed, as decimals in one unit.
///
/// Shape: the half-width to two digits, all to its last place, rounded once; a value without a width keeps nine
/// digits, which is more than any reading has and less than where a conversion's error shows.
public record Stated(BigDecimal low, BigDecimal value, BigDecimal high) {
    private static final int EXACT_DIGITS = 9;

    public Stated {
        if (low.compareTo(value) > 0 || value.compareTo(high) > 0) {
            throw new IllegalArgumentException(low + ", " + value + ", " + high + " are not in order");
        }
    }

    /// A value with the same half-width on both sides, as printed.
    public static Stated plusMinus(String value, String halfWidth) {
        var middle = new BigDecimal(value);
        var half = new BigDecimal(halfWidth);
        return new Stated(middle.subtract(half), middle, middle.add(half));
    }

    /// An SI value with its interval, in a unit.
    public static Stated of(double si, Interval interval95, Unit unit) {
        double value = unit.fromSi(si);
        double below = value - unit.fromSi(interval95.low());
        double above = unit.fromSi(interval95.high()) - value;
        double half = (below + above) / 2;
        if (half == 0) {
            return exact(decimal(si, unit));
        }
        int places = Rounding.forDesk(value, half).plusMinus().scale();
        var middle = Rounding.toDecimals(value, places);
        return new Stated(
                middle.subtract(Rounding.toDecimals(Math.max(0, below), places)),
                middle,
                middle.add(Rounding.toDecimals(Math.max(0, above), places)));
    }

    /// A value known without a width.
    public static Stated exact(BigDecimal value) {
        return new Stated(value, value, value);
    }

    /// An SI value as the decimal that was written in a unit, before it was converted.
    public static BigDecimal decimal(double si, Unit unit) {
        var written = Rounding.toSignificant(unit.fromSi(si), EXACT_DIGITS).stripTrailingZeros();
        return written.scale() < 0 ? written.setScale(0) : written;
    }
}
