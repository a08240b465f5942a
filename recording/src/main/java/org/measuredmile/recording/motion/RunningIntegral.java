package org.measuredmile.recording.motion;

import org.measuredmile.recording.Channel;

/// A channel added up over time, once and twice, with straight lines between its samples.
///
/// Unit: that of the channel times seconds, and times seconds squared; from the first sample on. Before the first and
/// after the last sample the channel is taken to stay as it is there.
final class RunningIntegral {
    private final double[] times;
    private final double[] values;
    private final double[] once;
    private final double[] twice;

    /// Shape: at least two samples.
    RunningIntegral(Channel channel) {
        this.times = channel.timesS();
        this.values = channel.values();
        this.once = new double[times.length];
        this.twice = new double[times.length];
        for (int i = 1; i < times.length; i++) {
            double step = times[i] - times[i - 1];
            once[i] = once[i - 1] + (values[i - 1] + values[i]) / 2 * step;
            twice[i] = twice[i - 1] + once[i - 1] * step + (2 * values[i - 1] + values[i]) / 6 * step * step;
        }
    }

    double once(double timeS) {
        int i = before(timeS);
        double d = timeS - times[i];
        return once[i] + values[i] * d + slope(i, timeS) * d * d / 2;
    }

    double twice(double timeS) {
        int i = before(timeS);
        double d = timeS - times[i];
        return twice[i] + once[i] * d + values[i] * d * d / 2 + slope(i, timeS) * d * d * d / 6;
    }

    /// The mean between two different times.
    double mean(double fromS, double toS) {
        return (once(toS) - once(fromS)) / (toS - fromS);
    }

    double firstS() {
        return times[0];
    }

    double lastS() {
        return times[times.length - 1];
    }

    private int before(double timeS) {
        int found = java.util.Arrays.binarySearch(times, timeS);
        return Math.max(0, found >= 0 ? found : -found - 2);
    }

    private double slope(int i, double timeS) {
        return timeS < times[0] || i + 1 >= times.length ? 0 : (values[i + 1] - values[i]) / (times[i + 1] - times[i]);
    }
}
