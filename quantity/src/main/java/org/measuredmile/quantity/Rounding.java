package org.measuredmile.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/// The one place where numbers are rounded for printing.
///
/// Shape: a double is taken as its shortest decimal (20.25 is 20.25), and halves go away from zero (20.25 → 20.3,
/// −2.5 → −3).
/// Error: IllegalArgumentException for what is not a finite number, and for fewer than one significant digit.
/// Source: JCGM 100:2008, 7.2.6 (an uncertainty to at most two significant digits, the value to the same place).
public final class Rounding {
    private Rounding() {}

    /// A value and its half-width, rounded to the same place.
    public record Rounded(BigDecimal value, BigDecimal plusMinus) {}

    /// To a number of digits after the point; negative ones round to tens, hundreds and so on.
    public static BigDecimal toDecimals(double value, int decimals) {
        return toDecimals(decimal(value), decimals);
    }

    static BigDecimal toDecimals(BigDecimal value, int decimals) {
        return value.setScale(decimals, RoundingMode.HALF_UP);
    }

    /// To a number of significant digits; a carry keeps that number (0.0996 to two is 0.10).
    public static BigDecimal toSignificant(double value, int digits) {
        return toSignificant(decimal(value), digits);
    }

    private static BigDecimal toSignificant(BigDecimal value, int digits) {
        if (digits < 1) {
            throw new IllegalArgumentException(digits + " significant digits, at least 1 needed");
        }
        BigDecimal rounded = value.round(new MathContext(digits, RoundingMode.HALF_UP));
        if (rounded.signum() == 0) {
            return BigDecimal.ZERO.setScale(digits - 1);
        }
        return rounded.setScale(rounded.scale() + digits - rounded.precision());
    }

    /// For desk, tables and exports: the half-width to two significant digits, the value to the same place.
    ///
    /// Shape: a half-width of 0 leaves the value as it is.
    public static Rounded forDesk(double value, double halfWidth) {
        return forDesk(decimal(value), decimal(halfWidth));
    }

    static Rounded forDesk(BigDecimal value, BigDecimal halfWidth) {
        return together(value, halfWidth, toSignificant(halfWidth, 2));
    }

    /// For readers: the half-width to one significant digit, to two when it begins with 1; the value to the same
    /// place.
    ///
    /// Shape: a half-width of 0 leaves the value as it is.
    public static Rounded forProse(double value, double halfWidth) {
        return forProse(decimal(value), decimal(halfWidth));
    }

    static Rounded forProse(BigDecimal value, BigDecimal halfWidth) {
        return together(value, halfWidth, proseHalfWidth(halfWidth));
    }

    /// For saying aloud: the half-width to one significant digit, or to 1, 1½ or 2 where it begins with 1; the
    /// value to the place of its first digit.
    ///
    /// Shape: a half-width of 0 leaves the value as it is.
    public static Rounded forSpeech(double value, double halfWidth) {
        return forSpeech(decimal(value), decimal(halfWidth));
    }

    static Rounded forSpeech(BigDecimal value, BigDecimal halfWidth) {
        BigDecimal one = toSignificant(halfWidth, 1);
        BigDecimal two = toSignificant(halfWidth, 2);
        Rounded rounded = together(value, halfWidth, one);
        if (rounded.plusMinus().signum() == 0 || !beginsWithOne(two)) {
            return rounded;
        }
        // In tenths of the first digit: up to 12 is said as 10, up to 17 as 15, more as 20.
        int tenths = two.unscaledValue().intValue();
        int said = tenths <= 12 ? 10 : tenths <= 17 ? 15 : 20;
        BigDecimal spoken = BigDecimal.valueOf(said).scaleByPowerOfTen(-two.scale());
        return new Rounded(toDecimals(value, two.scale() - 1), spoken);
    }

    private static BigDecimal proseHalfWidth(BigDecimal halfWidth) {
        BigDecimal two = toSignificant(halfWidth, 2);
        if (beginsWithOne(two)) {
            return two;
        }
        BigDecimal one = toSignificant(halfWidth, 1);
        // 0.96 becomes 1, which begins with 1 and so is shown as 1.0.
        return beginsWithOne(one) ? one.setScale(one.scale() + 1) : one;
    }

    private static Rounded together(BigDecimal value, BigDecimal halfWidth, BigDecimal rounded) {
        if (halfWidth.signum() < 0) {
            throw new IllegalArgumentException("half-width " + halfWidth + " is below 0");
        }
        if (rounded.signum() == 0) {
            return new Rounded(value, BigDecimal.ZERO);
        }
        return new Rounded(toDecimals(value, rounded.scale()), rounded);
    }

    private static boolean beginsWithOne(BigDecimal number) {
        return number.unscaledValue().toString().startsWith("1");
    }

    /// The shortest decimal of a double.
    static BigDecimal decimal(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(value + " cannot be rounded");
        }
        return BigDecimal.valueOf(value);
    }
}
