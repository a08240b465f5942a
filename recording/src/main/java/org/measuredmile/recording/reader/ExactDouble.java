package org.measuredmile.recording.reader;

import java.math.BigInteger;

/// The double nearest to a decimal number of up to 19 digits, as `Double.parseDouble` gives it, without a text.
///
/// Error: NaN where these shortcuts cannot prove which double is nearest; then the text has to be asked.
/// Source: W. D. Clinger, How to read floating point numbers accurately, PLDI 1990 (up to 2^53); D. Lemire, Number
/// parsing at a gigabyte per second, Software: Practice and Experience 51 (2021) 1700-1727 (longer ones).
final class ExactDouble {
    private static final double[] EXACT_TENS = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };
    private static final long EXACT_WHOLE = 1L << 53;
    private static final int LEAST_POWER = -60;
    private static final int MOST_POWER = 40;
    /// For each power the upper and the lower 64 of the first 128 binary digits of five to that power.
    private static final long[] FIVES = fives();

    private ExactDouble() {}

    /// The double nearest to `digits` · 10^`power`; `digits` is taken as unsigned.
    static double of(long digits, int power) {
        if (digits >= 0 && digits <= EXACT_WHOLE) {
            if (power == 0) {
                return digits;
            }
            if (power < 0 && power >= -22) {
                return digits / EXACT_TENS[-power];
            }
            if (power > 0 && power <= 22) {
                return digits * EXACT_TENS[power];
            }
        }
        if (digits == 0) {
            return 0;
        }
        return power < LEAST_POWER || power > MOST_POWER ? Double.NaN : longer(digits, power);
    }

    private static double longer(long digits, int power) {
        int shift = Long.numberOfLeadingZeros(digits);
        long whole = digits << shift;
        int at = 2 * (power - LEAST_POWER);
        long upper = Math.unsignedMultiplyHigh(whole, FIVES[at]);
        long lower = whole * FIVES[at];
        if ((upper & 0x1FF) == 0x1FF) {
            long more = Math.unsignedMultiplyHigh(whole, FIVES[at + 1]);
            lower += more;
            upper += Long.compareUnsigned(lower, more) < 0 ? 1 : 0;
        }
        boolean mayBeHalf = lower == -1L || Long.compareUnsigned(lower, 1) <= 0;
        if (mayBeHalf) {
            return Double.NaN;
        }
        int upperBit = (int) (upper >>> 63);
        long mantissa = upper >>> (upperBit + 9);
        mantissa += mantissa & 1;
        mantissa >>>= 1;
        long exponent = ((217_706L * power) >> 16) + 63 + upperBit - shift + 1023;
        if (mantissa == EXACT_WHOLE) {
            mantissa >>>= 1;
            exponent++;
        }
        return exponent <= 0 || exponent >= 2047
                ? Double.NaN
                : Double.longBitsToDouble((exponent << 52) | (mantissa & ((EXACT_WHOLE >>> 1) - 1)));
    }

    private static long[] fives() {
        long[] fives = new long[2 * (MOST_POWER - LEAST_POWER + 1)];
        for (int power = LEAST_POWER; power <= MOST_POWER; power++) {
            BigInteger five = BigInteger.valueOf(5).pow(Math.abs(power));
            BigInteger binary = power >= 0 ? five : reciprocal(five);
            BigInteger cut = binary.shiftRight(binary.bitLength() - 128);
            int at = 2 * (power - LEAST_POWER);
            fives[at] = cut.shiftRight(64).longValue();
            fives[at + 1] = cut.longValue();
        }
        return fives;
    }

    /// One over a number, rounded up after its first 128 binary digits or later.
    private static BigInteger reciprocal(BigInteger five) {
        int length = five.bitLength();
        boolean isShort = five.compareTo(BigInteger.valueOf(5).pow(27)) <= 0;
        return BigInteger.ONE
                .shiftLeft(isShort ? length + 127 : 2 * length + 128)
                .divide(five)
                .add(BigInteger.ONE);
    }
}
