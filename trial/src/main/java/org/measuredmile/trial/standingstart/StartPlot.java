package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.trial.Trace;
import org.measuredmile.trial.Trace.Event;
import org.measuredmile.trial.Trace.Line;
import org.measuredmile.trial.Trace.Role;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;

/// The picture of a start: raw samples, the fitted model, and its events with how well their times are
/// known.
final class StartPlot {
    private static final double MODEL_STEP_S = 0.05;

    private StartPlot() {}

    static Optional<Trace> of(TracedStart start) {
        var samples = start.samples();
        if (samples.size() < 2) {
            return Optional.empty();
        }
        double origin = start.beginS();
        double[] times = new double[samples.size()];
        for (int i = 0; i < times.length; i++) {
            times[i] = samples.timeS(i) - origin;
        }
        var lines = new ArrayList<Line>();
        lines.add(new Line(Role.SAMPLES, start.source().kind().title(), times, samples.values()));
        var events = new ArrayList<Event>();
        // A model that does not describe the start is not drawn over it.
        start.fitted().filter(_ -> start.qualifies()).ifPresent(fit -> {
            lines.add(model(fit, times[0], start.cutEndS() - origin));
            events.addAll(events(start, fit));
        });
        if (!start.qualifies()) {
            start.passed()
                    .forEach((target, passed) -> events.add(new Event(
                            target.words(),
                            passed.fromS() + passed.timeS() - origin,
                            passed.timeSd(),
                            OptionalDouble.of(target.speedMps()))));
        }
        String from = start.qualifies() ? "first movement" : "end of rest";
        return Optional.of(new Trace(start.recording().name(), origin, from, QuantityKind.SPEED, lines, events));
    }

    private static Line model(StartFit.Fitted fit, double fromS, double toS) {
        int count = Math.max(2, (int) Math.ceil((toS - fromS) / MODEL_STEP_S) + 1);
        double[] times = new double[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = Math.min(toS, fromS + i * MODEL_STEP_S);
            values[i] = fit.shownMps(times[i] + fit.motionS());
        }
        return new Line(Role.MODEL, "fitted model", times, values);
    }

    private static List<Event> events(TracedStart start, StartFit.Fitted fit) {
        var events = new ArrayList<Event>();
        events.add(new Event("first movement", 0, fit.motionSd(), OptionalDouble.of(0)));
        events.add(new Event(
                "full thrust",
                fit.curve().buildUpS(),
                Math.sqrt(fit.settled().covariance()[StartFit.BUILD_UP][StartFit.BUILD_UP]),
                OptionalDouble.of(fit.curve().speedMps(fit.curve().buildUpS()))));
        for (var target : Target.values()) {
            start.reached(target)
                    .ifPresent(yes -> events.add(new Event(
                            target.words(), yes.timeS(), yes.crossingSd(), OptionalDouble.of(target.speedMps()))));
        }
        return events;
    }
}
