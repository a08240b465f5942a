package org.measuredmile.comparison;

import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.trial.UsedLoad;

/// The road load that the results of a coast-down tell, on any day.
public final class KeptLoad {
    private KeptLoad() {}

    /// Shape: leans as the day's reduction said, else by [UsedLoad#USUAL_LEANING]; the fewer degrees of freedom of
    /// the two.
    public static KnownLoad of(Result rolling, Result area) {
        var first = rolling.figure();
        var second = area.figure();
        return new KnownLoad(
                new RoadLoad(first.value(), second.value()),
                first.anyDay().standard(),
                second.anyDay().standard(),
                rolling.correlation(area).orElse(UsedLoad.USUAL_LEANING),
                Math.min(first.anyDay().degreesOfFreedom(), second.anyDay().degreesOfFreedom()),
                false,
                "by the bike's coast-down");
    }
}
