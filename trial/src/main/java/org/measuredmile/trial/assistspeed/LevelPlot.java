package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.motion.SecondMeans;
import org.measuredmile.recording.motion.SecondMeans.Span;
import org.measuredmile.trial.Trace;

/// What is drawn of a level: its seconds, those left out around them, and the speed it held.
final class LevelPlot {
    private static final int AROUND_S = 10;

    private LevelPlot() {}

    static Trace of(String file, SecondMeans means, Span span, List<SteadyStretch> stretches) {
        int from = Math.max(0, span.from() - AROUND_S);
        int to = Math.min(means.size(), span.to() + AROUND_S);
        boolean[] used = new boolean[means.size()];
        var lines = new ArrayList<Trace.Line>();
        double originS = means.timeS(span.from());
        for (var stretch : stretches) {
            Arrays.stream(stretch.kept()).forEach(i -> used[i] = stretch.counts());
        }
        lines.add(line(Trace.Role.SAMPLES, "speed", means, originS, pick(means, from, to, used, true)));
        lines.add(line(Trace.Role.DROPPED, "left out", means, originS, pick(means, from, to, used, false)));
        for (var stretch : stretches) {
            if (stretch.counts()) {
                double[] times = {
                    means.timeS(stretch.span().from()) - originS,
                    means.timeS(stretch.span().to()) - originS
                };
                double[] speeds = {stretch.meanMps(), stretch.meanMps()};
                lines.add(new Trace.Line(Trace.Role.MODEL, "held speed", times, speeds));
            }
        }
        return new Trace(file, originS, "the steady stretch begins", QuantityKind.SPEED, lines, List.of());
    }

    private static int[] pick(SecondMeans means, int from, int to, boolean[] used, boolean wanted) {
        return Arrays.stream(means.presentIn(new Span(from, to)))
                .filter(i -> used[i] == wanted)
                .toArray();
    }

    private static Trace.Line line(Trace.Role role, String title, SecondMeans means, double originS, int[] seconds) {
        double[] times = Arrays.stream(seconds)
                .mapToDouble(i -> means.timeS(i) - originS)
                .toArray();
        return new Trace.Line(role, title, times, means.at(seconds));
    }
}
