package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.measuredmile.recording.motion.SecondMeans.Span;

/// The division of a series into pieces that costs least: the pieces' own costs and a penalty for each.
///
/// Shape: half-open pieces that cover the series in order, each at least so long; none where the series is shorter.
/// Valid: exact, for a cost that never rises when a piece is cut in two (a residual sum of squares about a piece's own
/// mean or line is one). A beginning s is dropped for good once F(s) + C(s, t) > F(t): whatever follows t does better
/// by
/// cutting there, from t plus the least length on. With changes throughout the series the work grows about in
/// proportion to its length; without any it grows with the square.
/// Source: optimal partitioning by Jackson and others (2005), IEEE Signal Processing Letters 12, 105–108; pruning by
/// Killick, Fearnhead and Eckley (2012), Journal of the American Statistical Association 107, 1590–1598, theorem 3.1
/// (both from memory); that pruning waits for the least length is ours.
public final class ChangePoints {
    /// What rounding may do to a comparison of two sums.
    private static final double ROUNDING = 1e-9;

    private ChangePoints() {}

    /// What a piece costs.
    @FunctionalInterface
    public interface Cost {
        double of(int from, int to);
    }

    /// How a steady speed wanders: so much, resembling itself over so long.
    ///
    /// Unit: standard deviation of the values, and seconds.
    public record Wander(double sd, double memoryS) {
        /// What one more change must save to be believed, in squares of the values' unit: 2·ln n times the
        /// long-run variance σ²·max(1, τ/Δt) of the wander. A penalty for independent noise would cut a
        /// wandering level into a dozen pieces.
        ///
        /// Source: this project's own study of assist levels (docs/handbook/assistspeed.md).
        public double penalty(int count, double stepS) {
            return 2 * StrictMath.log(Math.max(2, count)) * sd * sd * Math.max(1, memoryS / stepS);
        }
    }

    /// The cheapest division of a span, each piece at least `least` long.
    public static List<Span> of(Span span, Cost cost, double penalty, int least) {
        return new Programme(span, cost, penalty, Math.max(1, least)).solved();
    }

    private static final class Programme {
        private final Span span;
        private final Cost cost;
        private final double penalty;
        private final int least;
        private final double[] best;
        private final int[] before;
        private final int[] dropsAt;
        private int[] begins;
        private int count;

        Programme(Span span, Cost cost, double penalty, int least) {
            int n = span.lengthS();
            this.span = span;
            this.cost = cost;
            this.penalty = penalty;
            this.least = least;
            this.best = new double[n + 1];
            this.before = new int[n + 1];
            this.dropsAt = new int[n + 1];
            this.begins = new int[n + 1];
            Arrays.fill(best, Double.POSITIVE_INFINITY);
            Arrays.fill(dropsAt, Integer.MAX_VALUE);
            best[0] = -penalty;
        }

        List<Span> solved() {
            int n = best.length - 1;
            if (n < least) {
                return List.of();
            }
            double[] upTo = new double[n + 1];
            for (int j = least; j <= n; j++) {
                if (Double.isFinite(best[j - least])) {
                    begins[count++] = j - least;
                }
                for (int k = 0; k < count; k++) {
                    int i = begins[k];
                    upTo[i] = best[i] + cost.of(span.from() + i, span.from() + j);
                    if (upTo[i] + penalty < best[j]) {
                        best[j] = upTo[i] + penalty;
                        before[j] = i;
                    }
                }
                drop(j, upTo);
            }
            var pieces = new ArrayList<Span>();
            for (int j = n; j > 0; j = before[j]) {
                pieces.add(new Span(span.from() + before[j], span.from() + j));
            }
            Collections.reverse(pieces);
            return pieces;
        }

        private void drop(int j, double[] upTo) {
            double slack = ROUNDING * (1 + Math.abs(best[j]));
            int kept = 0;
            for (int k = 0; k < count; k++) {
                int i = begins[k];
                if (upTo[i] > best[j] + slack) {
                    dropsAt[i] = Math.min(dropsAt[i], j + least);
                }
                if (dropsAt[i] > j + 1) {
                    begins[kept++] = i;
                }
            }
            count = kept;
        }
    }
}
