package org.measuredmile.recording.motion;

import java.util.Arrays;
import org.measuredmile.recording.Channel;

/// The search for one clock's shift. See [ClockShift].
final class ClockShiftSearch {
    private static final int FEWEST = 60;
    private static final int FEWEST_EDGES = 4;
    private static final double UPPER = 0.9;
    private static final double AT_WORK = 0.1;
    private final Channel speed;
    private final Channel other;
    private final double[] rides;
    private final double[] works;

    ClockShiftSearch(Channel speed, Channel other) {
        this.speed = speed;
        this.other = other;
        this.rides = grid(speed);
        this.works = grid(other);
    }

    private static double[] grid(Channel channel) {
        if (channel.size() < 2) {
            return new double[0];
        }
        double limit = AT_WORK * upper(channel);
        double spanS = channel.timeS(channel.size() - 1) - channel.timeS(0);
        double[] cells = new double[(int) Math.floor(spanS / ClockShift.STEP_S) + 1];
        double longestS = Math.max(3 * ClockShift.STEP_S, 3 * channel.medianStepS());
        for (int i = 0; i < cells.length; i++) {
            double value = Interpolation.at(channel, channel.timeS(0) + i * ClockShift.STEP_S, longestS)
                    .orElse(0);
            cells[i] = value > limit ? 1 : 0;
        }
        return cells;
    }

    private static double upper(Channel channel) {
        double[] sorted = channel.values().clone();
        Arrays.sort(sorted);
        return sorted[(int) (UPPER * (sorted.length - 1))];
    }

    private static int edges(double[] cells) {
        int edges = 0;
        for (int i = 1; i < cells.length; i++) {
            edges += cells[i] != cells[i - 1] ? 1 : 0;
        }
        return edges;
    }

    ClockShift found() {
        if (rides.length < FEWEST || works.length < FEWEST) {
            return new ClockShift.Refused("a record is shorter than two minutes");
        }
        if (edges(rides) < FEWEST_EDGES || edges(works) < FEWEST_EDGES) {
            return new ClockShift.Refused("the ride has too few stops to lay the other record's clock on it");
        }
        int overlap = Math.min(rides.length, works.length) / 2;
        int lowest = overlap - works.length;
        int highest = rides.length - overlap;
        double[] likeness = new double[highest - lowest + 1];
        int best = 0;
        for (int k = 0; k < likeness.length; k++) {
            likeness[k] = likeness(lowest + k);
            best = likeness[k] > likeness[best] ? k : best;
        }
        if (likeness[best] < ClockShift.LEAST_LIKENESS) {
            return ClockShift.flat(likeness[best]);
        }
        int near = (int) (ClockShift.RIVAL_S / ClockShift.STEP_S);
        for (int k = 0; k < likeness.length; k++) {
            if (Math.abs(k - best) > near && likeness[k] > ClockShift.RIVAL * likeness[best]) {
                return new ClockShift.Refused("another shift of the clocks fits as well");
            }
        }
        double shiftS = speed.timeS(0) - other.timeS(0) + (lowest + best + peak(likeness, best)) * ClockShift.STEP_S;
        return new ClockShift.Known(shiftS, ClockShift.STEP_S / 2, likeness[best]);
    }

    /// Where the top of the parabola through the best shift and its neighbours lies, in cells from the best.
    private static double peak(double[] likeness, int best) {
        if (best == 0 || best == likeness.length - 1) {
            return 0;
        }
        double left = likeness[best - 1];
        double right = likeness[best + 1];
        double bend = left - 2 * likeness[best] + right;
        return bend < 0 ? Math.clamp((left - right) / (2 * bend), -0.5, 0.5) : 0;
    }

    /// The correlation of the cells that two records have in common, `works[i]` beside `rides[i + shift]`.
    private double likeness(int shift) {
        int from = Math.max(0, -shift);
        int to = Math.min(works.length, rides.length - shift);
        double n = to - from;
        double sumA = 0;
        double sumB = 0;
        double both = 0;
        for (int i = from; i < to; i++) {
            double a = rides[i + shift];
            double b = works[i];
            sumA += a;
            sumB += b;
            both += a * b;
        }
        double varianceA = sumA * (n - sumA);
        double varianceB = sumB * (n - sumB);
        return varianceA <= 0 || varianceB <= 0 ? 0 : (n * both - sumA * sumB) / Math.sqrt(varianceA * varianceB);
    }
}
