package org.measuredmile.quantity;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import javax.measure.IncommensurableException;
import javax.measure.format.MeasurementParseException;
import tech.units.indriya.format.SimpleUnitFormat;
import tech.units.indriya.unit.Units;

/// Units that this product's own table does not hold, from the general library of units; loaded when first
/// needed.
///
/// Shape: a spelling in the library's notation (`MPa`, `km/s`), as a conversion into the SI unit of a
/// dimension.
final class UnitLibrary {
    private UnitLibrary() {}

    /// What the library knows of a spelling.
    sealed interface Found {
        record Fitting(DoubleUnaryOperator toSi) implements Found {}

        record OtherDimension() implements Found {}

        record Unknown() implements Found {}
    }

    static Found find(String spelling, Dimension dimension) {
        // The library would take "m/10" and "m 5" for units.
        if (spelling.chars().anyMatch(Character::isDigit)) {
            return new Found.Unknown();
        }
        javax.measure.Unit<?> unit;
        try {
            unit = SimpleUnitFormat.getInstance().parse(spelling.strip());
        } catch (MeasurementParseException | IllegalArgumentException | UnsupportedOperationException _) {
            return new Found.Unknown();
        }
        javax.measure.Unit<?> si = SiUnits.BY_DIMENSION.get(dimension);
        if (si == null || unit.equals(tech.units.indriya.AbstractUnit.ONE)) {
            return new Found.Unknown();
        }
        if (!unit.isCompatible(si)) {
            return new Found.OtherDimension();
        }
        try {
            var converter = unit.getConverterToAny(si);
            return new Found.Fitting(value -> converter.convert(value));
        } catch (IncommensurableException _) {
            return new Found.OtherDimension();
        }
    }

    private static final class SiUnits {
        static final Map<Dimension, javax.measure.Unit<?>> BY_DIMENSION = byDimension();

        private static Map<Dimension, javax.measure.Unit<?>> byDimension() {
            var units = new EnumMap<Dimension, javax.measure.Unit<?>>(Dimension.class);
            units.put(Dimension.LENGTH, Units.METRE);
            units.put(Dimension.SPEED, Units.METRE_PER_SECOND);
            units.put(Dimension.TIME, Units.SECOND);
            units.put(Dimension.MASS, Units.KILOGRAM);
            units.put(Dimension.ACCELERATION, Units.METRE_PER_SQUARE_SECOND);
            units.put(Dimension.FORCE, Units.NEWTON);
            units.put(Dimension.TORQUE, Units.NEWTON.multiply(Units.METRE));
            units.put(Dimension.POWER, Units.WATT);
            units.put(Dimension.ENERGY, Units.JOULE);
            units.put(Dimension.ENERGY_PER_DISTANCE, Units.JOULE.divide(Units.METRE));
            units.put(Dimension.POWER_PER_MASS, Units.WATT.divide(Units.KILOGRAM));
            units.put(Dimension.PRESSURE, Units.PASCAL);
            units.put(Dimension.TEMPERATURE, Units.KELVIN);
            units.put(Dimension.DENSITY, Units.KILOGRAM.divide(Units.CUBIC_METRE));
            units.put(Dimension.AREA, Units.SQUARE_METRE);
            units.put(Dimension.ANGLE, Units.RADIAN);
            units.put(Dimension.ANGULAR_RATE, Units.RADIAN.divide(Units.SECOND));
            units.put(Dimension.FREQUENCY, Units.HERTZ);
            units.put(Dimension.VOLTAGE, Units.VOLT);
            units.put(Dimension.CURRENT, Units.AMPERE);
            units.put(Dimension.CHARGE, Units.COULOMB);
            units.put(Dimension.ILLUMINANCE, Units.LUX);
            units.put(Dimension.MAGNETIC_FLUX_DENSITY, Units.TESLA);
            return units;
        }
    }
}
