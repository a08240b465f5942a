package org.measuredmile.trial;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/// A bearing as people write it: `north-east`, `NE`, `45°`.
///
/// Unit: degrees from true north, clockwise.
public final class CompassBearing {
    private static final List<String> POINTS =
            List.of("n", "nne", "ne", "ene", "e", "ese", "se", "sse", "s", "ssw", "sw", "wsw", "w", "wnw", "nw", "nnw");
    private static final double POINT_DEGREES = 22.5;

    private CompassBearing() {}

    /// Degrees of a bearing in words or figures; empty for anything else.
    public static OptionalDouble degrees(String written) {
        String plain = written.strip().toLowerCase(Locale.ROOT);
        String number = plain.replaceAll("\\s*(°|deg|degrees)$", "");
        if (number.matches("\\d{1,3}(\\.\\d+)?")) {
            double value = Double.parseDouble(number);
            return value <= 360 ? OptionalDouble.of(value) : OptionalDouble.empty();
        }
        String letters = plain.replace("north", "n")
                .replace("south", "s")
                .replace("east", "e")
                .replace("west", "w")
                .replaceAll("[ \\-]", "");
        int point = POINTS.indexOf(letters);
        return point < 0 ? OptionalDouble.empty() : OptionalDouble.of(point * POINT_DEGREES);
    }
}
