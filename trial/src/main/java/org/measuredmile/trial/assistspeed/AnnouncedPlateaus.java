package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.measuredmile.recording.motion.RunningSums;
import org.measuredmile.recording.motion.SecondMeans.Span;

/// Finds a known number of steady levels, in their order, in a trace: the division into plateaus, straight transitions
/// and riding to and from a stop that leaves the least to explain.
///
/// Shape: a plateau is a constant held for at least the least time inside one moving span. Between two plateaus of one
/// span lies a free straight line of 2 to 10 s, at a small cost a second; before the first, after the last, and where
/// the bike stood in between, seconds may be left out at a larger cost each.
/// Valid: about K·n²/2 steps for K levels in n seconds; the least cost is exact, not searched for.
final class AnnouncedPlateaus {
    private static final int NONE = -1;

    private final AssistSpeedRules rules;
    private final RunningSums sums;
    private final int seconds;
    private final int leastS;
    private final int[] spanStart;
    private final int[] moved;
    private final List<double[]> ends = new ArrayList<>();
    private final List<int[]> begins = new ArrayList<>();
    private final List<int[]> previousEnds = new ArrayList<>();

    /// What was found, and what it leaves unexplained.
    ///
    /// Unit: cost in (m/s)².
    record Found(List<Span> plateaus, double cost) {
        Found {
            plateaus = List.copyOf(plateaus);
        }
    }

    private AnnouncedPlateaus(AssistSpeedRules rules, double[] speedMps, List<Span> moving, int leastS) {
        this.rules = rules;
        this.sums = new RunningSums(speedMps);
        this.seconds = speedMps.length;
        this.leastS = leastS;
        this.spanStart = new int[seconds + 1];
        this.moved = new int[seconds + 1];
        Arrays.fill(spanStart, NONE);
        for (var span : moving) {
            Arrays.fill(spanStart, span.from() + 1, span.to() + 1, span.from());
        }
        for (int i = 0; i < seconds; i++) {
            boolean inside = spanStart[i + 1] != NONE;
            moved[i + 1] = moved[i] + (inside ? sums.count(i, i + 1) : 0);
        }
    }

    /// The best division for 1, 2 … up to the given number of plateaus; fewer when the trace holds no more.
    static List<Found> upTo(int most, double[] speedMps, List<Span> moving, AssistSpeedRules rules) {
        return upTo(most, speedMps, moving, rules, rules.leastHeldS());
    }

    static List<Found> upTo(int most, double[] speedMps, List<Span> moving, AssistSpeedRules rules, int leastS) {
        var programme = new AnnouncedPlateaus(rules, speedMps, moving, leastS);
        var found = new ArrayList<Found>();
        for (int k = 1; k <= most; k++) {
            programme.addPlateau();
            double[] end = programme.ends.getLast();
            int best = NONE;
            double cost = Double.POSITIVE_INFINITY;
            for (int j = 0; j <= programme.seconds; j++) {
                double whole = end[j] + programme.skipped(j, programme.seconds);
                if (whole < cost) {
                    cost = whole;
                    best = j;
                }
            }
            if (best == NONE) {
                break;
            }
            found.add(new Found(programme.traceBack(best), cost));
        }
        return found;
    }

    private double skipped(int from, int to) {
        return rules.skippedCostPerS() * (moved[to] - moved[from]);
    }

    private void addPlateau() {
        double[] start = new double[seconds + 1];
        int[] previousEnd = new int[seconds + 1];
        Arrays.fill(previousEnd, NONE);
        if (ends.isEmpty()) {
            for (int i = 0; i <= seconds; i++) {
                start[i] = skipped(0, i);
            }
        } else {
            startAfterStop(start, previousEnd, ends.getLast());
            startAfterTransition(start, previousEnd, ends.getLast());
        }
        double[] end = new double[seconds + 1];
        int[] begin = new int[seconds + 1];
        Arrays.fill(end, Double.POSITIVE_INFINITY);
        Arrays.fill(begin, NONE);
        for (int j = 1; j <= seconds; j++) {
            int from = spanStart[j];
            for (int i = from == NONE ? j : from; i <= j - leastS; i++) {
                double cost = start[i] + sums.constantCost(i, j);
                if (cost < end[j]) {
                    end[j] = cost;
                    begin[j] = i;
                }
            }
        }
        ends.add(end);
        begins.add(begin);
        previousEnds.add(previousEnd);
    }

    /// The next plateau lies in a later span: the rest of the earlier one and the beginning of the later are left
    /// out.
    private void startAfterStop(double[] start, int[] previousEnd, double[] ended) {
        double best = Double.POSITIVE_INFINITY;
        int bestEnd = NONE;
        int open = 0;
        for (int i = 0; i <= seconds; i++) {
            int here = i < seconds && spanStart[i + 1] != NONE ? spanStart[i + 1] : i;
            for (; open <= here; open++) {
                double cost = ended[open] - rules.skippedCostPerS() * moved[open];
                if (cost < best) {
                    best = cost;
                    bestEnd = open;
                }
            }
            start[i] = best + rules.skippedCostPerS() * moved[i];
            previousEnd[i] = bestEnd;
        }
    }

    private void startAfterTransition(double[] start, int[] previousEnd, double[] ended) {
        for (int i = 1; i < seconds; i++) {
            int from = spanStart[i];
            boolean goesOn = from != NONE && spanStart[i + 1] == from;
            for (int length = rules.shortestTransitionS(); goesOn && length <= rules.longestTransitionS(); length++) {
                int j = i - length;
                if (j < from + leastS) {
                    break;
                }
                double cost = ended[j] + sums.lineCost(j, i) + rules.transitionCostPerS() * length;
                if (cost < start[i]) {
                    start[i] = cost;
                    previousEnd[i] = j;
                }
            }
        }
    }

    private List<Span> traceBack(int lastEnd) {
        var plateaus = new ArrayList<Span>();
        int end = lastEnd;
        for (int k = ends.size() - 1; k >= 0; k--) {
            int begin = begins.get(k)[end];
            plateaus.add(new Span(begin, end));
            end = previousEnds.get(k)[begin];
        }
        Collections.reverse(plateaus);
        return plateaus;
    }
}
