package org.measuredmile.recording.reader;

import java.math.BigDecimal;
import java.math.RoundingMode;

/// A time that is written as a number of some unit, exactly, in nanoseconds, half to even.
final class UnitTime {
    private static final int MOST_DIGITS = 18;
    private static final long[] TENS = new long[MOST_DIGITS + 1];

    static {
        TENS[0] = 1;
        for (int i = 1; i < TENS.length; i++) {
            TENS[i] = TENS[i - 1] * 10;
        }
    }

    private UnitTime() {}

    /// The time of a plain number between two places of a buffer; [IsoTime#OTHER_FORM] where it has an
    /// exponent, too many digits, or is none.
    static long ns(char[] text, int from, int to, long nsPerUnit, char decimalMark) {
        boolean negative = from < to && text[from] == '-';
        long digits = 0;
        int seen = 0;
        int decimals = -1;
        for (int at = negative ? from + 1 : from; at < to; at++) {
            int digit = text[at] - '0';
            if (digit >= 0 && digit <= 9) {
                digits = digits * 10 + digit;
                seen++;
                decimals += decimals >= 0 ? 1 : 0;
            } else if (text[at] == decimalMark && decimals < 0) {
                decimals = 0;
            } else {
                return IsoTime.OTHER_FORM;
            }
        }
        if (seen == 0 || seen > MOST_DIGITS) {
            return IsoTime.OTHER_FORM;
        }
        long size = scaled(digits, Math.max(decimals, 0), nsPerUnit);
        return size == IsoTime.OTHER_FORM || !negative ? size : -size;
    }

    private static long scaled(long digits, int decimals, long nsPerUnit) {
        if (decimals == 0 || nsPerUnit % TENS[decimals] == 0) {
            long each = decimals == 0 ? nsPerUnit : nsPerUnit / TENS[decimals];
            return Math.multiplyHigh(digits, each) == 0 && digits * each >= 0 ? digits * each : IsoTime.OTHER_FORM;
        }
        if (Math.multiplyHigh(digits, nsPerUnit) != 0 || digits * nsPerUnit < 0) {
            return IsoTime.OTHER_FORM;
        }
        long product = digits * nsPerUnit;
        long whole = product / TENS[decimals];
        long rest = product % TENS[decimals];
        long half = TENS[decimals] / 2;
        return whole + (rest > half || (rest == half && (whole & 1) == 1) ? 1 : 0);
    }

    /// The same for any plain number as text.
    static long ns(String number, double nsPerUnit) {
        return new BigDecimal(number)
                .multiply(BigDecimal.valueOf(nsPerUnit))
                .setScale(0, RoundingMode.HALF_EVEN)
                .longValue();
    }
}
