package org.measuredmile.quantity;

import java.math.BigDecimal;
import java.math.MathContext;

/// A unit that a reading, a recording or a result may be in, and its exact ratio to the SI unit.
///
/// Unit: SI value = (value + offset) · numerator / denominator; ratios are exact, kept as numerator and
/// denominator in lowest terms.
/// Source: NIST Special Publication 811 (2008), appendix B (foot 0.3048 m, pound 0.45359237 kg, pound-force
/// from standard gravity 9.80665 m/s², international mile 1609.344 m, nautical mile 1852 m); SI Brochure,
/// 9th edition.
public enum Unit {
    ONE("", Dimension.ONE, 1, 1),
    PER_CENT("%", Dimension.ONE, 1, 100),
    METRE("m", Dimension.LENGTH, 1, 1),
    KILOMETRE("km", Dimension.LENGTH, 1000, 1),
    CENTIMETRE("cm", Dimension.LENGTH, 1, 100),
    MILLIMETRE("mm", Dimension.LENGTH, 1, 1000),
    FOOT("ft", Dimension.LENGTH, 3048, 10_000),
    INCH("in", Dimension.LENGTH, 254, 10_000),
    YARD("yd", Dimension.LENGTH, 9144, 10_000),
    MILE("mi", Dimension.LENGTH, 1_609_344, 1000),
    NAUTICAL_MILE("nmi", Dimension.LENGTH, 1852, 1),
    METRE_PER_SECOND("m/s", Dimension.SPEED, 1, 1),
    KILOMETRE_PER_HOUR("km/h", Dimension.SPEED, 1000, 3600),
    MILE_PER_HOUR("mph", Dimension.SPEED, 1_609_344, 3_600_000),
    KNOT("kn", Dimension.SPEED, 1852, 3600),
    FOOT_PER_SECOND("ft/s", Dimension.SPEED, 3048, 10_000),
    SECOND("s", Dimension.TIME, 1, 1),
    MILLISECOND("ms", Dimension.TIME, 1, 1000),
    MICROSECOND("µs", Dimension.TIME, 1, 1_000_000),
    NANOSECOND("ns", Dimension.TIME, 1, 1_000_000_000),
    MINUTE("min", Dimension.TIME, 60, 1),
    HOUR("h", Dimension.TIME, 3600, 1),
    KILOGRAM("kg", Dimension.MASS, 1, 1),
    GRAM("g", Dimension.MASS, 1, 1000),
    POUND("lb", Dimension.MASS, 45_359_237, 100_000_000),
    STONE("st", Dimension.MASS, 635_029_318, 100_000_000),
    OUNCE("oz", Dimension.MASS, 45_359_237, 1_600_000_000),
    METRE_PER_SECOND_SQUARED("m/s²", Dimension.ACCELERATION, 1, 1),
    FOOT_PER_SECOND_SQUARED("ft/s²", Dimension.ACCELERATION, 3048, 10_000),
    STANDARD_GRAVITY("gₙ", Dimension.ACCELERATION, 980_665, 100_000),
    NEWTON("N", Dimension.FORCE, 1, 1),
    POUND_FORCE("lbf", Dimension.FORCE, 44_482_216_152_605L, 10_000_000_000_000L),
    NEWTON_METRE("N·m", Dimension.TORQUE, 1, 1),
    POUND_FORCE_FOOT("lbf·ft", Dimension.TORQUE, 3_389_544_870_828_501L, 2_500_000_000_000_000L),
    WATT("W", Dimension.POWER, 1, 1),
    KILOWATT("kW", Dimension.POWER, 1000, 1),
    JOULE("J", Dimension.ENERGY, 1, 1),
    KILOJOULE("kJ", Dimension.ENERGY, 1000, 1),
    WATT_HOUR("Wh", Dimension.ENERGY, 3600, 1),
    KILOWATT_HOUR("kWh", Dimension.ENERGY, 3_600_000, 1),
    JOULE_PER_METRE("J/m", Dimension.ENERGY_PER_DISTANCE, 1, 1),
    WATT_HOUR_PER_KILOMETRE("Wh/km", Dimension.ENERGY_PER_DISTANCE, 36, 10),
    WATT_HOUR_PER_MILE("Wh/mi", Dimension.ENERGY_PER_DISTANCE, 3_600_000, 1_609_344),
    PER_JOULE("/J", Dimension.MONEY_PER_ENERGY, 1, 1),
    PER_KILOWATT_HOUR("/kWh", Dimension.MONEY_PER_ENERGY, 1, 3_600_000),
    PER_METRE("/m", Dimension.MONEY_PER_DISTANCE, 1, 1),
    PER_HUNDRED_KILOMETRES("/100 km", Dimension.MONEY_PER_DISTANCE, 1, 100_000),
    PER_HUNDRED_MILES("/100 mi", Dimension.MONEY_PER_DISTANCE, 1000, 160_934_400),
    WATT_PER_KILOGRAM("W/kg", Dimension.POWER_PER_MASS, 1, 1),
    WATT_PER_POUND("W/lb", Dimension.POWER_PER_MASS, 100_000_000, 45_359_237),
    PASCAL("Pa", Dimension.PRESSURE, 1, 1),
    HECTOPASCAL("hPa", Dimension.PRESSURE, 100, 1),
    KILOPASCAL("kPa", Dimension.PRESSURE, 1000, 1),
    BAR("bar", Dimension.PRESSURE, 100_000, 1),
    POUND_PER_SQUARE_INCH("psi", Dimension.PRESSURE, 44_482_216_152_605L, 6_451_600_000L),
    KELVIN("K", Dimension.TEMPERATURE, 1, 1),
    DEGREE_CELSIUS("°C", Dimension.TEMPERATURE, 273.15, 1, 1),
    DEGREE_FAHRENHEIT("°F", Dimension.TEMPERATURE, 459.67, 5, 9),
    KILOGRAM_PER_CUBIC_METRE("kg/m³", Dimension.DENSITY, 1, 1),
    SQUARE_METRE("m²", Dimension.AREA, 1, 1),
    SQUARE_FOOT("ft²", Dimension.AREA, 9_290_304, 100_000_000),
    RADIAN("rad", Dimension.ANGLE, 1, 1),
    DEGREE("°", Dimension.ANGLE, Math.PI, 180),
    RADIAN_PER_SECOND("rad/s", Dimension.ANGULAR_RATE, 1, 1),
    DEGREE_PER_SECOND("°/s", Dimension.ANGULAR_RATE, Math.PI, 180),
    HERTZ("Hz", Dimension.FREQUENCY, 1, 1),
    PER_MINUTE("/min", Dimension.FREQUENCY, 1, 60),
    VOLT("V", Dimension.VOLTAGE, 1, 1),
    MILLIVOLT("mV", Dimension.VOLTAGE, 1, 1000),
    AMPERE("A", Dimension.CURRENT, 1, 1),
    MILLIAMPERE("mA", Dimension.CURRENT, 1, 1000),
    COULOMB("C", Dimension.CHARGE, 1, 1),
    AMPERE_HOUR("Ah", Dimension.CHARGE, 3600, 1),
    MILLIAMPERE_HOUR("mAh", Dimension.CHARGE, 36, 10),
    LUX("lx", Dimension.ILLUMINANCE, 1, 1),
    DECIBEL_A("dB(A)", Dimension.SOUND_LEVEL, 1, 1),
    TESLA("T", Dimension.MAGNETIC_FLUX_DENSITY, 1, 1),
    MICROTESLA("µT", Dimension.MAGNETIC_FLUX_DENSITY, 1, 1_000_000);

