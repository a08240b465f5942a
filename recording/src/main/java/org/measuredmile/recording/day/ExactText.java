package org.measuredmile.recording.day;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitSystem;

/// Writes a stored value as the shortest text that reads back to the same value, bit for bit.
final class ExactText {
    /// Few enough digits to drop what a conversion left in the last ones: 18.5 °C rather than 18.499999999999943.
    private static final MathContext CLEAN = new MathContext(13, RoundingMode.HALF_EVEN);

    private ExactText() {}

    /// The value with its unit: in the metric unit people use where that comes back exactly, else in the SI unit.
    static String quantity(double si, QuantityKind kind) {
        for (Unit unit : List.of(kind.shown(UnitSystem.METRIC), kind.si())) {
            Optional<String> text = in(unit, si, kind);
            if (text.isPresent()) {
                return text.get();
            }
        }
        throw new IllegalArgumentException(si + " " + kind + " cannot be written so that it reads back");
    }

    private static Optional<String> in(Unit unit, double si, QuantityKind kind) {
        var shortest = new BigDecimal(Double.toString(unit.fromSi(si)));
        for (BigDecimal number : List.of(shortest.round(CLEAN), shortest)) {
            String text = unit.symbol().isEmpty() ? plain(number) : plain(number) + " " + unit.symbol();
            boolean same = QuantityText.parse(text, kind, unit) instanceof Parsed.Value read
                    && Double.compare(read.si(), si + 0.0) == 0;
            if (same) {
                return Optional.of(text);
            }
        }
        return Optional.empty();
    }

    /// A number without a unit.
    static String number(double value) {
        return plain(new BigDecimal(Double.toString(value)));
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
}
