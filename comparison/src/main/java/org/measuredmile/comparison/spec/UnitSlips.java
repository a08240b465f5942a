package org.measuredmile.comparison.spec;

import java.util.Optional;
import java.util.function.DoublePredicate;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;

/// Names the slip by which a number may have got a wrong unit: what it would be in another unit of its kind.
final class UnitSlips {
    private UnitSlips() {}

    /// The other unit in which a number would be what is wanted, in words: `in mm it would be 80 mm`; nothing
    /// where no unit or more than one would do.
    static Optional<String> name(double si, Unit written, QuantityKind kind, DoublePredicate wanted) {
        double number = written.fromSi(si);
        var fitting = kind.units().stream()
                .filter(unit -> unit != written && isUsual(unit, kind))
                .filter(unit -> wanted.test(unit.toSi(number)))
                .toList();
        if (fitting.size() != 1) {
            return Optional.empty();
        }
        Unit unit = fitting.getFirst();
        return Optional.of("with " + unit.symbol() + " for " + written.symbol() + " it would be "
                + SpecText.plain(unit.toSi(number), unit) + ", which can be");
    }

    /// Units that a specification is printed in; a slip to nanoseconds is nobody's.
    private static boolean isUsual(Unit unit, QuantityKind kind) {
        return switch (kind) {
            case PART_LENGTH -> unit == Unit.MILLIMETRE || unit == Unit.CENTIMETRE || unit == Unit.INCH;
            case LENGTH -> unit == Unit.METRE || unit == Unit.CENTIMETRE || unit == Unit.FOOT || unit == Unit.INCH;
            case DISTANCE -> unit == Unit.KILOMETRE || unit == Unit.MILE;
            case SPEED -> unit == Unit.KILOMETRE_PER_HOUR || unit == Unit.MILE_PER_HOUR;
            case TIME -> unit == Unit.MINUTE || unit == Unit.HOUR;
            case MASS -> unit == Unit.KILOGRAM || unit == Unit.POUND;
            case CHARGE -> unit == Unit.AMPERE_HOUR || unit == Unit.MILLIAMPERE_HOUR;
            case PRESSURE -> unit == Unit.BAR || unit == Unit.KILOPASCAL || unit == Unit.POUND_PER_SQUARE_INCH;
            default -> true;
        };
    }
}
