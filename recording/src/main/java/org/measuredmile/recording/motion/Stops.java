package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.measuredmile.recording.Channel;

/// Candidate stops in a speed channel: every stretch in which most of the speed is lost, qualified or not.
///
/// Shape: a speed channel in, candidates in order of time out. A fall is followed from a high to the next low,
/// where rises of less than [#HYSTERESIS_MPS] do not interrupt it.
public final class Stops {
    /// A rise that ends a fall.
    static final double HYSTERESIS_MPS = 1.0;
    /// A fall that loses less is no candidate.
    static final double LEAST_LOSS_MPS = 3.0;
    /// The time over which a slope is taken.
    private static final double WINDOW_S = 0.5;
    /// Below this a bike counts as standing.
    public static final double REST_MPS = 0.5;

    private Stops() {}

    /// A fall of speed.
    ///
    /// Unit: seconds on the recording's time base, metres per second. `onsetS` lies just before the speed begins
    /// to fall in earnest, `restS` the first sample at or below [#REST_MPS], or the lowest when there is none;
    /// `entryMps` the median of the second before onset; `restForS` how long the speed stays at or below
    /// [#REST_MPS]; `endS` the last sample before the bike moves again.
    public record Stop(double onsetS, double restS, double endS, double entryMps, double lowestMps, double restForS) {
        /// Whether the bike came to stand.
        public boolean cameToRest() {
            return lowestMps <= REST_MPS;
        }

        /// Mean deceleration between onset and rest.
        public double roughDecelerationMps2() {
            return (entryMps - lowestMps) / Math.max(restS - onsetS, 1e-3);
        }
    }

    /// All candidates, in order of time.
    public static List<Stop> find(Channel speed) {
        var found = new ArrayList<Stop>();
        int high = 0;
        int low = 0;
        for (int i = 1; i < speed.size(); i++) {
            double value = speed.value(i);
            if (low > high) {
                if (value < speed.value(low)) {
                    low = i;
                } else if (value > speed.value(low) + HYSTERESIS_MPS) {
                    add(found, speed, high, low);
                    high = i;
                    low = i;
                }
            } else if (value > speed.value(high)) {
                high = i;
                low = i;
            } else if (value < speed.value(high) - HYSTERESIS_MPS) {
                low = i;
            }
        }
        if (low > high) {
            add(found, speed, high, low);
        }
        return List.copyOf(found);
    }

    private static void add(List<Stop> found, Channel speed, int high, int low) {
        if (speed.value(high) - speed.value(low) < LEAST_LOSS_MPS) {
            return;
        }
        int rest = firstAtRest(speed, high, low);
        int end = lastAtRest(speed, rest);
        int onset = onset(speed, high, rest);
        double before = speed.timeS(onset);
        double entry = median(speed, before - 1.0, before);
        found.add(new Stop(
                before,
                speed.timeS(rest),
                speed.timeS(end),
                entry,
                speed.value(low),
                speed.value(rest) <= REST_MPS ? speed.timeS(end) - speed.timeS(rest) : 0));
    }

    private static int firstAtRest(Channel speed, int high, int low) {
        for (int i = high; i <= low; i++) {
            if (speed.value(i) <= REST_MPS) {
                return i;
            }
        }
        return low;
    }

    private static int lastAtRest(Channel speed, int rest) {
        int end = rest;
        while (end + 1 < speed.size() && speed.value(end + 1) <= REST_MPS) {
            end++;
        }
        return end;
    }

    /// Backwards from the steepest half second to the first that is less than a quarter as steep.
    private static int onset(Channel speed, int high, int rest) {
        int steepest = high;
        for (int i = high; i < rest; i++) {
            if (slope(speed, i, rest) > slope(speed, steepest, rest)) {
                steepest = i;
            }
        }
        double enough = slope(speed, steepest, rest) / 4;
        int onset = steepest;
        while (onset > high && slope(speed, onset, rest) >= enough) {
            onset--;
        }
        return onset;
    }

    /// Loss of speed per second over the window that begins at a sample.
    private static double slope(Channel speed, int from, int last) {
        int to = Math.min(last, speed.indexAtOrAfter(speed.timeS(from) + WINDOW_S));
        return to <= from ? 0 : (speed.value(from) - speed.value(to)) / (speed.timeS(to) - speed.timeS(from));
    }

    /// The middle value of the samples from `fromS` to `toS`, both included; NaN when there are none.
    public static double median(Channel channel, double fromS, double toS) {
        double[] values = channel.between(fromS, toS).values().clone();
        if (values.length == 0) {
            return Double.NaN;
        }
        Arrays.sort(values);
        int middle = values.length / 2;
        return values.length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }
}
