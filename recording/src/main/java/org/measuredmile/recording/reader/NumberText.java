package org.measuredmile.recording.reader;

import java.util.OptionalDouble;

/// Reads numbers as instruments write them, whatever the machine's own language.
///
/// Words that Java would take for numbers ("NaN", "Infinity", "1f", "0x10") are no numbers here.
final class NumberText {
    private static final int LONGEST = 64;
    /// So many digits fit into 64 bits whatever they are.
    static final int MOST_DIGITS = 19;

    private NumberText() {}

    /// A cell split into the number it begins with and what follows it, without blanks around.
    record Leading(double value, String rest) {}

    /// A number and nothing else; empty for anything else.
    static OptionalDouble parse(String text) {
        int end = endOfNumber(text, 0, '.');
        return end > 0 && end == text.length() ? finite(text) : OptionalDouble.empty();
    }

    /// The number that stands between two places of a buffer, and nothing else; NaN for anything else.
    ///
    /// The same doubles as [#parse(String)] gives, several times as fast and without an object.
    static double parse(char[] text, int from, int to, char decimalMark) {
        int at = from;
        boolean negative = at < to && text[at] == '-';
        if (negative || (at < to && text[at] == '+')) {
            at++;
        }
        int first = at;
        long digits = 0;
        char digit;
        while (at < to && (digit = (char) (text[at] - '0')) <= 9) {
            digits = digits * 10 + digit;
            at++;
        }
        int seen = at - first;
        int decimals = 0;
        if (at < to && text[at] == decimalMark) {
            int mark = at++;
            while (at < to && (digit = (char) (text[at] - '0')) <= 9) {
                digits = digits * 10 + digit;
                at++;
            }
            decimals = at - mark - 1;
            seen += decimals;
        }
        if (seen == 0) {
            return Double.NaN;
        }
        double size = at == to && seen <= MOST_DIGITS ? ExactDouble.of(digits, -decimals) : Double.NaN;
        if (!Double.isNaN(size)) {
            return negative ? -size : size;
        }
        String asWritten = new String(text, from, to - from);
        return parse(
                        decimalMark == '.'
                                ? asWritten
                                : asWritten.replace('.', '?').replace(decimalMark, '.'))
                .orElse(Double.NaN);
    }

    /// Whether a text holds a number and nothing else.
    static boolean isPlain(String text, char decimalMark) {
        int end = endOfNumber(text, 0, decimalMark);
        return end > 0 && end == text.length();
    }

    /// The number that a cell begins with; its value is NaN when it begins with none.
    static Leading leading(String cell, char decimalMark) {
        String text = cell.strip();
        int end = endOfNumber(text, 0, decimalMark);
        if (end <= 0) {
            return new Leading(Double.NaN, text);
        }
        String number = text.substring(0, end).replace(decimalMark, '.');
        return new Leading(
                finite(number).orElse(Double.NaN), text.substring(end).strip());
    }

    private static OptionalDouble finite(String number) {
        double value = Double.parseDouble(number);
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    private static int endOfNumber(String text, int from, char decimalMark) {
        int limit = Math.min(text.length(), LONGEST);
        int i = from;
        if (i < limit && (text.charAt(i) == '-' || text.charAt(i) == '+')) {
            i++;
        }
        int firstDigit = i;
        i = digitsEnd(text, i, limit);
        int digits = i - firstDigit;
        if (i < limit && text.charAt(i) == decimalMark) {
            int after = digitsEnd(text, i + 1, limit);
            digits += after - i - 1;
            i = after;
        }
        if (digits == 0) {
            return -1;
        }
        return exponentEnd(text, i, limit);
    }

    private static int exponentEnd(String text, int at, int limit) {
        if (at >= limit || (text.charAt(at) != 'e' && text.charAt(at) != 'E')) {
            return at;
        }
        int sign = at + 1 < limit && (text.charAt(at + 1) == '-' || text.charAt(at + 1) == '+') ? 1 : 0;
        int first = at + 1 + sign;
        int end = digitsEnd(text, first, limit);
        return end > first ? end : at;
    }

    private static int digitsEnd(String text, int from, int limit) {
        int i = from;
        while (i < limit && text.charAt(i) >= '0' && text.charAt(i) <= '9') {
            i++;
        }
        return i;
    }
}
