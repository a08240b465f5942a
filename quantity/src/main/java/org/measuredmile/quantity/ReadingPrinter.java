package org.measuredmile.quantity;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/// Prints readings as they are read off a tape, a scale or a watch: `21 ft 6½ in`, `62 lb 6 oz`, `1:08.3`, `44
/// psi`.
///
/// Shape: the smallest step is rounded first and then split, so that no reading shows 12 in or 16 oz.
/// Error: IllegalArgumentException for what is not a finite number.
public final class ReadingPrinter {
    private static final String SPACE = Printed.NO_BREAK_SPACE;

    private ReadingPrinter() {}

    /// Feet and inches to the nearest half inch.
    public static String feetAndHalfInches(double metres) {
        long halves = whole(Unit.INCH.decimalFromSi(metres).multiply(BigDecimal.TWO));
        long magnitude = Math.abs(halves);
        long inches = magnitude / 2 % 12;
        String half = magnitude % 2 == 0 ? "" : "½";
        String shownInches = inches == 0 && !half.isEmpty() ? half : inches + half;
        return sign(halves) + joined(magnitude / 24, "ft", shownInches, "in");
    }

    /// Feet and inches to the nearest inch.
    public static String feetAndInches(double metres) {
        long inches = whole(Unit.INCH.decimalFromSi(metres));
        long magnitude = Math.abs(inches);
        return sign(inches) + joined(magnitude / 12, "ft", Long.toString(magnitude % 12), "in");
    }

    /// Pounds and ounces to the nearest ounce.
    public static String poundsAndOunces(double kilograms) {
        long ounces = whole(Unit.OUNCE.decimalFromSi(kilograms));
        long magnitude = Math.abs(ounces);
        return sign(ounces) + joined(magnitude / 16, "lb", Long.toString(magnitude % 16), "oz");
    }

    /// A reading in the unit it was written in, to the step it was written with.
    ///
    /// Shape: lengths in feet whose step is no decimal of a foot come as feet and inches, masses in pounds
    /// likewise as pounds and ounces, times in minutes or hours by the clock; everything else as a decimal.
    public static String asRead(Parsed.Value reading) {
        Unit unit = reading.unit();
        double step = unit.differenceFromSi(reading.resolutionSi());
        if (unit == Unit.FOOT && !isDecimal(step)) {
            return feetAndHalfInches(reading.si());
        }
        if (unit == Unit.POUND && !isDecimal(step)) {
            return poundsAndOunces(reading.si());
        }
        if (unit == Unit.HOUR && reading.resolutionSi() == 60) {
            return hoursAndMinutes(reading.si());
        }
        if ((unit == Unit.MINUTE || unit == Unit.HOUR) && !isDecimal(step)) {
            return byTheClock(reading.si(), decimals(reading.resolutionSi()));
        }
        return QuantityPrinter.in(unit, reading.si(), decimals(step)).text();
    }

    /// A time by the clock: `1:08.3` in minutes and seconds, `4:38:10` from an hour on, `8.3 s` under a minute.
    public static String byTheClock(double seconds, int decimals) {
        BigDecimal rounded = Rounding.toDecimals(seconds, decimals);
        boolean underAMinute = rounded.abs().compareTo(BigDecimal.valueOf(60)) < 0;
        return DurationText.clock(rounded) + (underAMinute ? SPACE + "s" : "");
    }

    /// Hours and minutes to the nearest minute: `4 h 38 min`.
    public static String hoursAndMinutes(double seconds) {
        long minutes = whole(Unit.MINUTE.decimalFromSi(seconds));
        long magnitude = Math.abs(minutes);
        return sign(minutes) + joined(magnitude / 60, "h", Long.toString(magnitude % 60), "min");
    }

    private static String joined(long large, String largeUnit, String small, String smallUnit) {
        List<String> parts = new ArrayList<>();
        if (large != 0) {
            parts.add(large + SPACE + largeUnit);
        }
        parts.add(small + SPACE + smallUnit);
        return String.join(SPACE, parts);
    }

    private static long whole(BigDecimal number) {
        return Rounding.toDecimals(number, 0).longValueExact();
    }

    private static String sign(long number) {
        return number < 0 ? "\u2212" : "";
    }

    private static boolean isDecimal(double step) {
        double logarithm = StrictMath.log10(step);
        return Math.abs(logarithm - Math.rint(logarithm)) < 1e-9;
    }

    private static int decimals(double step) {
        return Math.max(0, (int) Math.ceil(-StrictMath.log10(step) - 1e-9));
    }
}
