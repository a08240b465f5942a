package org.measuredmile.demo.ride;

import java.util.ArrayList;
import java.util.random.RandomGenerator;
import org.measuredmile.quantity.statistics.Draw;

/// A ride from rest through several levels to rest again, its speed wandering all the while.
public final class LevelRide {
    /// What a level is held for on average, in seconds.
    static final double USUAL_HOLD_S = 35;

    private static final double STEP_S = TrueRide.FINE_STEP_S;
    private static final double PULL_AWAY_MPS2 = 1.0;
    private static final double SLOW_DOWN_MPS2 = 1.5;

    private LevelRide() {}

    /// Levels held for 25 to 45 s each, with 3 to 6 s from one to the next.
    public static TrueRide of(double[] levelsMps, double wanderMps, double memoryS, RandomGenerator random) {
        var targets = new ArrayList<Double>();
        rest(targets, 3);
        ramp(targets, 0, levelsMps[0], levelsMps[0] / PULL_AWAY_MPS2);
        for (int k = 0; k < levelsMps.length; k++) {
            hold(targets, levelsMps[k], Draw.rectangular(random, 25, 45));
            if (k + 1 < levelsMps.length) {
                ramp(targets, levelsMps[k], levelsMps[k + 1], Draw.rectangular(random, 3, 6));
            }
        }
        double last = levelsMps[levelsMps.length - 1];
        ramp(targets, last, 0, last / SLOW_DOWN_MPS2);
        rest(targets, 3);
        return TrueRide.of(wandering(targets, wanderMps, memoryS, random), STEP_S);
    }

    private static void rest(ArrayList<Double> targets, double seconds) {
        hold(targets, 0, seconds);
    }

    private static void hold(ArrayList<Double> targets, double speedMps, double seconds) {
        for (int i = 0; i < seconds / STEP_S; i++) {
            targets.add(speedMps);
        }
    }

    /// From one speed to another, gently at both ends.
    private static void ramp(ArrayList<Double> targets, double fromMps, double toMps, double seconds) {
        int steps = (int) (seconds / STEP_S);
        for (int i = 0; i < steps; i++) {
            double share = (1 - StrictMath.cos(Math.PI * i / steps)) / 2;
            targets.add(fromMps + (toMps - fromMps) * share);
        }
    }

    private static double[] wandering(
            ArrayList<Double> targets, double wanderMps, double memoryS, RandomGenerator random) {
        double[] speeds = new double[targets.size()];
        double kept = StrictMath.exp(-STEP_S / memoryS);
        double fresh = wanderMps * Math.sqrt(1 - kept * kept);
        double wander = Draw.normal(random, 0, wanderMps);
        for (int i = 0; i < speeds.length; i++) {
            wander = kept * wander + fresh * Draw.normal(random);
            double target = targets.get(i);
            // At rest nothing wanders.
            speeds[i] = Math.max(0, target + wander * Math.min(1, target));
        }
        return speeds;
    }
}
