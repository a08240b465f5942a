package org.measuredmile.desk.web.view;

import org.measuredmile.quantity.Printed;
import org.measuredmile.quantity.QuantityPrinter;

/// A result as a page sets it: value, half-width and unit apart, and the same in the other system.
///
/// Shape: `other` is empty where both systems print alike.
public record ValueView(String value, String plusMinus, String unit, String other) {
    static ValueView of(QuantityPrinter.InBoth both) {
        Printed first = both.first();
        String other = both.other().text();
        return new ValueView(first.value(), first.plusMinus(), first.unit(), other.equals(first.text()) ? "" : other);
    }

    /// Value, half-width and unit as one text.
    public String text() {
        return new Printed(value, plusMinus, unit).text();
    }
}
