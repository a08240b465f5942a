package org.measuredmile.comparison.sidebyside;

import java.util.Map;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.FigureSpec;

/// How it is said of a bike, or of several, that they are ahead of another in a figure: "stops shorter", "stop
/// shorter".
///
/// Where neither end is better, the larger value is "ahead", and the words say only that it is larger.
record Comparative(String one, String several) {
    private static final Map<String, Comparative> OWN = Map.ofEntries(
            entry("braking.stopping-distance", "stops shorter", "stop shorter"),
            entry("braking.braking-distance", "brakes shorter", "brake shorter"),
            entry("braking.mean-deceleration", "brakes harder", "brake harder"),
            entry("braking.mfdd", "brakes harder", "brake harder"),
            entry("standingstart.time-to", "gets away quicker", "get away quicker"),
            entry("standingstart.distance-to", "gets there in a shorter way", "get there in a shorter way"),
            entry("assistspeed.speed", "rides faster", "ride faster"),
            entry("assistspeed.cut-off", "is helped to a higher speed", "are helped to a higher speed"),
            entry("climb.time", "climbs quicker", "climb quicker"),
            entry("climb.mean-speed", "climbs quicker", "climb quicker"),
            entry("range.distance", "goes farther", "go farther"),
            entry("range.energy-per-distance", "needs less energy", "need less energy"),
            entry("weighin.mass", "is lighter", "are lighter"),
            entry("weighin.payload", "may carry more", "may carry more"),
            entry("charging.time", "charges quicker", "charge quicker"),
            entry("noise.level", "is quieter", "are quieter"));

    private static Map.Entry<String, Comparative> entry(String figure, String one, String several) {
        return Map.entry(figure, new Comparative(one, several));
    }

    /// The words of a figure; of one without its own, "has the shorter stride".
    static Comparative of(FigureSpec figure) {
        var own = OWN.get(figure.id());
        if (own != null) {
            return own;
        }
        String what =
                (figure.better() == Better.LESS ? less(figure.kind()) : more(figure.kind())) + " " + figure.title();
        return new Comparative("has the " + what, "have the " + what);
    }

    private static String less(QuantityKind kind) {
        return switch (kind) {
            case LENGTH, DISTANCE, TIME -> "shorter";
            case MASS, POWER, ENERGY, FORCE, ENERGY_PER_DISTANCE -> "smaller";
            default -> "lower";
        };
    }

    private static String more(QuantityKind kind) {
        return switch (kind) {
            case LENGTH, DISTANCE, TIME -> "longer";
            case MASS, POWER, ENERGY, FORCE, ENERGY_PER_DISTANCE -> "larger";
            default -> "higher";
        };
    }
}
