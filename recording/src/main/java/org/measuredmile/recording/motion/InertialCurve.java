package org.measuredmile.recording.motion;

/// Speed and way to rest by adding up a forward acceleration, and by how much each of its faults would change them.
///
/// Shape: `parameters` hold [#SCALE], [#ZERO] in m/s², [#LAG] and [#FILTER] of the receiver in seconds, then one error
/// of the acceleration in m/s² for each block between `edgesS`.
/// Unit: seconds, m, m/s; [#toRestM] is the way still to go, 0 from rest on.
public final class InertialCurve {
    static final int SCALE = 0;
    static final int ZERO = 1;
    static final int LAG = 2;
    static final int FILTER = 3;
    static final int BLOCKS = 4;

    private final RunningIntegral forward;
    private final double atRestMps;
    private final double restS;
    private final double[] edgesS;
    private final double[] parameters;

    /// `atRestMps` is what the sum of the acceleration has come to at rest.
    InertialCurve(RunningIntegral forward, double atRestMps, double restS, double[] edgesS, double[] parameters) {
        this.forward = forward;
        this.atRestMps = atRestMps;
        this.restS = restS;
        this.edgesS = edgesS;
        this.parameters = parameters;
    }

    InertialCurve with(double[] others) {
        return new InertialCurve(forward, atRestMps, restS, edgesS, others);
    }

    InertialCurve moved(int index, double by) {
        double[] others = parameters.clone();
        others[index] += by;
        return with(others);
    }

    public double restS() {
        return restS;
    }

    public double speedMps(double timeS) {
        if (timeS >= restS) {
            return 0;
        }
        double speed = parameters[SCALE] * (forward.once(timeS) - atRestMps) + parameters[ZERO] * (timeS - restS);
        for (int k = 0; k + 1 < edgesS.length && timeS < restS; k++) {
            double fromS = Math.max(timeS, edgesS[k]);
            speed -= parameters[BLOCKS + k] * Math.max(0, edgesS[k + 1] - fromS);
        }
        return speed;
    }

    public double toRestM(double timeS) {
        if (timeS >= restS) {
            return 0;
        }
        double d = restS - timeS;
        double way = parameters[SCALE] * (forward.twice(restS) - forward.twice(timeS) - atRestMps * d)
                - parameters[ZERO] * d * d / 2;
        for (int k = 0; k + 1 < edgesS.length; k++) {
            double width = edgesS[k + 1] - Math.max(timeS, edgesS[k]);
            if (width > 0) {
                way -= parameters[BLOCKS + k] * (width * width / 2 + width * Math.max(0, edgesS[k] - timeS));
            }
        }
        return way;
    }

    /// Mean acceleration over a tenth of a second around a time, slow errors left out.
    public double accelerationMps2(double timeS) {
        return (speedMps(timeS + 0.05) - speedMps(timeS - 0.05)) / 0.1;
    }

    /// When the speed has last fallen to a value.
    ///
    /// Valid: speeds between 0 and the entry speed.
    public double fallsToS(double speedMps) {
        double stepS = 0.1;
        double timeS = restS - stepS;
        while (speedMps(timeS) < speedMps && restS - timeS < 30) {
            timeS -= stepS;
        }
        double low = timeS;
        double high = timeS + stepS;
        for (int i = 0; i < 24; i++) {
            double middle = (low + high) / 2;
            if (speedMps(middle) >= speedMps) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /// What a receiver would show that averages over a time and comes late.
    double shownMps(double timeS) {
        double halfS = parameters[FILTER] / 2;
        double middleS = timeS - parameters[LAG];
        return (toRestM(middleS - halfS) - toRestM(middleS + halfS)) / parameters[FILTER];
    }
}
