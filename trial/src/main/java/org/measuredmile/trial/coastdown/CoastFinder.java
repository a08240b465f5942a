package org.measuredmile.trial.coastdown;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.measuredmile.quantity.statistics.LineFit;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;

/// Finds every long, gentle fall of speed in a recording: what a bike does that nobody drives or brakes.
///
/// Shape: a recording in, candidates in order of time out. A fall goes on while a line through some seconds of speed
/// neither rises nor falls like a brake; where it begins and ends the samples that saw both are cut off.
final class CoastFinder {
    private final Recording recording;
    private final SpeedSource source;
    private final Channel speed;

    private CoastFinder(Recording recording, SpeedSource source) {
        this.recording = recording;
        this.source = source;
        this.speed = source.channel();
    }

    static List<TracedCoast> find(Recording recording, SpeedSource source) {
        return new CoastFinder(recording, source).coasts();
    }

    static boolean isTooCoarse(SpeedSource source) {
        return !(source.channel().medianStepS() <= CoastdownRules.RATE_SLACK / CoastdownRules.LEAST_RATE_HZ);
    }

    private List<TracedCoast> coasts() {
        var found = new ArrayList<TracedCoast>();
        double[] slopes = slopes();
        int from = 0;
        while (from < speed.size()) {
            if (!coasts(slopes[from]) || speed.value(from) < CoastdownRules.BEGINS_MPS) {
                from++;
                continue;
            }
            int to = from;
            while (to + 1 < speed.size()
                    && coasts(slopes[to + 1])
                    && !isGap(to + 1)
                    && speed.value(to + 1) >= CoastdownRules.FOLLOWED_TO_MPS) {
                to++;
            }
            add(found, from, to);
            from = to + 1;
        }
        return List.copyOf(found);
    }

    private static boolean coasts(double slopeMps2) {
        return slopeMps2 > -CoastdownRules.BRAKED_MPS2 && slopeMps2 < CoastdownRules.PUSHED_MPS2;
    }

    private boolean isGap(int index) {
        double step = speed.timeS(index) - speed.timeS(index - 1);
        return step > CoastdownRules.GAP_STEPS * speed.medianStepS();
    }

    /// The slope of a line through the samples around each sample, in m/s².
    private double[] slopes() {
        double[] slopes = new double[speed.size()];
        double half = Math.max(CoastdownRules.SLOPE_OVER_S / 2, 1.2 * speed.medianStepS());
        for (int i = 0; i < slopes.length; i++) {
            int from = speed.indexAtOrAfter(speed.timeS(i) - half);
            int to = speed.indexAtOrAfter(Math.nextUp(speed.timeS(i) + half));
            slopes[i] = to - from < 3 ? Double.NaN : slope(from, to);
        }
        return slopes;
    }

    private double slope(int from, int to) {
        double[] times = java.util.Arrays.copyOfRange(speed.timesS(), from, to);
        double[] values = java.util.Arrays.copyOfRange(speed.values(), from, to);
        return LineFit.through(times, values).slope();
    }

    private void add(List<TracedCoast> found, int from, int to) {
        int top = from;
        for (int i = from; i <= to; i++) {
            top = speed.value(i) > speed.value(top) ? i : top;
        }
        double beginS = speed.timeS(top) + CoastdownRules.TRIM_S;
        double endS = speed.timeS(to) - CoastdownRules.TRIM_S;
        var samples = speed.between(beginS, endS);
        if (samples.size() < 4
                || samples.value(0) - samples.value(samples.size() - 1) < CoastdownRules.LEAST_LOSS_MPS
                || endS - beginS < CoastdownRules.SHORTEST_S) {
            return;
        }
        found.add(new TracedCoast(recording, source, samples, faults(samples)));
    }

    private List<String> faults(Channel samples) {
        var faults = new ArrayList<String>();
        if (isTooCoarse(source)) {
            faults.add(String.format(
                    Locale.ROOT,
                    "sampled every %.1f s, at most %.1f s allowed",
                    source.channel().medianStepS(),
                    1 / CoastdownRules.LEAST_RATE_HZ));
        }
        if (source.kind() == SpeedSource.Kind.POSITIONS) {
            faults.add("no speed channel: steps between positions are too noisy for a coast");
        }
        if (samples.value(0) < CoastdownRules.BEGINS_MPS - 0.5) {
            faults.add(String.format(
                    Locale.ROOT,
                    "begins at %.1f km/h, at least %.0f km/h needed",
                    samples.value(0) * 3.6,
                    CoastdownRules.BEGINS_MPS * 3.6));
        }
        return faults;
    }
}
