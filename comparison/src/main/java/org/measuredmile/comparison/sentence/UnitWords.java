package org.measuredmile.comparison.sentence;

import org.measuredmile.quantity.Unit;

/// A unit in words, as it is said aloud.
///
/// Shape: `half` stands after "half" and the like: `half a mile an hour`.
record UnitWords(String one, String many, String half) {
    static UnitWords of(Unit unit) {
        return switch (unit) {
            case ONE -> new UnitWords("", "", "");
            case PER_CENT -> new UnitWords("per cent", "per cent", "a per cent");
            case METRE, KILOMETRE, CENTIMETRE, MILLIMETRE, YARD, MILE -> plain(unit);
            case FOOT -> new UnitWords("foot", "feet", "a foot");
            case INCH -> new UnitWords("inch", "inches", "an inch");
            case NAUTICAL_MILE -> regular("nautical mile");
            case METRE_PER_SECOND -> per("metre", "metres", "a second");
            case KILOMETRE_PER_HOUR -> per("kilometre", "kilometres", "an hour");
            case MILE_PER_HOUR -> per("mile", "miles", "an hour");
            case FOOT_PER_SECOND -> per("foot", "feet", "a second");
            case METRE_PER_SECOND_SQUARED -> per("metre", "metres", "per second squared");
            case FOOT_PER_SECOND_SQUARED -> per("foot", "feet", "per second squared");
            case STANDARD_GRAVITY -> regular("standard gravity");
            case HOUR -> new UnitWords("hour", "hours", "an hour");
            case KNOT, SECOND, MILLISECOND, MICROSECOND, NANOSECOND, MINUTE, KILOGRAM, GRAM, POUND -> plain(unit);
            case STONE -> new UnitWords("stone", "stone", "a stone");
            case OUNCE -> new UnitWords("ounce", "ounces", "an ounce");
            case NEWTON, WATT, KILOWATT, JOULE, KILOJOULE, PASCAL, HECTOPASCAL, KILOPASCAL, VOLT, MILLIVOLT ->
                plain(unit);
            case POUND_FORCE -> per("pound", "pounds", "of force");
            case WATT_PER_KILOGRAM -> per("watt", "watts", "per kilogram");
            case WATT_PER_POUND -> per("watt", "watts", "per pound");
            case NEWTON_METRE -> regular("newton metre");
            case POUND_FORCE_FOOT -> per("pound-foot", "pound-feet", "of torque");
            case WATT_HOUR -> regular("watt-hour");
            case KILOWATT_HOUR -> regular("kilowatt-hour");
            case JOULE_PER_METRE -> per("joule", "joules", "per metre");
            case WATT_HOUR_PER_KILOMETRE -> per("watt-hour", "watt-hours", "per kilometre");
            case WATT_HOUR_PER_MILE -> per("watt-hour", "watt-hours", "per mile");
            case PER_JOULE -> always("per joule");
            case PER_KILOWATT_HOUR -> always("per kilowatt-hour");
            case PER_METRE -> always("per metre");
            case PER_HUNDRED_KILOMETRES -> always("per hundred kilometres");
            case PER_HUNDRED_MILES -> always("per hundred miles");
            case BAR -> new UnitWords("bar", "bar", "a bar");
            case POUND_PER_SQUARE_INCH -> per("pound", "pounds", "per square inch");
            case KELVIN -> new UnitWords("kelvin", "kelvin", "a kelvin");
            case DEGREE_CELSIUS -> per("degree", "degrees", "Celsius");
            case DEGREE_FAHRENHEIT -> per("degree", "degrees", "Fahrenheit");
            case KILOGRAM_PER_CUBIC_METRE -> per("kilogram", "kilograms", "per cubic metre");
            case SQUARE_METRE -> regular("square metre");
            case SQUARE_FOOT -> new UnitWords("square foot", "square feet", "a square foot");
            case DEGREE -> regular("degree");
            case RADIAN -> regular("radian");
            case RADIAN_PER_SECOND -> per("radian", "radians", "a second");
            case DEGREE_PER_SECOND -> per("degree", "degrees", "a second");
            case HERTZ -> new UnitWords("hertz", "hertz", "a hertz");
            case PER_MINUTE -> new UnitWords("a minute", "a minute", "one a minute");
            case AMPERE -> new UnitWords("ampere", "amperes", "an ampere");
            case MILLIAMPERE -> regular("milliampere");
            case COULOMB, TESLA, MICROTESLA -> plain(unit);
            case AMPERE_HOUR -> new UnitWords("ampere-hour", "ampere-hours", "an ampere-hour");
            case MILLIAMPERE_HOUR -> regular("milliampere-hour");
            case LUX -> new UnitWords("lux", "lux", "a lux");
            case DECIBEL_A -> regular("decibel");
        };
    }

    /// A unit whose name is its constant's.
    private static UnitWords plain(Unit unit) {
        return regular(unit.name().toLowerCase(java.util.Locale.ROOT));
    }

    private static UnitWords regular(String one) {
        return new UnitWords(
                one, one.endsWith("y") ? one.substring(0, one.length() - 1) + "ies" : one + "s", "a " + one);
    }

    private static UnitWords always(String words) {
        return new UnitWords(words, words, "one " + words);
    }

    private static UnitWords per(String one, String many, String rest) {
        return new UnitWords(one + " " + rest, many + " " + rest, "a " + one + " " + rest);
    }
}
