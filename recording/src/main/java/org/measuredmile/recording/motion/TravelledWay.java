package org.measuredmile.recording.motion;

import java.util.OptionalDouble;
import org.measuredmile.recording.Channel;

/// The way that a speed went: its integral by trapezoids on the true time stamps, straight in speed across gaps.
///
/// Unit: seconds, metres from the first sample.
final class TravelledWay {
    private static final double GAP_STEPS = 2.5;
    private final Channel speed;
    private final double[] wayM;
    private final double longestStepS;

    private TravelledWay(Channel speed) {
        this.speed = speed;
        this.longestStepS = GAP_STEPS * speed.medianStepS();
        this.wayM = new double[speed.size()];
        for (int i = 1; i < wayM.length; i++) {
            double stepS = speed.timeS(i) - speed.timeS(i - 1);
            wayM[i] = wayM[i - 1] + stepS * (speed.value(i) + speed.value(i - 1)) / 2;
        }
    }

    static TravelledWay of(Channel speed) {
        return new TravelledWay(speed);
    }

    /// The way up to a time, on the line between the samples' ways; the ends outside the samples.
    double atM(double timeS) {
        int next = speed.indexAtOrAfter(timeS);
        if (next == 0) {
            return 0;
        }
        if (next >= speed.size()) {
            return wayM[wayM.length - 1];
        }
        double share = (timeS - speed.timeS(next - 1)) / (speed.timeS(next) - speed.timeS(next - 1));
        return wayM[next - 1] + share * (wayM[next] - wayM[next - 1]);
    }

    double betweenM(double fromS, double toS) {
        return atM(toS) - atM(fromS);
    }

    /// When so many metres have been gone since a time; nothing where the samples end before.
    OptionalDouble reachedS(double fromS, double metres) {
        double target = atM(fromS) + metres;
        int i = speed.indexAtOrAfter(fromS);
        while (i < wayM.length && wayM[i] < target) {
            i++;
        }
        if (i >= wayM.length || i == 0) {
            return OptionalDouble.empty();
        }
        double share = (target - wayM[i - 1]) / (wayM[i] - wayM[i - 1]);
        return OptionalDouble.of(speed.timeS(i - 1) + share * (speed.timeS(i) - speed.timeS(i - 1)));
    }

    /// The share of a stretch of time that lies in gaps or outside the samples.
    double missing(double fromS, double toS) {
        double missingS = Math.max(0, speed.timeS(0) - fromS) + Math.max(0, toS - speed.timeS(speed.size() - 1));
        for (int i = Math.max(1, speed.indexAtOrAfter(fromS)); i < speed.size() && speed.timeS(i - 1) < toS; i++) {
            double from = Math.max(fromS, speed.timeS(i - 1));
            double to = Math.min(toS, speed.timeS(i));
            missingS += speed.timeS(i) - speed.timeS(i - 1) > longestStepS ? to - from : 0;
        }
        return missingS / (toS - fromS);
    }
}
