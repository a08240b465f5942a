package org.measuredmile.trial.coastdown;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.roadload.Coasting;
import org.measuredmile.trial.Trace;

/// A coast's plot: its samples, and the equation of motion through them.
final class CoastPlot {
    private static final double STEP_S = 0.5;

    private CoastPlot() {}

    static Optional<Trace> of(CoastRun run, Optional<CoastPair> pair) {
        if (run.traced().isEmpty()) {
            return Optional.empty();
        }
        var traced = run.traced().get();
        var samples = run.samples();
        var line = new Trace.Line(Trace.Role.SAMPLES, "speed", samples.timesS(), samples.speedsMps());
        var model = pair.flatMap(one -> one.found().map(found -> {
            boolean out = one.out().equals(run);
            var along = new Coasting.Along(found.grade(), found.headWindMps());
            double[] speeds = Coasting.speedsMps(
                    found.load(),
                    CoastPair.setting(one.out(), one.back()),
                    out ? along : along.back(),
                    found.startsMps()[out ? 0 : 1],
                    samples.timesS(),
                    STEP_S);
            return new Trace.Line(Trace.Role.MODEL, "equation of motion", samples.timesS(), speeds);
        }));
        var lines = model.map(one -> List.of(line, one)).orElse(List.of(line));
        var begin = new Trace.Event("coasting begins", 0, 0.5, OptionalDouble.of(samples.speedsMps()[0]));
        return Optional.of(new Trace(
                traced.recording().name(),
                traced.beginS(),
                "the beginning of the coast",
                QuantityKind.SPEED,
                lines,
                List.of(begin)));
    }
}
