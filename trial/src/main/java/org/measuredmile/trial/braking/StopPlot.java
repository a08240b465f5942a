package org.measuredmile.trial.braking;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.motion.InertialStop;
import org.measuredmile.trial.Trace;
import org.measuredmile.trial.Trace.Event;
import org.measuredmile.trial.Trace.Line;
import org.measuredmile.trial.Trace.Role;

/// The picture of a stop: raw samples, the fitted model, and its events with how well their times are known.
final class StopPlot {
    private static final double MODEL_STEP_S = 0.02;

    private StopPlot() {}

    static Optional<Trace> of(TracedStop stop) {
        var samples = stop.samples();
        if (samples.size() < 2) {
            return Optional.empty();
        }
        double origin = stop.onsetS();
        var lines = new ArrayList<Line>();
        String source = stop.source().kind().title();
        lines.add(new Line(Role.SAMPLES, source, shifted(samples.timesS(), origin), samples.values()));
        var events = new ArrayList<Event>();
        stop.fitted().ifPresent(fit -> {
            lines.add(model(fit, samples, origin));
            events.addAll(events(fit));
        });
        stop.sharp().ifPresent(sharp -> lines.add(sharp(sharp, samples, origin)));
        stop.leverS()
                .ifPresent(lever ->
                        events.addFirst(new Event("control moves", lever - origin, 0.02, OptionalDouble.empty())));
        return Optional.of(
                new Trace(stop.recording().name(), origin, "onset of deceleration", QuantityKind.SPEED, lines, events));
    }

    private static double[] shifted(double[] times, double origin) {
        double[] shifted = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            shifted[i] = times[i] - origin;
        }
        return shifted;
    }

    private static Line model(StopFit.Fitted fit, Channel samples, double origin) {
        double from = samples.timeS(0);
        int count = (int) Math.ceil((samples.timeS(samples.size() - 1) - from) / MODEL_STEP_S) + 1;
        double[] times = new double[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = from + i * MODEL_STEP_S - origin;
            values[i] = fit.shownMps(from + i * MODEL_STEP_S);
        }
        return new Line(Role.MODEL, "fitted model", times, values);
    }

    /// Late by the receiver's own lag, so that it lies on the samples.
    private static Line sharp(InertialStop.Known sharp, Channel samples, double origin) {
        double lagS = sharp.lagS();
        double from = sharp.onsetS() + lagS - 1;
        double to = Math.min(samples.timeS(samples.size() - 1), sharp.curve().restS() + lagS + 0.5);
        int count = Math.max(2, (int) Math.ceil((to - from) / MODEL_STEP_S) + 1);
        double[] times = new double[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = from + i * MODEL_STEP_S - origin;
            values[i] = Math.max(0, sharp.curve().speedMps(from + i * MODEL_STEP_S - lagS));
        }
        return new Line(Role.MODEL, BrakingWords.BOTH, times, values);
    }

    private static List<Event> events(StopFit.Fitted fit) {
        var curve = fit.curve();
        double onsetSd = fit.onsetSd();
        var rest = fit.settled().standardUncertainty(restGradient(fit));
        double[] build = new double[StopFit.FILTER + 1];
        build[StopFit.ONSET] = 1;
        build[StopFit.BUILD_UP] = 1;
        return List.of(
                new Event("onset", 0, onsetSd, OptionalDouble.of(curve.entryMps())),
                new Event(
                        "braking in full",
                        curve.buildUpS(),
                        fit.settled().standardUncertainty(build),
                        OptionalDouble.of(curve.entryMps() - curve.decelerationMps2() * curve.buildUpS() / 2)),
                new Event("rest", curve.durationS(), rest, OptionalDouble.of(0)));
    }

    private static double[] restGradient(StopFit.Fitted fit) {
        double[] gradient = fit.derive(StopCurve::durationS).gradient();
        gradient[StopFit.ONSET] += 1;
        return gradient;
    }
}
