package org.measuredmile.quantity;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/// The spellings of units: what people write after a number, and what instruments write into column heads.
///
/// Shape: a spelling is looked up among the units of the kind wanted only, so that `g` is a gram in a mass and
/// standard gravity in an acceleration, and `m` a minute in a time; capitals matter only where they tell two
/// units apart.
public final class UnitText {
    private static final Map<Unit, List<String>> SPELLINGS = spellings();

    private UnitText() {}

    /// The unit that a spelling stands for in a quantity of the given kind; brackets around it do not matter.
    public static Optional<Unit> find(String spelling, QuantityKind kind) {
        return find(spelling, kind.si().dimension());
    }

    /// The first unit of another dimension that a spelling could stand for.
    static Optional<Unit> findElsewhere(String spelling, Dimension wanted) {
        return Arrays.stream(Dimension.values())
                .filter(dimension -> dimension != wanted)
                .flatMap(dimension -> find(spelling, dimension).stream())
                .findFirst();
    }

    private static Optional<Unit> find(String spelling, Dimension dimension) {
        String plain = plain(spelling);
        if (plain.isEmpty()) {
            return Optional.empty();
        }
        List<Unit> candidates = Arrays.stream(Unit.values())
                .filter(unit -> unit.dimension() == dimension)
                .toList();
        Optional<Unit> exact = candidates.stream()
                .filter(unit -> spellingsOf(unit).anyMatch(plain::equals))
                .findFirst();
        if (exact.isPresent()) {
            return exact;
        }
        String lower = plain.toLowerCase(Locale.ROOT);
        List<Unit> loose = candidates.stream()
                .filter(unit -> spellingsOf(unit)
                        .anyMatch(known -> known.toLowerCase(Locale.ROOT).equals(lower)))
                .toList();
        return loose.size() == 1 ? Optional.of(loose.getFirst()) : Optional.empty();
    }

    private static Stream<String> spellingsOf(Unit unit) {
        return Stream.concat(
                Stream.of(plain(unit.symbol())).filter(symbol -> !symbol.isEmpty()),
                SPELLINGS.getOrDefault(unit, List.of()).stream());
    }

    /// A spelling without brackets, spaces and full stops, with powers and signs in one form.
    private static String plain(String spelling) {
        String text = CharacterForms.plain(spelling).strip();
        boolean bracketed = text.length() > 2
                && ((text.startsWith("(") && text.endsWith(")")) || (text.startsWith("[") && text.endsWith("]")));
        if (bracketed) {
            text = text.substring(1, text.length() - 1).strip();
        }
        return text.replace("^", "")
                .replace("²", "2")
                .replace("³", "3")
                .replace("⁻", "-")
                .replace("¹", "1")
                .replace("·", " ")
                .replace("*", " ")
                .replaceAll("\\s+", " ")
                .replaceAll(" ?/ ?", "/")
                .replaceAll("\\.$", "");
    }

    private static Map<Unit, List<String>> spellings() {
        var all = new EnumMap<Unit, List<String>>(Unit.class);
        lengths(all);
        times(all);
        masses(all);
        speeds(all);
        motions(all);
        energies(all);
        surroundings(all);
        electrics(all);
        return all;
    }

    private static void lengths(Map<Unit, List<String>> all) {
        all.put(Unit.METRE, List.of("metre", "metres", "meter", "meters"));
        all.put(Unit.KILOMETRE, List.of("kilometre", "kilometres", "kilometer", "kilometers", "kms"));
        all.put(Unit.CENTIMETRE, List.of("centimetre", "centimetres", "centimeter", "centimeters"));
        all.put(Unit.MILLIMETRE, List.of("millimetre", "millimetres", "millimeter", "millimeters"));
        all.put(Unit.FOOT, List.of("'", "feet", "foot"));
        all.put(Unit.INCH, List.of("\"", "inch", "inches", "ins"));
        all.put(Unit.YARD, List.of("yard", "yards", "yds"));
        all.put(Unit.MILE, List.of("mile", "miles"));
        all.put(Unit.NAUTICAL_MILE, List.of("NM", "nautical mile", "nautical miles"));
        all.put(Unit.SQUARE_METRE, List.of("sq m", "square metre", "square metres", "square meters"));
        all.put(Unit.SQUARE_FOOT, List.of("sq ft", "square foot", "square feet"));
    }

    private static void times(Map<Unit, List<String>> all) {
        all.put(Unit.SECOND, List.of("\"", "sec", "secs", "second", "seconds"));
        all.put(Unit.MILLISECOND, List.of("msec", "millis", "millisecond", "milliseconds"));
        all.put(Unit.MICROSECOND, List.of("us", "usec", "microsecond", "microseconds"));
        all.put(Unit.NANOSECOND, List.of("nsec", "nanosecond", "nanoseconds"));
        all.put(Unit.MINUTE, List.of("'", "m", "mins", "minute", "minutes"));
        all.put(Unit.HOUR, List.of("hr", "hrs", "hour", "hours"));
        all.put(Unit.HERTZ, List.of("1/s", "/s", "hertz", "per second"));
        all.put(Unit.PER_MINUTE, List.of("rpm", "1/min", "bpm", "spm", "rev/min", "r/min", "per minute"));
    }

