package org.measuredmile.recording.reader;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.quantity.Unit;

/// Units as instruments abbreviate them in column heads and beside numbers.
///
/// One abbreviation can stand for two units ("ms": milliseconds, or metres per second); the kind of the column decides.
final class HeadUnit {
    private static final Map<String, List<Unit>> SPELLINGS = Map.ofEntries(
            Map.entry("s", List.of(Unit.SECOND)),
            Map.entry("sec", List.of(Unit.SECOND)),
            Map.entry("seconds", List.of(Unit.SECOND)),
            Map.entry("ms", List.of(Unit.MILLISECOND, Unit.METRE_PER_SECOND)),
            Map.entry("millis", List.of(Unit.MILLISECOND)),
            Map.entry("us", List.of(Unit.MICROSECOND)),
            Map.entry("µs", List.of(Unit.MICROSECOND)),
            Map.entry("ns", List.of(Unit.NANOSECOND)),
            Map.entry("mv", List.of(Unit.MILLIVOLT)),
            Map.entry("ma", List.of(Unit.MILLIAMPERE)),
            Map.entry("min", List.of(Unit.MINUTE)),
            Map.entry("h", List.of(Unit.HOUR)),
            Map.entry("m", List.of(Unit.METRE)),
            Map.entry("km", List.of(Unit.KILOMETRE)),
            Map.entry("cm", List.of(Unit.CENTIMETRE)),
            Map.entry("mm", List.of(Unit.MILLIMETRE)),
            Map.entry("ft", List.of(Unit.FOOT)),
            Map.entry("in", List.of(Unit.INCH)),
            Map.entry("yd", List.of(Unit.YARD)),
            Map.entry("mi", List.of(Unit.MILE)),
            Map.entry("nmi", List.of(Unit.NAUTICAL_MILE)),
            Map.entry("m/s", List.of(Unit.METRE_PER_SECOND)),
            Map.entry("mps", List.of(Unit.METRE_PER_SECOND)),
            Map.entry("km/h", List.of(Unit.KILOMETRE_PER_HOUR)),
            Map.entry("kmh", List.of(Unit.KILOMETRE_PER_HOUR)),
            Map.entry("kph", List.of(Unit.KILOMETRE_PER_HOUR)),
            Map.entry("mph", List.of(Unit.MILE_PER_HOUR)),
            Map.entry("kn", List.of(Unit.KNOT)),
            Map.entry("kt", List.of(Unit.KNOT)),
            Map.entry("kts", List.of(Unit.KNOT)),
            Map.entry("knots", List.of(Unit.KNOT)),
            Map.entry("ft/s", List.of(Unit.FOOT_PER_SECOND)),
            Map.entry("m/s2", List.of(Unit.METRE_PER_SECOND_SQUARED)),
            Map.entry("mps2", List.of(Unit.METRE_PER_SECOND_SQUARED)),
            Map.entry("ms2", List.of(Unit.METRE_PER_SECOND_SQUARED)),
            Map.entry("g", List.of(Unit.STANDARD_GRAVITY, Unit.GRAM)),
            Map.entry("deg/s", List.of(Unit.DEGREE_PER_SECOND)),
            Map.entry("dps", List.of(Unit.DEGREE_PER_SECOND)),
            Map.entry("°/s", List.of(Unit.DEGREE_PER_SECOND)),
            Map.entry("rad/s", List.of(Unit.RADIAN_PER_SECOND)),
            Map.entry("deg", List.of(Unit.DEGREE)),
            Map.entry("°", List.of(Unit.DEGREE)),
            Map.entry("n", List.of(Unit.NEWTON)),
            Map.entry("lbf", List.of(Unit.POUND_FORCE)),
            Map.entry("w", List.of(Unit.WATT)),
            Map.entry("kw", List.of(Unit.KILOWATT)),
            Map.entry("v", List.of(Unit.VOLT)),
            Map.entry("a", List.of(Unit.AMPERE)),
            Map.entry("%", List.of(Unit.PER_CENT)),
            Map.entry("pct", List.of(Unit.PER_CENT)),
            Map.entry("percent", List.of(Unit.PER_CENT)),
            Map.entry("bpm", List.of(Unit.PER_MINUTE)),
            Map.entry("rpm", List.of(Unit.PER_MINUTE)),
            Map.entry("/min", List.of(Unit.PER_MINUTE)),
            Map.entry("hz", List.of(Unit.HERTZ)),
            Map.entry("pa", List.of(Unit.PASCAL)),
            Map.entry("hpa", List.of(Unit.HECTOPASCAL)),
            Map.entry("mbar", List.of(Unit.HECTOPASCAL)),
            Map.entry("kpa", List.of(Unit.KILOPASCAL)),
            Map.entry("bar", List.of(Unit.BAR)),
            Map.entry("psi", List.of(Unit.POUND_PER_SQUARE_INCH)),
            Map.entry("c", List.of(Unit.DEGREE_CELSIUS)),
            Map.entry("°c", List.of(Unit.DEGREE_CELSIUS)),
            Map.entry("degc", List.of(Unit.DEGREE_CELSIUS)),
            Map.entry("°f", List.of(Unit.DEGREE_FAHRENHEIT)),
            Map.entry("degf", List.of(Unit.DEGREE_FAHRENHEIT)),
            Map.entry("k", List.of(Unit.KELVIN)),
            Map.entry("ut", List.of(Unit.MICROTESLA)),
            Map.entry("µt", List.of(Unit.MICROTESLA)));

    private HeadUnit() {}

    static boolean isKnown(String text) {
        return SPELLINGS.containsKey(plain(text));
    }

    /// The unit of the wanted dimension that an abbreviation stands for.
    static Optional<Unit> find(String text, Unit wanted) {
        return SPELLINGS.getOrDefault(plain(text), List.of()).stream()
                .filter(unit -> unit.dimension() == wanted.dimension())
                .findFirst();
    }

    private static String plain(String text) {
        return text.strip()
                .toLowerCase(Locale.ROOT)
                .replace("²", "2")
                .replace("^", "")
                .replace("μ", "µ")
                .replace(" ", "");
    }
}
