package org.measuredmile.desk.web.view;

import java.util.Arrays;
import org.measuredmile.publication.chart.TracePlot;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.Trace;

/// Draws a run's trace for a page.
final class Traces {
    private static final double WIDE = 860;
    private static final double NARROW = 352;

    private Traces() {}

    static OriginView.TraceView of(RunResult run, Trace trace, Place place) {
        String title = "Run " + run.run();
        var scale = place.printing().scale(trace.kind());
        return new OriginView.TraceView(
                title,
                place.href(run.run()),
                new TracePlot(trace, scale, WIDE).svg(title),
                new TracePlot(trace, scale, NARROW).svg(title),
                caption(trace));
    }

    /// The day whose runs are drawn, and how its numbers are printed.
    record Place(Printing printing, String day) {
        String href(String run) {
            return Paths.run(day, run);
        }
    }

    private static String caption(Trace trace) {
        long dropped = count(trace, Trace.Role.DROPPED);
        String left = dropped == 0
                ? "Nothing was filled in or dropped."
                : Printing.count(dropped, "sample was", "samples were") + " dropped: rings with a stroke.";
        boolean hasModel = count(trace, Trace.Role.MODEL) > 0;
        return hasModel
                ? "Samples, fitted model and events; under them sample minus model on the same time axis. " + left
                : "Samples and events as recorded. " + left;
    }

    static boolean canDraw(Trace trace) {
        return count(trace, Trace.Role.SAMPLES) + count(trace, Trace.Role.MODEL) > 1;
    }

    private static long count(Trace trace, Trace.Role role) {
        return trace.lines().stream()
                .filter(line -> line.role() == role)
                .mapToLong(line -> Arrays.stream(line.timesS()).count())
                .sum();
    }
}
