package org.measuredmile.comparison.legal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.Unit;

/// A value and its 95 % interval as decimals in the unit of the text that it is held beside.
///
/// Shape: the value is rounded to the printed digit once. The ends of its interval are rounded outward to that digit,
/// so
/// that whoever repeats the comparison from the print comes to the same answer, and rounding alone neither accuses nor
/// acquits. A value without uncertainty keeps its digits.
public record Beside(BigDecimal value, BigDecimal low, BigDecimal high, Unit unit) {
    /// Two decimals of a mile or a kilometre an hour, of a watt or a metre.
    private static final int PRINTED = 2;
    /// What is finer than this is the noise of binary numbers.
    private static final int NOISE = 9;

    /// A measured value, in SI, with its interval.
    public static Beside of(double si, Interval interval, Unit unit) {
        BigDecimal value = in(unit, si);
        BigDecimal low = in(unit, interval.low());
        BigDecimal high = in(unit, interval.high());
        if (low.compareTo(high) == 0) {
            return new Beside(value, value, value, unit);
        }
        return new Beside(
                value.setScale(PRINTED, RoundingMode.HALF_EVEN),
                low.setScale(PRINTED, RoundingMode.FLOOR),
                high.setScale(PRINTED, RoundingMode.CEILING),
                unit);
    }

    /// A value that is taken as it stands: a claim, a mark.
    public static Beside exactly(double si, Unit unit) {
        return of(si, new Interval(si, si), unit);
    }

    static BigDecimal in(Unit unit, double si) {
        var decimal = BigDecimal.valueOf(unit.fromSi(si))
                .setScale(NOISE, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return decimal.scale() < 0 ? decimal.setScale(0) : decimal;
    }

    /// Half the width of the interval: the guard band where it is symmetric.
    public BigDecimal halfWidth() {
        return high.subtract(low).divide(BigDecimal.TWO);
    }

    /// `20.70 ± 0.31 mph`, or the value alone where it is exact.
    public String text() {
        boolean exact = low.compareTo(high) == 0;
        return exact
                ? value.toPlainString() + " " + unit.symbol()
                : value.toPlainString() + " ± "
                        + halfWidth().setScale(PRINTED, RoundingMode.CEILING).toPlainString() + " " + unit.symbol();
    }
}
