package org.measuredmile.trial.braking;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

/// A ride of several stops by steps of a millisecond, sampled by a receiver that averages over a fifth of a second:
/// built
/// without any formula of the reduction.
final class SteppedRide {
    static final double STEP_S = 0.001;
    /// What the receiver shows, it shows late.
    static final double DELAY_S = 0.25;
    private final List<Double> speeds = new ArrayList<>();
    private final List<Double> levers = new ArrayList<>();
    private double lastStopM;

    /// Rides at a speed, then pulls the lever; deceleration sets in 0.1 s later, builds up over 0.2 s, holds, and
    /// the bike stands for 3 s.
    SteppedRide stop(double entryMps, double decelerationMps2) {
        hold(entryMps, 6, 0);
        hold(entryMps, 0.1, 1);
        double v = entryMps;
        double metres = 0;
        for (double t = 0; v > 0; t += STEP_S) {
            v = Math.max(0, v - decelerationMps2 * Math.min(1, t / 0.2) * STEP_S);
            speeds.add(v);
            levers.add(1.0);
            metres += v * STEP_S;
        }
        lastStopM = metres;
        hold(0, 3, 0);
        return this;
    }

    /// Slows to a walking pace and rides off again.
    SteppedRide slowDown(double entryMps) {
        hold(entryMps, 4, 0);
        for (double v = entryMps; v > 2; v -= 3 * STEP_S) {
            speeds.add(v);
            levers.add(0.0);
        }
        hold(2, 2, 0);
        return this;
    }

    private void hold(double speedMps, double seconds, double lever) {
        for (int i = 0; i < seconds / STEP_S; i++) {
            speeds.add(speedMps);
            levers.add(lever);
        }
    }

    /// From the onset of deceleration to rest, of the last stop, m.
    double lastStopM() {
        return lastStopM;
    }

    Channel speed(double rateHz, double startS, long seed) {
        var random = new Random(seed);
        int every = (int) Math.round(1 / rateHz / STEP_S);
        int half = 100;
        int count = (speeds.size() - 2 * half) / every;
        double[] times = new double[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            int at = half + i * every;
            double sum = 0;
            for (int k = at - half; k < at + half; k++) {
                sum += speeds.get(k);
            }
            times[i] = startS + at * STEP_S + DELAY_S;
            values[i] = Math.abs(sum / (2 * half) + 0.07 * random.nextGaussian());
        }
        return BrakingDays.speed(times, values);
    }

    Channel lever(double startS) {
        int count = levers.size() / 10;
        double[] times = new double[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = startS + i * 10 * STEP_S;
            values[i] = levers.get(i * 10);
        }
        return new Channel(ChannelKind.LEVER, "lever", "", new Channel.Series(times, values));
    }
}