    private final String symbol;
    private final Dimension dimension;
    private final double offset;
    private final double numerator;
    private final double denominator;

    Unit(String symbol, Dimension dimension, double numerator, double denominator) {
        this(symbol, dimension, 0, numerator, denominator);
    }

    Unit(String symbol, Dimension dimension, double offset, double numerator, double denominator) {
        this.symbol = symbol;
        this.dimension = dimension;
        this.offset = offset;
        double common = greatestCommonDivisor(numerator, denominator);
        this.numerator = numerator / common;
        this.denominator = denominator / common;
    }

    /// Small terms keep products exact for longer; 1 for terms that are no whole numbers.
    private static double greatestCommonDivisor(double a, double b) {
        if (a != Math.rint(a) || b != Math.rint(b)) {
            return 1;
        }
        double larger = a;
        double smaller = b;
        while (smaller != 0) {
            double rest = larger % smaller;
            larger = smaller;
            smaller = rest;
        }
        return larger;
    }

    /// How it is printed after a number.
    public String symbol() {
        return symbol;
    }

    public Dimension dimension() {
        return dimension;
    }

    /// The value in the SI unit of a value in this unit.
    public double toSi(double value) {
        return (value + offset) * numerator / denominator;
    }

    /// The value in this unit of a value in the SI unit.
    public double fromSi(double si) {
        return si * denominator / numerator - offset;
    }

    /// The value in this unit of a value in the SI unit, for printing: exact for the shortest decimal of
    /// that value, so that a half stays a half (0.145 is 14.5 %).
    BigDecimal decimalFromSi(double si) {
        return differenceDecimalFromSi(si).subtract(BigDecimal.valueOf(offset));
    }

    /// The same for a difference or a half-width: offsets drop out.
    BigDecimal differenceDecimalFromSi(double si) {
        return Rounding.decimal(si)
                .multiply(BigDecimal.valueOf(denominator))
                .divide(BigDecimal.valueOf(numerator), MathContext.DECIMAL128);
    }

    /// A difference or a standard uncertainty in the SI unit, of one in this unit: offsets drop out.
    public double differenceToSi(double difference) {
        return difference * numerator / denominator;
    }

    /// A difference or a standard uncertainty in this unit, of one in the SI unit.
    public double differenceFromSi(double si) {
        return si * denominator / numerator;
    }
}
