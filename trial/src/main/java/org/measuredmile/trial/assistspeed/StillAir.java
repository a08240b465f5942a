package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.TrialInput;

/// A day's speed without the day's wind, as far as somebody wrote it down: the speed in still air of the power that
/// gives the mean speed measured against the head wind of each way, by a usual road load.
///
/// Nothing is taken out of a speed that a controller holds, nor of a wind that nobody wrote. Where a controller may
/// hold it, half of what was taken out is in the budget.
/// Shape: `ratio` of the speed in still air to the one measured; `parts` are what the wind leaves open of it, in m/s.
record StillAir(double ratio, List<Contribution> parts, List<String> assumed) {
    /// How the words begin that say what was taken out.
    static final String TAKEN = "the written wind of ";

    static StillAir of(TrialInput input, Variant level, Ridden ridden, CutOffs cutOffs) {
        var passes = ridden.ways().stream().flatMap(List::stream).toList();
        var setting = RoadSetting.of(input, passes.getFirst().run()).setting();
        var wind = RoadWind.of(input, ridden.ways(), ridden.isPaired());
        var model = new SteadyPower(RoadPrior.LOAD, setting, setting, wind.headsMps());
        double speedMps = ridden.meanMps();
        double ratio = model.ratio(speedMps);
        if (!wind.isWritten() || cutOffs.isHeld(level, speedMps) || !Double.isFinite(ratio)) {
            int ways = ridden.isPaired() ? 2 : 1;
            return new StillAir(
                    1, WindPart.of(RoadPrior.of(setting), speedMps, wind.windMps(), wind.oneWay(), ways), List.of());
        }
        var parts = new ArrayList<>(WindPart.left(model, wind, speedMps));
        double taken = (ratio - 1) * speedMps;
        if (cutOffs.mayBeHeld(level, speedMps) && taken != 0) {
            parts.add(Contribution.typeB("whether a controller holds it against the wind", Math.abs(taken) / 2));
        }
        return new StillAir(ratio, parts, words(taken, wind));
    }

    private static List<String> words(double takenMps, RoadWind wind) {
        if (Math.abs(takenMps) < 0.005) {
            return List.of();
        }
        String what = wind.isBearingKnown() ? "its written bearing" : "unknown bearing, alike both ways";
        return List.of(String.format(
                Locale.ROOT,
                TAKEN + "%s, by %s, taken out by a usual road load: %+.2f m/s",
                AssistSpeedWords.speed(wind.windMps()),
                what,
                takenMps));
    }

    /// A level's passes by way, and their mean speed.
    record Ridden(List<List<LevelPass>> ways, double meanMps, boolean isPaired) {
        static Ridden of(List<LevelPass> passes) {
            var directions = LevelFigures.byDirection(passes);
            double mean = 0;
            for (var way : directions.values()) {
                mean += PassMean.of(way).speedMps() / directions.size();
            }
            boolean isPaired = directions.containsKey("out") && directions.containsKey("back");
            return new Ridden(List.copyOf(directions.values()), mean, isPaired);
        }
    }
}
