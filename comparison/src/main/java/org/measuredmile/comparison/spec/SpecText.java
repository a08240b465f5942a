package org.measuredmile.comparison.spec;

import java.math.BigDecimal;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.Rounding;
import org.measuredmile.quantity.Unit;

/// Prints the numbers of a specification, which have no interval.
final class SpecText {
    private static final int DIGITS = 4;

    private SpecText() {}

    /// A value in a unit, to four digits without the zeros at its end: `672 Wh`, `32.19 km/h`.
    static String plain(double si, Unit unit) {
        BigDecimal value = Rounding.toSignificant(unit.fromSi(si), DIGITS).stripTrailingZeros();
        String number = QuantityPrinter.digits(value.scale() < 0 ? value.setScale(0) : value);
        return unit.symbol().isEmpty() ? number : number + " " + unit.symbol();
    }
}
