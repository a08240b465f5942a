package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.measuredmile.trial.assistspeed.SecondMeans.Span;

/// Splits a trace into pieces of constant speed when nobody announced how many: optimal segmentation on the mean, with
/// a penalty for each change that allows for speeds being alike from one second to the next.
///
/// Valid: exact, in n²/2 steps for a moving span of n seconds.
/// Source: the recursion is that of optimal partitioning (Jackson and others 2005, IEEE Signal Processing Letters 12,
/// 105–108, from memory); the penalty is this project's own (docs/handbook/assistspeed.md).
final class SteadyPieces {
    private SteadyPieces() {}

    /// The pieces of every moving span, in order, neighbours of nearly the same speed joined.
    static List<Span> of(double[] speedMps, List<Span> moving, AssistSpeedRules rules) {
        var sums = new SpeedSums(speedMps);
        int seconds = moving.stream()
                .mapToInt(span -> sums.count(span.from(), span.to()))
                .sum();
        var pieces = new ArrayList<Span>();
        for (var span : moving) {
            pieces.addAll(joined(partition(sums, span, rules.changePenalty(seconds), 1), sums, rules.mergeBelowMps()));
        }
        return pieces;
    }

    /// The division of one span that costs least, each piece at least `leastS` long.
    static List<Span> partition(SpeedSums sums, Span span, double penalty, int leastS) {
        int n = span.lengthS();
        double[] best = new double[n + 1];
        int[] before = new int[n + 1];
        Arrays.fill(best, Double.POSITIVE_INFINITY);
        best[0] = -penalty;
        for (int j = leastS; j <= n; j++) {
            for (int i = 0; i <= j - leastS; i++) {
                double cost = best[i] + sums.constantCost(span.from() + i, span.from() + j) + penalty;
                if (cost < best[j]) {
                    best[j] = cost;
                    before[j] = i;
                }
            }
        }
        var pieces = new ArrayList<Span>();
        for (int j = n; j > 0; j = before[j]) {
            pieces.add(new Span(span.from() + before[j], span.from() + j));
        }
        Collections.reverse(pieces);
        return pieces;
    }

    private static List<Span> joined(List<Span> pieces, SpeedSums sums, double belowMps) {
        var joined = new ArrayList<Span>();
        for (var piece : pieces) {
            if (joined.isEmpty()) {
                joined.add(piece);
                continue;
            }
            var last = joined.getLast();
            double step = Math.abs(sums.meanMps(piece.from(), piece.to()) - sums.meanMps(last.from(), last.to()));
            if (step < belowMps) {
                joined.set(joined.size() - 1, new Span(last.from(), piece.to()));
            } else {
                joined.add(piece);
            }
        }
        return joined;
    }
}
