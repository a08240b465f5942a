package org.measuredmile.quantity;

import java.util.Arrays;
import java.util.List;

/// A kind of quantity that the road tests deal in, with the SI unit that every stored value of it is in and
/// the units it is shown in.
///
/// Unit: `si` is the unit of every bare double of this kind; `metric` and `imperial` are what people are
/// shown.
public enum QuantityKind {
    LENGTH(Unit.METRE, Unit.METRE, Unit.FOOT),
    /// Lengths of a part of a bike, of millimetres rather than metres.
    PART_LENGTH(Unit.METRE, Unit.MILLIMETRE, Unit.INCH),
    /// Distances along a road, of kilometres rather than metres.
    DISTANCE(Unit.METRE, Unit.KILOMETRE, Unit.MILE),
    SPEED(Unit.METRE_PER_SECOND, Unit.KILOMETRE_PER_HOUR, Unit.MILE_PER_HOUR),
    TIME(Unit.SECOND, Unit.SECOND, Unit.SECOND),
    MASS(Unit.KILOGRAM, Unit.KILOGRAM, Unit.POUND),
    ACCELERATION(Unit.METRE_PER_SECOND_SQUARED, Unit.METRE_PER_SECOND_SQUARED, Unit.FOOT_PER_SECOND_SQUARED),
    FORCE(Unit.NEWTON, Unit.NEWTON, Unit.POUND_FORCE),
    TORQUE(Unit.NEWTON_METRE, Unit.NEWTON_METRE, Unit.POUND_FORCE_FOOT),
    POWER(Unit.WATT, Unit.WATT, Unit.WATT),
    ENERGY(Unit.JOULE, Unit.WATT_HOUR, Unit.WATT_HOUR),
    ENERGY_PER_DISTANCE(Unit.JOULE_PER_METRE, Unit.WATT_HOUR_PER_KILOMETRE, Unit.WATT_HOUR_PER_MILE),
    /// A price of energy, in whatever money it was written in.
    MONEY_PER_ENERGY(Unit.PER_JOULE, Unit.PER_KILOWATT_HOUR, Unit.PER_KILOWATT_HOUR),
    /// What a distance costs, in the money that a price was written in.
    MONEY_PER_DISTANCE(Unit.PER_METRE, Unit.PER_HUNDRED_KILOMETRES, Unit.PER_HUNDRED_MILES),
    POWER_PER_MASS(Unit.WATT_PER_KILOGRAM, Unit.WATT_PER_KILOGRAM, Unit.WATT_PER_POUND),
    PRESSURE(Unit.PASCAL, Unit.KILOPASCAL, Unit.POUND_PER_SQUARE_INCH),
    TEMPERATURE(Unit.KELVIN, Unit.DEGREE_CELSIUS, Unit.DEGREE_FAHRENHEIT),
    DENSITY(Unit.KILOGRAM_PER_CUBIC_METRE, Unit.KILOGRAM_PER_CUBIC_METRE, Unit.KILOGRAM_PER_CUBIC_METRE),
    AREA(Unit.SQUARE_METRE, Unit.SQUARE_METRE, Unit.SQUARE_FOOT),
    ANGLE(Unit.RADIAN, Unit.DEGREE, Unit.DEGREE),
    ANGULAR_RATE(Unit.RADIAN_PER_SECOND, Unit.DEGREE_PER_SECOND, Unit.DEGREE_PER_SECOND),
    FREQUENCY(Unit.HERTZ, Unit.PER_MINUTE, Unit.PER_MINUTE),
    RATIO(Unit.ONE, Unit.PER_CENT, Unit.PER_CENT),
    VOLTAGE(Unit.VOLT, Unit.VOLT, Unit.VOLT),
    CURRENT(Unit.AMPERE, Unit.AMPERE, Unit.AMPERE),
    CHARGE(Unit.COULOMB, Unit.AMPERE_HOUR, Unit.AMPERE_HOUR),
    ILLUMINANCE(Unit.LUX, Unit.LUX, Unit.LUX),
    SOUND_LEVEL(Unit.DECIBEL_A, Unit.DECIBEL_A, Unit.DECIBEL_A),
    MAGNETIC_FLUX_DENSITY(Unit.TESLA, Unit.MICROTESLA, Unit.MICROTESLA),
    /// A whole number of things: teeth, satellites, frames.
    COUNT(Unit.ONE, Unit.ONE, Unit.ONE),
    /// A word, not a number: what a reading of text holds.
    WORD(Unit.ONE, Unit.ONE, Unit.ONE);

    private final Unit si;
    private final Unit metric;
    private final Unit imperial;

    QuantityKind(Unit si, Unit metric, Unit imperial) {
        this.si = si;
        this.metric = metric;
        this.imperial = imperial;
    }

    /// The SI unit that stored values of this kind are in.
    public Unit si() {
        return si;
    }

    /// The unit that people of the given system are shown.
    public Unit shown(UnitSystem system) {
        return switch (system) {
            case METRIC -> metric;
            case IMPERIAL -> imperial;
        };
    }

    /// Every unit that a value of this kind may be written in, in the order of [Unit].
    public List<Unit> units() {
        return Arrays.stream(Unit.values())
                .filter(unit -> unit.dimension() == si.dimension())
                .toList();
    }
}