    private static void masses(Map<Unit, List<String>> all) {
        all.put(Unit.KILOGRAM, List.of("kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"));
        all.put(Unit.GRAM, List.of("gr", "gram", "grams", "gramme", "grammes"));
        all.put(Unit.STONE, List.of("stone", "stones"));
        all.put(Unit.POUND, List.of("lbs", "pound", "pounds"));
        all.put(Unit.OUNCE, List.of("ounce", "ounces", "ozs"));
        all.put(Unit.NEWTON, List.of("newton", "newtons"));
        all.put(Unit.POUND_FORCE, List.of("lb f", "pounds force", "pound-force"));
        all.put(Unit.NEWTON_METRE, List.of("Nm", "N-m", "newton metre", "newton metres", "newton meters"));
        all.put(
                Unit.POUND_FORCE_FOOT,
                List.of("lb ft", "lb-ft", "lbft", "ft lb", "ft-lb", "ft lbf", "ft-lbf", "pound feet", "foot pounds"));
        all.put(Unit.KILOGRAM_PER_CUBIC_METRE, List.of("kg m-3"));
    }

    private static void speeds(Map<Unit, List<String>> all) {
        all.put(Unit.METRE_PER_SECOND, List.of("m s-1", "mps", "metres per second", "meters per second"));
        all.put(
                Unit.KILOMETRE_PER_HOUR,
                List.of("kph", "kmh", "kmph", "km h-1", "km/hr", "kilometres per hour", "kilometers per hour"));
        all.put(Unit.MILE_PER_HOUR, List.of("mi/h", "mi/hr", "miles/h", "miles per hour", "miles an hour"));
        all.put(Unit.KNOT, List.of("kt", "kts", "knot", "knots"));
        all.put(Unit.FOOT_PER_SECOND, List.of("fps", "ft s-1", "feet per second"));
    }

    private static void motions(Map<Unit, List<String>> all) {
        all.put(Unit.METRE_PER_SECOND_SQUARED, List.of("m s-2", "m/s/s", "mps2"));
        all.put(Unit.FOOT_PER_SECOND_SQUARED, List.of("ft s-2", "ft/s/s", "fps2"));
        all.put(Unit.STANDARD_GRAVITY, List.of("g", "gn", "g0", "gs"));
        all.put(Unit.RADIAN, List.of("radian", "radians"));
        all.put(Unit.DEGREE, List.of("deg", "degs", "degree", "degrees"));
        all.put(Unit.RADIAN_PER_SECOND, List.of("rad s-1", "rad/sec", "radians per second"));
        all.put(Unit.DEGREE_PER_SECOND, List.of("deg/s", "deg s-1", "deg/sec", "dps", "degrees per second"));
    }

    private static void energies(Map<Unit, List<String>> all) {
        all.put(Unit.WATT, List.of("watt", "watts"));
        all.put(Unit.KILOWATT, List.of("kilowatt", "kilowatts"));
        all.put(Unit.JOULE, List.of("joule", "joules", "Ws"));
        all.put(Unit.KILOJOULE, List.of("kilojoule", "kilojoules"));
        all.put(Unit.WATT_HOUR, List.of("W h", "W-h", "watt hour", "watt hours", "watt-hours"));
        all.put(Unit.KILOWATT_HOUR, List.of("kW h", "kilowatt hour", "kilowatt hours", "kilowatt-hours"));
        all.put(Unit.WATT_HOUR_PER_KILOMETRE, List.of("W h/km", "Wh per km"));
        all.put(
                Unit.PER_KILOWATT_HOUR,
                List.of("EUR/kWh", "€/kWh", "USD/kWh", "$/kWh", "GBP/kWh", "£/kWh", "CHF/kWh", "CAD/kWh", "per kWh"));
        all.put(Unit.WATT_HOUR_PER_MILE, List.of("W h/mi", "Wh/mile", "Wh per mile"));
    }

    private static void surroundings(Map<Unit, List<String>> all) {
        all.put(Unit.PASCAL, List.of("pascal", "pascals"));
        all.put(Unit.HECTOPASCAL, List.of("mbar", "mb", "millibar"));
        all.put(Unit.BAR, List.of("bars"));
        all.put(Unit.POUND_PER_SQUARE_INCH, List.of("PSI", "lb/in2", "lbf/in2"));
        all.put(Unit.KELVIN, List.of("kelvin"));
        all.put(Unit.DEGREE_CELSIUS, List.of("C", "deg C", "degC", "° C", "celsius", "degrees C"));
        all.put(Unit.DEGREE_FAHRENHEIT, List.of("F", "deg F", "degF", "° F", "fahrenheit", "degrees F"));
        all.put(Unit.PER_CENT, List.of("percent", "per cent", "pct"));
        all.put(Unit.LUX, List.of("lux"));
        all.put(Unit.DECIBEL_A, List.of("dB", "dBA", "dB A", "decibel", "decibels"));
        all.put(Unit.TESLA, List.of("tesla"));
        all.put(Unit.MICROTESLA, List.of("uT", "microtesla"));
    }

    private static void electrics(Map<Unit, List<String>> all) {
        all.put(Unit.VOLT, List.of("volt", "volts"));
        all.put(Unit.MILLIVOLT, List.of("millivolt", "millivolts"));
        all.put(Unit.AMPERE, List.of("amp", "amps", "ampere", "amperes"));
        all.put(Unit.MILLIAMPERE, List.of("milliamp", "milliamps"));
        all.put(Unit.COULOMB, List.of("coulomb", "As"));
        all.put(Unit.AMPERE_HOUR, List.of("A h", "amp hour", "amp hours", "amp-hours"));
        all.put(Unit.MILLIAMPERE_HOUR, List.of("mA h"));
    }
}
