package org.measuredmile.trial;

import java.util.List;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.VariantKey.Choice;

/// A level's place among its bike's levels, so that the highest of one bike can be ranked with the highest of another
/// whatever their numbers are.
public final class LevelRole {
    /// The key of the place, which the trial works out.
    public static final VariantKey KEY = new VariantKey(
                    "levelRole",
                    "place among the levels",
                    List.of(
                            new Choice("off", "motor off"),
                            new Choice("lowest", "the lowest"),
                            new Choice("middle", ""),
                            new Choice("highest", "the highest"),
                            new Choice("throttle", "by throttle alone"),
                            new Choice("unknown", "of unknown place")),
                    "unknown")
            .foundByTheTrial();

    private LevelRole() {}

    /// Drive and level of a run, the level in one spelling: `off` for 0, `throttle` where the throttle drives and
    /// no level is said.
    public static Variant levelOf(Variant variant) {
        boolean isThrottle = variant.has("drive", "throttle");
        String level = variant.get("level").orElse(isThrottle ? "throttle" : "");
        return Variant.of("drive", isThrottle ? "throttle" : "pedal").with("level", level.equals("0") ? "off" : level);
    }

    /// The place of a level among the numbered ones: 0 for off, its number, NaN for any other.
    public static double rank(Variant variant) {
        String level = variant.get("level").orElse("");
        if (level.equals("off")) {
            return 0;
        }
        return level.matches("[0-9]{1,2}") ? Double.parseDouble(level) : Double.NaN;
    }

    /// A level with its place among the bike's levels: by how many it has, else among those that were announced
    /// when there are at least two.
    public static Variant with(Variant level, Bike bike, List<Run> runs) {
        return level.with(KEY.name(), role(level, bike, runs));
    }

    private static String role(Variant level, Bike bike, List<Run> runs) {
        if (level.has("drive", "throttle")) {
            return "throttle";
        }
        double rank = rank(level);
        if (rank == 0) {
            return "off";
        }
        double[] announced = runs.stream()
                .map(run -> levelOf(run.variant()))
                .filter(one -> one.has("drive", "pedal"))
                .mapToDouble(LevelRole::rank)
                .filter(one -> one > 0)
                .distinct()
                .sorted()
                .toArray();
        double highest = bike.levels().isPresent()
                ? bike.levels().getAsInt()
                : announced.length > 1 ? announced[announced.length - 1] : Double.NaN;
        if (rank == highest) {
            return "highest";
        }
        if (rank == 1) {
            return "lowest";
        }
        return rank > 1 && rank < highest ? "middle" : "unknown";
    }
}
