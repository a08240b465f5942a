package org.measuredmile.trial.coastdown;

import java.util.Arrays;
import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.day.Run;
import org.measuredmile.roadload.CoastDown;
import org.measuredmile.roadload.Coasting;
import org.measuredmile.roadload.Setting;
import org.measuredmile.trial.RoadSetting;

/// One coast as this trial sees it: what was written down, its speeds, and why it does not count.
///
/// Shape: `reason` is empty when it can be paired; `direction` is `out`, `back` or empty; speeds come from a trace or
/// from two times read off a watch.
record CoastRun(
        Run run,
        String direction,
        String reason,
        Optional<TracedCoast> traced,
        Optional<Timed> timed,
        RoadSetting setting) {

    /// Times at which a display showed three speeds, the first at 0; `splitSdS` is the standard deviation of a
    /// split.
    record Timed(double[] timesS, double[] speedsMps, double splitSdS) {}

    boolean isUsable() {
        return reason.isEmpty() && (traced.isPresent() || timed.isPresent());
    }

    boolean isByHand() {
        return traced.isEmpty() && timed.isPresent();
    }

    /// The samples with times from their first, two a second: a faster receiver's are averaged, for gusts last
    /// longer, and so every receiver weighs the same against what is known beforehand.
    CoastDown.Run samples() {
        boolean out = !direction.equals("back");
        if (traced.isPresent()) {
            return averaged(out, traced.get().samples());
        }
        var by = timed.orElseThrow();
        return new CoastDown.Run(out, by.timesS(), by.speedsMps());
    }

    /// How the errors of these samples lean on each other: gusts push the whole rest of a coast off, beside
    /// them the receiver's own noise, or the watch's, which is one of speed through the rate at which it falls.
    ///
    /// Shape: one row and column a sample. Unit: (m/s)².
    double[][] covariance(CoastDown.Run samples, Setting setting, Coasting.Along along) {
        var load = CoastdownRules.USUAL_LOAD;
        double[][] covariance =
                CoastdownRules.GUSTS.covariance(samples, setting, load.dragAreaM2(), along.headWindMps());
        double[] falls = new double[samples.speedsMps().length];
        double floor = isByHand() ? CoastdownRules.AS_SHOWN_MPS : CoastdownRules.SAMPLE_SD_MPS;
        for (int i = 0; i < falls.length; i++) {
            covariance[i][i] += floor * floor;
            double forceN = load.forceN(setting, samples.speedsMps()[i], along.grade(), along.headWindMps());
            falls[i] = Math.max(CoastdownRules.LEAST_FALL_MPS2, forceN / setting.effectiveKg());
        }
        if (isByHand()) {
            // The first time is no measurement; every split adds its error to all times that follow.
            double splitVar =
                    timed.orElseThrow().splitSdS() * timed.orElseThrow().splitSdS();
            for (int i = 1; i < falls.length; i++) {
                for (int k = 1; k < falls.length; k++) {
                    covariance[i][k] += falls[i] * falls[k] * splitVar * Math.min(i, k);
                }
            }
        }
        return covariance;
    }

    private static CoastDown.Run averaged(boolean out, Channel samples) {
        double[] times = new double[samples.size()];
        double[] speeds = new double[samples.size()];
        int size = 0;
        int from = 0;
        while (from < samples.size()) {
            int to = from;
            double time = 0;
            double speed = 0;
            while (to < samples.size() && samples.timeS(to) < samples.timeS(from) + CoastdownRules.AVERAGED_OVER_S) {
                time += samples.timeS(to);
                speed += samples.value(to);
                to++;
            }
            times[size] = time / (to - from);
            speeds[size] = speed / (to - from);
            size++;
            from = to;
        }
        double first = times[0];
        for (int i = 0; i < size; i++) {
            times[i] -= first;
        }
        return new CoastDown.Run(out, Arrays.copyOf(times, size), Arrays.copyOf(speeds, size));
    }

    double highestMps() {
        return samples().speedsMps()[0];
    }

    double lowestMps() {
        double[] speeds = samples().speedsMps();
        return speeds[speeds.length - 1];
    }
}
