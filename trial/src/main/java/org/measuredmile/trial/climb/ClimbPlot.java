package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.trial.Trace;
import org.measuredmile.trial.Trace.Event;
import org.measuredmile.trial.Trace.Line;
import org.measuredmile.trial.Trace.Role;

/// The picture of a climb: its speed, and when it passed the gates.
final class ClimbPlot {
    private ClimbPlot() {}

    static Optional<Trace> of(TracedClimb climb) {
        var samples = climb.samples().between(climb.beginS(), climb.endS());
        if (samples.size() < 2) {
            return Optional.empty();
        }
        double originS = climb.pass().map(pass -> pass.fromS()).orElse(climb.beginS());
        double[] times = samples.timesS().clone();
        for (int i = 0; i < times.length; i++) {
            times[i] -= originS;
        }
        var events = new ArrayList<Event>();
        climb.pass().ifPresent(pass -> {
            events.add(new Event(
                    "first gate",
                    0,
                    pass.uFromS(),
                    OptionalDouble.of(climb.entry().mps())));
            events.add(new Event(
                    "last gate",
                    pass.durationS(),
                    pass.uDurationS(),
                    OptionalDouble.of(climb.exit().mps())));
        });
        var line = new Line(Role.SAMPLES, climb.source().kind().title(), times, samples.values());
        return Optional.of(
                new Trace(climb.recording().name(), originS, "first gate", QuantityKind.SPEED, List.of(line), events));
    }
}
