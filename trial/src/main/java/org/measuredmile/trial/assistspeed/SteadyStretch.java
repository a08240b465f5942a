package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.recording.motion.SecondMeans;
import org.measuredmile.recording.motion.SecondMeans.Span;

/// A stretch of constant speed that may count, and why it does not.
///
/// Shape: `kept` are the seconds used, by index: what is there, without the ends, without pieces too short between
/// gaps. `refusal` is empty when it counts.
record SteadyStretch(Span span, int[] kept, double meanMps, String refusal) {
    boolean counts() {
        return refusal.isEmpty();
    }

    int heldS() {
        return kept.length;
    }

    /// Judges a piece of a trace.
    ///
    /// @param name what reasons call it: "level 3", "this stretch"
    static SteadyStretch judged(SecondMeans means, Span span, String name, AssistSpeedRules rules) {
        var inside =
                new Span(span.from() + rules.trimS(), Math.max(span.from() + rules.trimS(), span.to() - rules.trimS()));
        int[] present = means.presentIn(inside);
        int[] kept = piecesLongEnough(present, rules);
        double[] speeds = means.at(kept.length > 0 ? kept : present);
        double mean = mean(speeds);
        return new SteadyStretch(span, kept, mean, refusal(present, kept, means, name, rules));
    }

    private static String refusal(int[] present, int[] kept, SecondMeans means, String name, AssistSpeedRules rules) {
        if (present.length < rules.leastHeldS()) {
            return name + " held for " + AssistSpeedWords.seconds(present.length) + ", "
                    + AssistSpeedWords.seconds(rules.leastHeldS()) + " needed";
        }
        if (kept.length == 0) {
            return name + ": gaps leave no " + AssistSpeedWords.seconds(rules.leastHeldS()) + " in one piece";
        }
        double[] speeds = means.at(kept);
        double slope = slope(kept, speeds);
        double spread = spread(kept, speeds, slope);
        double mean = mean(speeds);
        if (longestHeldValue(speeds) >= rules.longestHeldValueS()) {
            return name + ": the same value for " + AssistSpeedWords.seconds(longestHeldValue(speeds))
                    + "; the instrument holds its last value";
        }
        if (!(Math.abs(slope) <= rules.mostSlopeMps2())) {
            return name + ": slope " + AssistSpeedWords.slope(slope) + ", at most "
                    + AssistSpeedWords.slope(rules.mostSlopeMps2()) + " either way";
        }
        if (!(spread <= rules.mostSpreadMps())) {
            return name + ": scatters by " + AssistSpeedWords.speed(spread) + ", at most "
                    + AssistSpeedWords.speed(rules.mostSpreadMps());
        }
        if (!(mean >= rules.leastSpeedMps() && mean <= rules.mostSpeedMps())) {
            return name + ": " + AssistSpeedWords.speed(mean) + " is outside "
                    + AssistSpeedWords.speed(rules.leastSpeedMps()) + " to "
                    + AssistSpeedWords.speed(rules.mostSpeedMps());
        }
        return "";
    }

    private static int[] piecesLongEnough(int[] present, AssistSpeedRules rules) {
        List<Integer> kept = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= present.length; i++) {
            if (i == present.length || present[i] - present[i - 1] - 1 > rules.longestGapS()) {
                if (i - from >= rules.leastHeldS()) {
                    for (int k = from; k < i; k++) {
                        kept.add(present[k]);
                    }
                }
                from = i;
            }
        }
        return kept.stream().mapToInt(Integer::intValue).toArray();
    }

    private static int longestHeldValue(double[] speeds) {
        int longest = 0;
        int held = 0;
        for (int i = 0; i < speeds.length; i++) {
            held = i > 0 && speeds[i] == speeds[i - 1] ? held + 1 : 1;
            longest = Math.max(longest, held);
        }
        return longest;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return values.length == 0 ? 0 : sum / values.length;
    }

    private static double slope(int[] seconds, double[] speeds) {
        double meanTime = java.util.Arrays.stream(seconds).average().orElse(0);
        double meanSpeed = mean(speeds);
        double product = 0;
        double square = 0;
        for (int i = 0; i < seconds.length; i++) {
            product += (seconds[i] - meanTime) * (speeds[i] - meanSpeed);
            square += (seconds[i] - meanTime) * (seconds[i] - meanTime);
        }
        return product / square;
    }

    private static double spread(int[] seconds, double[] speeds, double slope) {
        double meanTime = java.util.Arrays.stream(seconds).average().orElse(0);
        double meanSpeed = mean(speeds);
        double sum = 0;
        for (int i = 0; i < seconds.length; i++) {
            double residual = speeds[i] - meanSpeed - slope * (seconds[i] - meanTime);
            sum += residual * residual;
        }
        return Math.sqrt(sum / Math.max(1, seconds.length - 2));
    }
}
