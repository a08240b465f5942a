package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.recording.day.Course;

/// Where a track crosses the line of one gate.
///
/// Between two fixes on different sides of the line the crossing is found by the least-squares line of along-track
/// position over the two seconds before and after it.
final class GateCrossings {
    /// Half the width of a gate, m.
    static final double HALF_WIDTH_M = 15;
    /// Farther aside than this a crossing has nothing to do with the gate, m.
    private static final double BESIDE_M = 60;
    /// A track that crosses at a larger angle than this is on another road, degrees.
    private static final double MOST_ANGLE = 45;
    /// A longer step between fixes tells too little about the crossing, s.
    private static final double LONGEST_STEP_S = 2.1;
    private static final double FIT_S = 2;
    private static final double SLOWEST_MPS = 0.5;

    private GateCrossings() {}

    /// A crossing.
    ///
    /// Unit: seconds on the recording's time base; `sense` is +1 along the gate's bearing and −1 against it;
    /// `asideM` how far to the right of the gate's middle; `fault` is why it does not count, or empty.
    record Crossing(double timeS, int sense, double asideM, double speedMps, String fault) {
        boolean counts() {
            return fault.isEmpty();
        }
    }

    static List<Crossing> of(Fixes fixes, Course.Gate gate) {
        var plane = new LocalPlane(gate.latitudeDegrees(), gate.longitudeDegrees(), gate.bearingDegrees());
        double[] along = new double[fixes.size()];
        double[] aside = new double[fixes.size()];
        for (int i = 0; i < along.length; i++) {
            var spot = plane.of(fixes.latitudes()[i], fixes.longitudes()[i]);
            along[i] = spot.alongM();
            aside[i] = spot.asideM();
        }
        var found = new ArrayList<Crossing>();
        for (int i = 1; i < along.length; i++) {
            if ((along[i - 1] < 0) != (along[i] < 0)) {
                double share = along[i - 1] / (along[i - 1] - along[i]);
                double beside = aside[i - 1] + share * (aside[i] - aside[i - 1]);
                if (Math.abs(beside) <= BESIDE_M) {
                    found.add(crossing(fixes.timesS(), along, aside, i, share));
                }
            }
        }
        return settled(found);
    }

    /// Noise of the fixes may cross a gate to and fro: of crossings close together the last remains, where they
    /// lead to the other side at all.
    private static List<Crossing> settled(List<Crossing> all) {
        var settled = new ArrayList<Crossing>();
        int net = 0;
        for (int i = 0; i < all.size(); i++) {
            net += all.get(i).sense();
            boolean isLast =
                    i + 1 == all.size() || all.get(i + 1).timeS() - all.get(i).timeS() > FIT_S;
            if (isLast && net != 0) {
                settled.add(all.get(i));
            }
            net = isLast ? 0 : net;
        }
        return settled;
    }

    private static Crossing crossing(double[] times, double[] along, double[] aside, int i, double share) {
        double roughS = times[i - 1] + share * (times[i] - times[i - 1]);
        int from = i - 1;
        while (from > 0 && times[from - 1] >= roughS - FIT_S) {
            from--;
        }
        int to = i;
        while (to + 1 < times.length && times[to + 1] <= roughS + FIT_S) {
            to++;
        }
        double speed = Slope.of(times, along, from, to + 1);
        double sideways = Slope.of(times, aside, from, to + 1);
        int sense = along[i] > along[i - 1] ? 1 : -1;
        double beside = aside[i - 1] + share * (aside[i] - aside[i - 1]);
        double fittedS = crossingS(times, along, from, to);
        boolean isSane = Math.abs(speed) > SLOWEST_MPS && Math.abs(fittedS - roughS) < FIT_S;
        String fault = fault(times[i] - times[i - 1], beside, speed * sense, sideways);
        return new Crossing(isSane ? fittedS : roughS, sense, beside, Math.abs(speed), fault);
    }

    private static String fault(double stepS, double beside, double ahead, double sideways) {
        double angle = StrictMath.toDegrees(StrictMath.atan2(Math.abs(sideways), ahead));
        if (stepS > LONGEST_STEP_S) {
            return GateWords.gap(stepS, LONGEST_STEP_S);
        }
        if (Math.abs(beside) > HALF_WIDTH_M) {
            return GateWords.beside(beside, HALF_WIDTH_M);
        }
        if (ahead < SLOWEST_MPS) {
            return GateWords.slow(ahead, SLOWEST_MPS);
        }
        return angle > MOST_ANGLE ? GateWords.angle(angle, MOST_ANGLE) : "";
    }

    /// When the least-squares line through along-track positions is at the gate.
    static double crossingS(double[] times, double[] along, int from, int to) {
        double meanS = 0;
        double meanM = 0;
        int count = to - from + 1;
        for (int i = from; i <= to; i++) {
            meanS += (times[i] - times[from]) / count;
            meanM += along[i] / count;
        }
        return times[from] + meanS - meanM / Slope.of(times, along, from, to + 1);
    }
}
