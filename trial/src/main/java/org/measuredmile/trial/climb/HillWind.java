package org.measuredmile.trial.climb;

import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.CompassBearing;
import org.measuredmile.trial.TrialInput;

/// The head wind along a hill, and how well it is known.
///
/// Formula: w·cos(from − bearing of the way up); where nobody wrote where it came from, 0 with w/√2, the standard
/// deviation of w·cos φ with φ uniform.
/// Unit: m/s, positive against the rider; `standardUncertainty` alike.
/// Source: JCGM 101:2008, 6.4.6 (arcsine distribution); the widths beside it are house values.
record HillWind(double headMps, double standardUncertainty, String assumed) {
    static HillWind of(TrialInput input, Run run, Hill hill) {
        var speed = input.readings().of(run.id(), "wind-speed");
        if (speed.isEmpty()) {
            return new HillWind(
                    0,
                    ClimbRules.WIND_UNKNOWN_SD,
                    "wind along the hill: 0 ± " + ClimbRules.WIND_UNKNOWN_SD + " m/s (standard uncertainty)");
        }
        double mps = speed.get().si();
        var from = CompassBearing.degrees(input.readings().word(run.id(), "wind-from"));
        if (from.isEmpty() || hill.bearingDegrees().isEmpty()) {
            double sd = StrictMath.hypot(ClimbRules.WIND_LEAST_SD, mps / Math.sqrt(2));
            return new HillWind(0, sd, "wind of unknown bearing along the hill");
        }
        double angle =
                StrictMath.toRadians(from.getAsDouble() - hill.bearingDegrees().getAsDouble());
        double sd = StrictMath.hypot(ClimbRules.WIND_LEAST_SD, ClimbRules.WIND_SHARE_SD * mps);
        return new HillWind(mps * StrictMath.cos(angle), sd, "");
    }
}
