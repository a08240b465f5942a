package org.measuredmile.trial.climb;

import org.measuredmile.roadload.Profile;

/// How the height runs between the gates of a hill.
///
/// Unit: metres.
final class HillSlope {
    private static final double STEP_M = 12;

    private HillSlope() {}

    /// An even slope.
    static Profile even(double lengthM, double riseM) {
        return Profile.even(lengthM, riseM);
    }

    /// A slope of the same rise that swells and eases as unsurveyed slopes do, from a phase in radians.
    static Profile swelling(double lengthM, double riseM, double phase) {
        int cells = (int) Math.ceil(lengthM / STEP_M);
        double[] along = new double[cells + 1];
        double[] height = new double[cells + 1];
        double wave = ClimbRules.SWELL_WAVE_M / (2 * Math.PI);
        for (int i = 0; i <= cells; i++) {
            along[i] = lengthM * i / cells;
            height[i] = along[i]
                    + ClimbRules.SWELL * wave * (StrictMath.cos(phase) - StrictMath.cos(along[i] / wave + phase));
        }
        double scale = riseM / height[cells];
        for (int i = 0; i <= cells; i++) {
            height[i] *= scale;
        }
        return new Profile(along, height);
    }
}
