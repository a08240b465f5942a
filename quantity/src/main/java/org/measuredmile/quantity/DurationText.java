package org.measuredmile.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.measuredmile.quantity.Rounding.Rounded;

/// Prints times: seconds under a minute, minutes and seconds under an hour, hours and minutes from there on.
///
/// Shape: which form is taken is decided on the rounded value, so that 59.96 s with a tenth of a second becomes
/// 1:00.0.
final class DurationText {
    private static final BigDecimal SIXTY = BigDecimal.valueOf(60);
    private static final BigDecimal HOUR_S = BigDecimal.valueOf(3600);

    private DurationText() {}

    /// A time with its half-width: `6.41 ± 0.28 s`, `1:19.4 ± 1.8 s`, `4 h 38 ± 12 min`.
    static Printed print(double seconds, double halfWidthS, QuantityPrinter printer) {
        Rounded inSeconds = printer.round(Rounding.decimal(seconds), Rounding.decimal(halfWidthS));
        if (inSeconds.value().abs().compareTo(HOUR_S) < 0) {
            boolean exact = inSeconds.plusMinus().signum() == 0;
            boolean byTheClock = inSeconds.value().abs().compareTo(SIXTY) >= 0;
            return new Printed(clock(inSeconds.value()), plusMinus(inSeconds), exact && byTheClock ? "" : "s");
        }
        Rounded inMinutes = printer.round(Unit.MINUTE.decimalFromSi(seconds), Unit.MINUTE.decimalFromSi(halfWidthS));
        return new Printed(hoursAndMinutes(inMinutes.value()), plusMinus(inMinutes), "min");
    }

    /// By the clock: `1:19.4` from a minute on, `4:38:10` from an hour on, plain seconds under a minute.
    static String clock(BigDecimal seconds) {
        BigDecimal magnitude = seconds.abs();
        if (magnitude.compareTo(SIXTY) < 0) {
            return QuantityPrinter.digits(seconds);
        }
        BigDecimal[] minutes = magnitude.divideAndRemainder(SIXTY);
        if (magnitude.compareTo(HOUR_S) < 0) {
            return sign(seconds) + minutes[0].toBigInteger() + ":" + twoDigits(minutes[1]);
        }
        BigDecimal[] hours = minutes[0].divideAndRemainder(SIXTY);
        String minutesPart = twoDigits(hours[1].setScale(0, RoundingMode.UNNECESSARY));
        return sign(seconds) + hours[0].toBigInteger() + ":" + minutesPart + ":" + twoDigits(minutes[1]);
    }

    private static String hoursAndMinutes(BigDecimal minutes) {
        BigDecimal[] split = minutes.abs().divideAndRemainder(SIXTY);
        String space = Printed.NO_BREAK_SPACE;
        return sign(minutes) + split[0].toBigInteger() + space + "h" + space + twoDigits(split[1]);
    }

    private static String sign(BigDecimal number) {
        return number.signum() < 0 ? "\u2212" : "";
    }

    private static String plusMinus(Rounded rounded) {
        return rounded.plusMinus().signum() == 0 ? "" : QuantityPrinter.digits(rounded.plusMinus());
    }

    /// A number of minutes or seconds with both its whole digits.
    private static String twoDigits(BigDecimal below60) {
        String plain = below60.toPlainString();
        return below60.compareTo(BigDecimal.TEN) < 0 ? "0" + plain : plain;
    }
}
