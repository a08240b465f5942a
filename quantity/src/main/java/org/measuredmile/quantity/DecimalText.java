package org.measuredmile.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/// Reads the number part of a quantity: decimals with either mark, thousands, fractions.
///
/// Shape: signs are the caller's; a comma that could be a decimal mark as well as a thousands mark (`1,312`) is
/// refused unless commas are known to be thousands.
final class DecimalText {
    /// What a number may look like, before it is judged: `6`, `6.81`, `6,81`, `1,312.5`, `6 1/2`, `1/2`, `1.2e3`.
    static final String PATTERN =
            "(?:\\d{1,9} +\\d{1,3}/\\d{1,3}|\\d{1,3}/\\d{1,3}|(?:\\d[\\d.,]*|[.,]\\d[\\d.,]*)(?:[eE][+-]?\\d{1,3})?)";

    private static final Pattern FRACTION = Pattern.compile("(?:(\\d+) +)?(\\d+)/(\\d+)");
    private static final Pattern DECIMAL = Pattern.compile("(\\d*)(?:[.](\\d+))?([eE][+-]?\\d+)?");
    private static final Pattern THOUSANDS = Pattern.compile("\\d{1,3}(?:,\\d{3})+(?:[.]\\d+)?");
    private static final Pattern DECIMAL_COMMA = Pattern.compile("\\d*,\\d+|\\d{1,3}(?:[.]\\d{3})+,\\d+");
    private static final Pattern EITHER = Pattern.compile("[1-9]\\d{0,2},\\d{3}");

    private DecimalText() {}

    /// How a comma is understood.
    enum Comma {
        /// As the decimal mark or the thousands mark, whichever it can only be.
        UNAMBIGUOUS,
        /// As the thousands mark only, as this product prints it.
        THOUSANDS
    }

    /// A number and the step of its last digit or fraction.
    record Decimal(BigDecimal number, BigDecimal step) {}

    /// The number read, or why not.
    sealed interface Outcome {
        record Read(Decimal decimal) implements Outcome {}

        record Refused(Parsed.Fault fault) implements Outcome {}
    }

    static Outcome read(String text, Comma comma) {
        Matcher fraction = FRACTION.matcher(text);
        if (fraction.matches()) {
            return fraction(fraction, text);
        }
        if (text.indexOf(',') < 0) {
            return decimal(text, text);
        }
        if (comma == Comma.UNAMBIGUOUS && EITHER.matcher(text).matches()) {
            String plain = text.replace(",", "");
            String pointed = text.replace(',', '.');
            return refused("\"" + text + "\" may be " + plain + " or " + pointed, "write " + plain + " or " + pointed);
        }
        if (THOUSANDS.matcher(text).matches() && !text.startsWith("0")) {
            return decimal(text.replace(",", ""), text);
        }
        if (comma == Comma.UNAMBIGUOUS && DECIMAL_COMMA.matcher(text).matches()) {
            return decimal(text.replace(".", "").replace(',', '.'), text);
        }
        return notANumber(text);
    }

    private static Outcome decimal(String text, String asWritten) {
        Matcher decimal = DECIMAL.matcher(text);
        // Some hands leave the point behind a whole number: "6."
        String closed = text.endsWith(".") ? text.substring(0, text.length() - 1) : text;
        if (closed.isEmpty() || !(decimal.matches() || DECIMAL.matcher(closed).matches())) {
            return notANumber(asWritten);
        }
        var number = new BigDecimal(closed);
        return new Outcome.Read(new Decimal(number, number.ulp()));
    }

    private static Outcome fraction(Matcher fraction, String text) {
        var top = new BigDecimal(fraction.group(2));
        var bottom = new BigDecimal(fraction.group(3));
        if (bottom.signum() == 0 || top.compareTo(bottom) >= 0) {
            return refused("\"" + text + "\" is no proper fraction", "write it as a decimal");
        }
        String whole = fraction.group(1);
        BigDecimal step = BigDecimal.ONE.divide(bottom, MathContext.DECIMAL64);
        BigDecimal part = top.divide(bottom, MathContext.DECIMAL64);
        BigDecimal number = whole == null ? part : part.add(new BigDecimal(whole));
        return new Outcome.Read(new Decimal(number, step));
    }

    private static Outcome notANumber(String text) {
        return refused("\"" + text + "\" is not a number", "write digits with a decimal point");
    }

    private static Outcome refused(String message, String remedy) {
        return new Outcome.Refused(new Parsed.Fault(message, remedy));
    }
}
