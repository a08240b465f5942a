package org.measuredmile.trial.climb;

import java.util.OptionalDouble;
import org.measuredmile.roadload.Profile;
import org.measuredmile.roadload.Ride;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;

/// A climb worked out from forces: the drive's force as it falls with speed, made so strong that the hill takes the
/// time it took, and then ridden again with another mass in other air.
///
/// Unit: SI.
/// Valid: what the drive's strength, the road load and the slope leave open enters both rides and largely cancels.
record ClimbModel(Profile hill, RoadLoad load, Setting setting, double headWindMps, double startMps, Ride.Drive shape) {
    private static final int MOST_STEPS = 60;
    private static final double CLOSE = 1e-6;
    private static final double LEAST_START_MPS = 0.5;
    /// From a faster start speeds change so slowly up a hill that longer steps are as good.
    private static final double SLOW_START_MPS = 2;
    private static final double FINE_STEP_M = 1;
    private static final double STEP_M = 4;
    private static final double RISES_DOWN_TO = 0.25;

    /// A drive whose force falls as the speed to the power −k, of 1 N at a speed; it rises no more below a quarter
    /// of that speed.
    static Ride.Drive falling(double atMps, double k) {
        return v -> StrictMath.pow(Math.max(v / atMps, RISES_DOWN_TO), -k);
    }

    /// The strength at which the climb takes a time; empty where none does.
    OptionalDouble strength(double timeS) {
        return strength(timeS, 1);
    }

    /// The same, begun at a strength that is near.
    OptionalDouble strength(double timeS, double near) {
        double low = 0.8 * near;
        double high = 1.25 * near;
        if (pace(low) * timeS > 1) {
            low = 0;
        }
        double atHigh = pace(high) - 1 / timeS;
        while (atHigh < 0 && high < 1e6) {
            low = high;
            high *= 1.5;
            atHigh = pace(high) - 1 / timeS;
        }
        if (atHigh < 0) {
            return OptionalDouble.empty();
        }
        double atLow = pace(low) - 1 / timeS;
        // Regula falsi on one over the time, which is nearly straight and 0 where the bike stalls; an end that
        // stays is halved (the Illinois rule).
        for (int i = 0; i < MOST_STEPS; i++) {
            double at = i % 4 == 3 ? (low + high) / 2 : (low * atHigh - high * atLow) / (atHigh - atLow);
            double here = pace(at) - 1 / timeS;
            if (Math.abs(here) * timeS < CLOSE || high - low < 1e-12 * high) {
                return OptionalDouble.of(at);
            }
            if (here < 0) {
                low = at;
                atLow = here;
                atHigh /= i % 4 == 3 ? 1 : 2;
            } else {
                high = at;
                atHigh = here;
                atLow /= i % 4 == 3 ? 1 : 2;
            }
        }
        return OptionalDouble.empty();
    }

    /// The lowest speed of a ride past the first quarter of the hill: before, the entry speed is being used up.
    static double lowestMps(Ride ride) {
        double[] speeds = ride.speedsMps();
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = (int) (ClimbRules.LOWEST_FROM_SHARE * speeds.length); i < speeds.length; i++) {
            lowest = Math.min(lowest, speeds[i]);
        }
        return lowest;
    }

    private double pace(double strength) {
        var ride = ride(strength);
        return ride.finished() ? 1 / ride.timeS() : 0;
    }

    /// The climb at a strength of the drive.
    Ride ride(double strength) {
        var plan = new Ride.Plan(
                load, setting, v -> strength * shape.forceN(v), headWindMps, Math.max(LEAST_START_MPS, startMps));
        return Ride.along(hill, plan, startMps < SLOW_START_MPS ? FINE_STEP_M : STEP_M);
    }

    /// The same climb in another wind along the hill.
    ClimbModel inWind(double mps) {
        return new ClimbModel(hill, load, setting, mps, startMps, shape);
    }

    /// The same hill, load and drive in another setting without wind.
    ClimbModel calmIn(Setting other) {
        return new ClimbModel(hill, load, other, 0, startMps, shape);
    }
}
