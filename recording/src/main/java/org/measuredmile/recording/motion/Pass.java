package org.measuredmile.recording.motion;

import java.util.List;
import org.measuredmile.recording.Finding;

/// One ride over a surveyed course, from gate to gate.
///
/// Shape: `timesS` and `chainageM` are the fixes on the way, from gate to gate in the order ridden, chainage falling on
/// the way back; `findings` say what does not agree.
/// Unit: seconds on the recording's time base; `durationS` is `toS − fromS`; uncertainties are standard ones. Those of
/// the
/// two ends share the receiver's slow error and are not independent, so that `uDurationS` is not their sum.
public record Pass(
        Direction direction,
        Method method,
        double fromS,
        double toS,
        double uFromS,
        double uToS,
        double uDurationS,
        ByGates byGates,
        double[] timesS,
        double[] chainageM,
        List<Finding> findings) {
    /// The time between the fixes at both gates, whichever method gave the pass its duration, and its standard
    /// uncertainty in seconds.
    public record ByGates(double durationS, double standardUncertaintyS) {}

    /// Which way the course was ridden.
    public enum Direction {
        OUT,
        BACK;

        /// The word of runs.csv.
        public String id() {
            return this == OUT ? "out" : "back";
        }
    }

    /// How the second end was found.
    public enum Method {
        /// From the first gate by speed over the surveyed length.
        SPEED_OVER_LENGTH("first gate, then speed over the surveyed length"),
        /// Both ends by fixes at the gates.
        GATES("fixes at both gates");

        private final String title;

        Method(String title) {
            this.title = title;
        }

        public String title() {
            return title;
        }
    }

    public Pass {
        findings = List.copyOf(findings);
    }

    public double durationS() {
        return toS - fromS;
    }

    /// When the bike was at a chainage, on the line between the fixes about it.
    public double atS(double metres) {
        double sense = direction == Direction.OUT ? 1 : -1;
        for (int i = 1; i < timesS.length; i++) {
            double before = sense * (chainageM[i - 1] - metres);
            double after = sense * (chainageM[i] - metres);
            if (before <= 0 && after >= 0 && after > before) {
                return timesS[i - 1] - before / (after - before) * (timesS[i] - timesS[i - 1]);
            }
        }
        return sense * (chainageM[0] - metres) > 0 ? fromS : toS;
    }
}
