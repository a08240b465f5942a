package org.measuredmile.quantity;

/// A quantity ready to be shown, in the parts that a page sets apart: value, half-width of its interval, unit.
///
/// Shape: `plusMinus` is empty where no half-width belongs, `unit` where there is none; signs and digits are the
/// printed ones (true minus, comma between thousands).
public record Printed(String value, String plusMinus, String unit) {
    static final String NO_BREAK_SPACE = "\u00a0";

    /// The whole, held together by no-break spaces: `21.40 ± 0.61 ft`.
    public String text() {
        return number() + unitSpaced();
    }

    /// Value and half-width without the unit: `21.40 ± 0.61`.
    public String number() {
        return plusMinus.isEmpty() ? value : value + NO_BREAK_SPACE + "±" + NO_BREAK_SPACE + plusMinus;
    }

    private String unitSpaced() {
        boolean closeUp = unit.isEmpty() || unit.equals("°");
        return closeUp ? unit : NO_BREAK_SPACE + unit;
    }
}
