package org.measuredmile.recording.reader;

import java.math.BigDecimal;
import java.math.MathContext;

/// Prints a number for a message: three significant digits, no exponent, the same everywhere.
final class ShortNumber {
    private static final MathContext THREE = new MathContext(3);

    private ShortNumber() {}

    static String of(double value) {
        return value == 0
                ? "0"
                : new BigDecimal(value).round(THREE).stripTrailingZeros().toPlainString();
    }
}
