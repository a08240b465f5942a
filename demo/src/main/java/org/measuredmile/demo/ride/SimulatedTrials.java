package org.measuredmile.demo.ride;

import java.util.List;

/// The trials that can be simulated: one line a trial.
public final class SimulatedTrials {
    public static final List<SimulatedTrial> ALL = List.of(
            new SimulatedBraking("tape"),
            new SimulatedBraking("trace"),
            new SimulatedBraking("trace", true),
            new SimulatedStart("trace"),
            new SimulatedStart("hand"),
            new SimulatedWeighIn(),
            new SimulatedLevels(true),
            new SimulatedLevels(false),
            new SimulatedCutOff(),
            new SimulatedClimb("trace"),
            new SimulatedClimb("hand"),
            new SimulatedHillDay(),
            new SimulatedCoastDown("trace"),
            new SimulatedCoastDown("hand"),
            new SimulatedEngagement(false),
            new SimulatedEngagement(true),
            new SimulatedRange(SimulatedRange.How.LOG),
            new SimulatedRange(SimulatedRange.How.HAND),
            new SimulatedRange(SimulatedRange.How.EARLY));

    private SimulatedTrials() {}
}
