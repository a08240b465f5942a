package org.measuredmile.trial.engagement;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.trial.Trace;

/// The picture of a push: its acceleration, when the cranks began and stopped, and when the thrust came and went.
final class PushPlot {
    private PushPlot() {}

    static Trace of(TracedPush push) {
        double originS = push.cranksBeginS();
        var samples = push.acceleration()
                .between(originS - EngagementRules.BEFORE_S, push.cranksEndS() + EngagementRules.AFTER_S);
        double[] times = samples.timesS().clone();
        for (int i = 0; i < times.length; i++) {
            times[i] -= originS;
        }
        var events = new ArrayList<Trace.Event>();
        events.add(event("cranks turn", 0, push.crankSdS()));
        events.add(event("cranks stop", push.cranksEndS() - originS, push.crankSdS()));
        push.comes().ifPresent(one -> {
            if (one instanceof ThrustChange.Found found) {
                events.add(event("thrust begins", found.beginS() - originS, found.beginSdS()));
            }
        });
        push.goes().ifPresent(one -> {
            if (one instanceof ThrustChange.Found found) {
                events.add(event("thrust gone", found.endS() - originS, found.endSdS()));
            }
        });
        return new Trace(
                push.recording().name(),
                originS,
                "first crank movement",
                QuantityKind.ACCELERATION,
                List.of(new Trace.Line(Trace.Role.SAMPLES, "forward acceleration", times, samples.values())),
                events);
    }

    private static Trace.Event event(String title, double timeS, double sdS) {
        return new Trace.Event(title, timeS, sdS, OptionalDouble.empty());
    }
}
