package org.measuredmile.trial.standingstart;

/// The speed of a start: thrust builds up evenly to its full value, then acceleration fades slowly.
///
/// Formula: v(u) = a·u²/2t_r while u is below t_r, then a·(u − t_r/2) − b·(u − t_r)²; u the time since
/// the first movement.
/// Unit: `buildUpS` t_r in seconds, `accelerationMps2` a, `fadeMps3` b.
/// Valid: up to about 3.5 m/s.
record StartCurve(double buildUpS, double accelerationMps2, double fadeMps3) {
    double speedMps(double u) {
        if (u <= 0) {
            return 0;
        }
        if (u < buildUpS) {
            return accelerationMps2 * u * u / (2 * buildUpS);
        }
        double full = u - buildUpS;
        return accelerationMps2 * (u - buildUpS / 2) - fadeMps3 * full * full;
    }

    /// From rest, in metres.
    double distanceM(double u) {
        if (u <= 0) {
            return 0;
        }
        if (u < buildUpS) {
            return accelerationMps2 * u * u * u / (6 * buildUpS);
        }
        double full = u - buildUpS;
        double building = accelerationMps2 * buildUpS * buildUpS / 6;
        return building
                + accelerationMps2 * (full * full / 2 + buildUpS * full / 2)
                - fadeMps3 * full * full * full / 3;
    }
}
