package org.measuredmile.trial.climb;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.TrialInput;

/// The head wind along a hill, and how well it is known.
///
/// Formula: w·cos(from − bearing of the way up); where nobody wrote where it came from, 0 with w/√2, the standard
/// deviation of w·cos φ with φ uniform.
/// Unit: m/s, positive against the rider; `standardUncertainty` alike.
/// Source: JCGM 101:2008, 6.4.6 (arcsine distribution); the widths beside it are house values.
record HillWind(double headMps, double standardUncertainty, String assumed) {
    private static final List<String> POINTS =
            List.of("n", "nne", "ne", "ene", "e", "ese", "se", "sse", "s", "ssw", "sw", "wsw", "w", "wnw", "nw", "nnw");
    private static final double POINT_DEGREES = 22.5;

    static HillWind of(TrialInput input, Run run, Hill hill) {
        var speed = input.readings().of(run.id(), "wind-speed");
        if (speed.isEmpty()) {
            return new HillWind(
                    0,
                    ClimbRules.WIND_UNKNOWN_SD,
                    "wind along the hill: 0 ± " + ClimbRules.WIND_UNKNOWN_SD + " m/s (standard uncertainty)");
        }
        double mps = speed.get().si();
        var from = degrees(input.readings().word(run.id(), "wind-from"));
        if (from.isEmpty() || hill.bearingDegrees().isEmpty()) {
            double sd = StrictMath.hypot(ClimbRules.WIND_LEAST_SD, mps / Math.sqrt(2));
            return new HillWind(0, sd, "wind of unknown bearing along the hill");
        }
        double angle =
                StrictMath.toRadians(from.getAsDouble() - hill.bearingDegrees().getAsDouble());
        double sd = StrictMath.hypot(ClimbRules.WIND_LEAST_SD, ClimbRules.WIND_SHARE_SD * mps);
        return new HillWind(mps * StrictMath.cos(angle), sd, "");
    }

    /// Degrees from true north of a bearing in words or figures: `north-east`, `NE`, `45°`; empty for anything
    /// else.
    static OptionalDouble degrees(String written) {
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
