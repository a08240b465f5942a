package org.measuredmile.trial.standingstart;

/// How acceleration falls with speed, and what a change of it does to the time and the distance to a speed.
///
/// Shape: acceleration is taken as straight between its nodes, which lie at rising speeds from 0.
/// Unit: metres per second, metres per second squared.
record SpeedCurve(double[] speedsMps, double[] accelerationsMps2) {
    private static final int STEPS = 200;

    /// Something that depends on speed.
    interface OfSpeed {
        double at(double speedMps);
    }

    private double acceleration(double speedMps) {
        int i = 1;
        while (i < speedsMps.length - 1 && speedMps > speedsMps[i]) {
            i++;
        }
        double part = (speedMps - speedsMps[i - 1]) / (speedsMps[i] - speedsMps[i - 1]);
        double between = accelerationsMps2[i - 1] + part * (accelerationsMps2[i] - accelerationsMps2[i - 1]);
        return Math.max(StandingStartRules.LEAST_SLOPE_MPS2, between);
    }

    private double integral(double toMps, OfSpeed integrand) {
        double step = toMps / STEPS;
        double sum = 0;
        for (int i = 0; i < STEPS; i++) {
            sum += integrand.at((i + 0.5) * step) * step;
        }
        return sum;
    }

    /// The change of the time to a speed for a change of acceleration, ∫ δ/a² dv, in seconds.
    double firstOrderS(double toMps, OfSpeed change) {
        return integral(toMps, v -> change.at(v) / square(acceleration(v)));
    }

    /// The time to a speed, or the distance, when something takes so much off the acceleration.
    ///
    /// Valid: where the change is well below the acceleration; it is taken as at most seven tenths of it.
    double integral(double toMps, boolean ofDistance, OfSpeed less) {
        return integral(toMps, v -> {
            double a = acceleration(v);
            return (ofDistance ? v : 1) / (a - Math.min(less.at(v), 0.7 * a));
        });
    }

    /// By how many per cent a time shortens for one per cent more thrust: 1 where nothing resists, and more the
    /// nearer the bike is to its top speed.
    double timeAnswers(double toMps) {
        double timeS = integral(toMps, v -> 1 / acceleration(v));
        return 1 + firstOrderS(toMps, SpeedCurve::resistance) / timeS;
    }

    /// The same for a distance.
    double distanceAnswers(double toMps) {
        double metres = integral(toMps, v -> v / acceleration(v));
        return 1 + firstOrderS(toMps, v -> v * resistance(v)) / metres;
    }

    /// The deceleration by an ordinary road load.
    static double resistance(double speedMps) {
        return StandingStartRules.ROLLING_MPS2 + StandingStartRules.DRAG_PER_M / 2 * speedMps * speedMps;
    }

    private static double square(double value) {
        return value * value;
    }
}
