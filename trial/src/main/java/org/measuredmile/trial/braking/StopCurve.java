package org.measuredmile.trial.braking;

/// A stop as the model has it: riding on, a linear build-up of deceleration, braking, rest.
///
/// Unit: `entryMps` speed at onset; `driftMps2` change of speed before it; `buildUpS` time of the
/// build-up; `decelerationMps2` at its end, growing by `riseMps3` a second until rest; `keptMps2` the change of
/// speed that the build-up begins from: what slowed the bike before goes on until the brakes have taken over.
/// Shape: times u in seconds from onset; [#positionM] in metres from there, negative before.
/// Valid: entry speed above half of deceleration times build-up, so that the build-up ends before rest.
record StopCurve(
        double entryMps, double driftMps2, double buildUpS, double decelerationMps2, double riseMps3, double keptMps2) {
    /// That keeps what slowed it before.
    StopCurve(double entryMps, double driftMps2, double buildUpS, double decelerationMps2, double riseMps3) {
        this(entryMps, driftMps2, buildUpS, decelerationMps2, riseMps3, driftMps2);
    }

    /// The same with a build-up that begins from nothing, as the worked examples of the crew's
    /// reference have it.
    StopCurve beginningFromNothing() {
        return new StopCurve(entryMps, driftMps2, buildUpS, decelerationMps2, riseMps3, 0);
    }

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
            return entryMps * u + keptMps2 * u * u / 2 - gainedMps2() * u * u * u / (6 * buildUpS);
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
        return new StopCurve(entryMps, driftMps2, 0, decelerationMps2, riseMps3, keptMps2);
    }

    /// When the speed has fallen to a value, from onset.
    double reachesS(double speedMps) {
        if (speedMps >= afterBuildUpMps()) {
            // Of g·u²/(2·t) − k·u = v₀ − v the positive root.
            double perS = gainedMps2() / buildUpS;
            double loss = entryMps - speedMps;
            return (keptMps2 + Math.sqrt(keptMps2 * keptMps2 + 2 * perS * loss)) / perS;
        }
        return buildUpS + fallS(afterBuildUpMps() - speedMps);
    }

    /// What the brakes add to what slowed the bike before.
    private double gainedMps2() {
        return decelerationMps2 + keptMps2;
    }

    private double afterBuildUpMps() {
        return entryMps + (keptMps2 - decelerationMps2) * buildUpS / 2;
    }

    private double atBuildUpEndM() {
        return entryMps * buildUpS + (2 * keptMps2 - decelerationMps2) * buildUpS * buildUpS / 6;
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
