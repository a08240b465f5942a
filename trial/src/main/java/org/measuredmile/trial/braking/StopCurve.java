package org.measuredmile.trial.braking;

/// A stop as the model has it: riding on, a linear build-up of deceleration, braking, rest.
///
/// Unit: `entryMps` speed at onset; `driftMps2` change of speed before it; `buildUpS` time of the build-up;
/// `decelerationMps2` at its end, growing by `riseMps3` a second until rest.
/// Shape: times u in seconds from onset; [#positionM] in metres from there, negative before.
/// Valid: entry speed above half of deceleration times build-up, so that the build-up ends before rest.
record StopCurve(double entryMps, double driftMps2, double buildUpS, double decelerationMps2, double riseMps3) {
    /// Distance from onset to rest.
    double distanceM() {
        double tau = restAfterBuildUpS();
        return atBuildUpEndM() + brakingM(tau);
    }

    /// Time from onset to rest.
    double durationS() {
        return buildUpS + restAfterBuildUpS();
    }

    /// Where the bike is at a time from onset.
    double positionM(double u) {
        if (u < 0) {
            return entryMps * u + driftMps2 * u * u / 2;
        }
        if (u <= buildUpS) {
            return entryMps * u - decelerationMps2 * u * u * u / (6 * buildUpS);
        }
        return atBuildUpEndM() + brakingM(Math.min(u - buildUpS, restAfterBuildUpS()));
    }

    /// Mean speed over a window around a time: what a receiver that averages over it shows.
    double meanSpeedMps(double u, double windowS) {
        return Math.max(0, (positionM(u + windowS / 2) - positionM(u - windowS / 2)) / windowS);
    }

    /// Mean fully developed deceleration: between 0.8 and 0.1 of the entry speed, by distance.
    ///
    /// Source: Directive 93/14/EEC, annex, 1.1.2: (v_b² − v_e²)/(2·(s_e − s_b)), v_b = 0.8 v₁, v_e = 0.1 v₁.
    double meanFullyDevelopedMps2() {
        double between = positionM(reachesS(0.1 * entryMps)) - positionM(reachesS(0.8 * entryMps));
        return (0.64 - 0.01) * entryMps * entryMps / (2 * between);
    }

    double peakDecelerationMps2() {
        return decelerationMps2 + Math.max(0, riseMps3 * restAfterBuildUpS());
    }

    /// The same stop without any build-up.
    StopCurve withoutBuildUp() {
        return new StopCurve(entryMps, driftMps2, 0, decelerationMps2, riseMps3);
    }

    /// When the speed has fallen to a value, from onset.
    double reachesS(double speedMps) {
        if (speedMps >= afterBuildUpMps()) {
            return Math.sqrt(2 * buildUpS * (entryMps - speedMps) / decelerationMps2);
        }
        return buildUpS + fallS(afterBuildUpMps() - speedMps);
    }

    private double afterBuildUpMps() {
        return entryMps - decelerationMps2 * buildUpS / 2;
    }

    private double atBuildUpEndM() {
        return entryMps * buildUpS - decelerationMps2 * buildUpS * buildUpS / 6;
    }

    private double restAfterBuildUpS() {
        return fallS(Math.max(0, afterBuildUpMps()));
    }

    /// The time in which braking takes so much speed away.
    private double fallS(double lossMps) {
        double square = decelerationMps2 * decelerationMps2 + 2 * riseMps3 * lossMps;
        return 2 * lossMps / (decelerationMps2 + Math.sqrt(Math.max(0, square)));
    }

    private double brakingM(double tau) {
        return afterBuildUpMps() * tau - decelerationMps2 * tau * tau / 2 - riseMps3 * tau * tau * tau / 6;
    }
}
