package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.recording.motion.SecondMeans.Span;

/// Splits a trace into pieces of constant speed when nobody announced how many: optimal segmentation on the mean, with
/// a penalty for each change that allows for speeds being alike from one second to the next.
///
/// Source: [ChangePoints]; the penalty is this project's own ([ChangePoints.Wander]).
public final class SteadyPieces {
    private SteadyPieces() {}

    /// The pieces of every moving span, in order, neighbours of nearly the same speed joined.
    ///
    /// @param penalty what one more piece must save, (m/s)²
    /// @param mergeBelowMps a smaller step between neighbours is none
    public static List<Span> of(double[] speedMps, List<Span> moving, double penalty, double mergeBelowMps) {
        var sums = new RunningSums(speedMps);
        var pieces = new ArrayList<Span>();
        for (var span : moving) {
            pieces.addAll(joined(ChangePoints.of(span, sums::constantCost, penalty, 1), sums, mergeBelowMps));
        }
        return pieces;
    }

    private static List<Span> joined(List<Span> pieces, RunningSums sums, double belowMps) {
        var joined = new ArrayList<Span>();
        for (var piece : pieces) {
            if (joined.isEmpty()) {
                joined.add(piece);
                continue;
            }
            var last = joined.getLast();
            double step = Math.abs(sums.mean(piece.from(), piece.to()) - sums.mean(last.from(), last.to()));
            if (step < belowMps) {
                joined.set(joined.size() - 1, new Span(last.from(), piece.to()));
            } else {
                joined.add(piece);
            }
        }
        return joined;
    }
}
