package org.measuredmile.recording.spoken;

import org.measuredmile.recording.Channel;
import org.measuredmile.recording.motion.SpeedSource;

/// A speed trace at even steps of time, straight between samples, with nothing across its gaps.
///
/// Unit: seconds from the recording's start, metres per second; NaN where there is nothing.
record TraceTable(double fromS, double[] mps) {
    static final double STEP_S = 0.1;
    private static final double LONGEST_STEP_S = 3;

    static TraceTable of(SpeedSource speed) {
        Channel channel = speed.channel();
        double fromS = channel.timeS(0);
        double spanS = channel.timeS(channel.size() - 1) - fromS;
        double[] mps = new double[(int) Math.floor(spanS / STEP_S) + 1];
        for (int i = 0; i < mps.length; i++) {
            mps[i] = at(channel, fromS + i * STEP_S);
        }
        return new TraceTable(fromS, mps);
    }

    private static double at(Channel channel, double timeS) {
        int after = channel.indexAtOrAfter(timeS);
        if (after < channel.size() && channel.timeS(after) == timeS) {
            return channel.value(after);
        }
        if (after == 0 || after == channel.size()) {
            return Double.NaN;
        }
        double stepS = channel.timeS(after) - channel.timeS(after - 1);
        if (stepS > LONGEST_STEP_S) {
            return Double.NaN;
        }
        double share = (timeS - channel.timeS(after - 1)) / stepS;
        return channel.value(after - 1) + share * (channel.value(after) - channel.value(after - 1));
    }

    double toS() {
        return fromS + (mps.length - 1) * STEP_S;
    }

    /// The speed at a time; NaN where there is nothing.
    double at(double timeS) {
        long index = Math.round((timeS - fromS) / STEP_S);
        return index >= 0 && index < mps.length ? mps[(int) index] : Double.NaN;
    }

    /// The same trace from its end to its beginning: speeds as they come, in an order that nobody rode.
    TraceTable reversed() {
        double[] back = new double[mps.length];
        for (int i = 0; i < back.length; i++) {
            back[i] = mps[mps.length - 1 - i];
        }
        return new TraceTable(fromS, back);
    }
}
