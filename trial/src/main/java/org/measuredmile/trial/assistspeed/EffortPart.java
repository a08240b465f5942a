package org.measuredmile.trial.assistspeed;

import java.util.List;
import java.util.Locale;
import org.measuredmile.quantity.budget.Contribution;

/// What the rider's effort adds to the any-day budget: the figure is for a light effort, and no rider holds it exactly.
///
/// Unit: watts at the pedals.
/// Source: 75 W is the trial's stated effort; 10 W unrecorded, 3 W recorded: house values.
final class EffortPart {
    static final String UNRECORDED_WORDS =
            "the rider's light effort of 75 W, right within 10 W (standard uncertainty): no power was recorded";
    private static final double UNRECORDED_W = 10;
    private static final double RECORDED_W = 3;
    static final String NAME = "rider's effort";

    private EffortPart() {}

    static Contribution unrecorded(RoadPrior road, double speedMps) {
        return Contribution.typeB(NAME, road.perWatt(speedMps) * UNRECORDED_W);
    }

    static Contribution recorded(RoadPrior road, double speedMps) {
        return Contribution.typeB(NAME, road.perWatt(speedMps) * RECORDED_W);
    }

    static String recordedWords(List<LevelPass> passes) {
        double mean = passes.stream().mapToDouble(LevelPass::powerW).average().orElse(Double.NaN);
        return String.format(Locale.ROOT, "the rider's recorded effort of %.0f W, right within 3 W", mean);
    }
}
