package org.measuredmile.comparison.sentence;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.measuredmile.quantity.Dimension;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.Rounding.Rounded;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitSystem;

/// Quantities as they are said aloud: numbers and units in words, times as minutes and seconds.
///
/// Shape: values go in in SI units and are rounded once, by the rule for speech of [QuantityPrinter.Digits#SPEECH].
final class SpokenQuantity {
    private static final BigDecimal SIXTY = BigDecimal.valueOf(60);
    /// From here on a time whose half-width is a minute or more is said in minutes.
    private static final double TEN_MINUTES_S = 600;

    private SpokenQuantity() {}

    /// A value with the half-width of its interval: `twenty-one point four feet, give or take six tenths of a
    /// foot`.
    static String figure(double si, double halfWidthSi, QuantityKind kind, UnitSystem system) {
        Rounded rounded;
        Unit unit = kind.shown(system);
        if (kind.si().dimension() == Dimension.TIME) {
            boolean inMinutes = Math.abs(si) >= TEN_MINUTES_S && halfWidthSi >= 60;
            unit = inMinutes ? Unit.MINUTE : Unit.SECOND;
        }
        rounded = QuantityPrinter.speech(system).rounded(si, halfWidthSi, unit);
        String value = amount(rounded.value(), unit);
        return rounded.plusMinus().signum() == 0
                ? value
                : value + ", give or take " + giveOrTake(rounded.plusMinus(), unit);
    }

    /// A half-width behind its value: from one on the unit is understood.
    private static String giveOrTake(BigDecimal halfWidth, Unit unit) {
        boolean understood = halfWidth.compareTo(BigDecimal.ONE) >= 0 && unit.dimension() != Dimension.TIME;
        return understood ? NumberWords.decimal(halfWidth) : margin(halfWidth, unit);
    }

    /// A value alone, to a number of digits after the point.
    static String value(double si, QuantityKind kind, UnitSystem system, int decimals) {
        var unit = kind.shown(system);
        return amount(decimal(si, unit).setScale(decimals, RoundingMode.HALF_UP), unit);
    }

    /// A lower bound, rounded down to the place that the half-width is said to.
    static String atLeast(double lowSi, double halfWidthSi, QuantityKind kind, UnitSystem system) {
        var unit = kind.shown(system);
        int place = QuantityPrinter.speech(system)
                .rounded(lowSi, halfWidthSi, unit)
                .value()
                .scale();
        return "at least " + amount(decimal(lowSi, unit).setScale(place, RoundingMode.FLOOR), unit);
    }

    /// About how much it is in the other system: to the coarsest step that is no wider than the half-width.
    static String about(double si, double halfWidthSi, QuantityKind kind, UnitSystem system) {
        var unit = kind.shown(system);
        BigDecimal step = step(decimal(unit.differenceFromSi(halfWidthSi)));
        BigDecimal value =
                decimal(si, unit).divide(step, 0, RoundingMode.HALF_UP).multiply(step);
        return "about " + amount(value, unit);
    }

    private static BigDecimal decimal(double si, Unit unit) {
        return decimal(unit.fromSi(si));
    }

    private static BigDecimal decimal(double value) {
        return BigDecimal.valueOf(value);
    }

    /// The largest of … 0.1, 0.5, 1, 5, 10, 50 … that does not exceed the half-width.
    private static BigDecimal step(BigDecimal halfWidth) {
        if (halfWidth.signum() <= 0) {
            return new BigDecimal("0.1");
        }
        int exponent = halfWidth.precision() - halfWidth.scale() - 1;
        BigDecimal power = BigDecimal.ONE.scaleByPowerOfTen(exponent);
        BigDecimal five = power.multiply(BigDecimal.valueOf(5));
        return halfWidth.compareTo(five) >= 0 ? five : power;
    }

    /// A number with its unit: `one foot`, `half a mile`, `one minute nineteen`.
    static String amount(BigDecimal number, Unit unit) {
        if (unit.dimension() == Dimension.TIME && isByTheClock(number, unit)) {
            return clock(number, unit);
        }
        UnitWords words = UnitWords.of(unit);
        BigDecimal stripped = number.stripTrailingZeros();
        String fraction = simpleFraction(stripped);
        if (!fraction.isEmpty() && unit != Unit.ONE) {
            return fraction + words.half();
        }
        boolean single = stripped.abs().compareTo(BigDecimal.ONE) == 0;
        return (NumberWords.decimal(number) + " " + (single ? words.one() : words.many())).strip();
    }

    private static String simpleFraction(BigDecimal number) {
        if (number.compareTo(NumberWords.HALF) == 0) {
            return "half ";
        }
        if (number.compareTo(NumberWords.QUARTER) == 0) {
            return "a quarter of ";
        }
        return number.compareTo(NumberWords.THREE_QUARTERS) == 0 ? "three quarters of " : "";
    }

    /// A half-width: tenths and hundredths as such, `six tenths of a foot`.
    static String margin(BigDecimal number, Unit unit) {
        BigDecimal stripped = number.stripTrailingZeros();
        boolean below1 = stripped.compareTo(BigDecimal.ONE) < 0;
        if (unit == Unit.ONE || !below1 || !simpleFraction(stripped).isEmpty() || stripped.scale() > 3) {
            return amount(number, unit);
        }
        String part = switch (stripped.scale()) {
            case 1 -> "tenth";
            case 2 -> "hundredth";
            default -> "thousandth";
        };
        long parts = stripped.unscaledValue().longValueExact();
        String count = parts == 1 ? "a " + part : NumberWords.whole(parts) + " " + part + "s";
        return count + " of " + UnitWords.of(unit).half();
    }

    private static boolean isByTheClock(BigDecimal number, Unit unit) {
        return (unit == Unit.SECOND || unit == Unit.MINUTE) && number.abs().compareTo(SIXTY) >= 0;
    }

    /// `one minute nineteen` of seconds, `two hours eight` of minutes.
    private static String clock(BigDecimal number, Unit unit) {
        BigDecimal[] split = number.abs().divideAndRemainder(SIXTY);
        String sign = number.signum() < 0 ? "minus " : "";
        long large = split[0].longValueExact();
        if (unit == Unit.SECOND && large >= 60) {
            return sign
                    + clock(split[0], Unit.MINUTE)
                    + (split[1].signum() == 0 ? "" : ", " + amount(split[1], Unit.SECOND));
        }
        String name = unit == Unit.SECOND ? "minute" : "hour";
        String first = NumberWords.whole(large) + " " + name + (large == 1 ? "" : "s");
        return sign + first + (split[1].signum() == 0 ? "" : " " + NumberWords.decimal(split[1]));
    }
}
