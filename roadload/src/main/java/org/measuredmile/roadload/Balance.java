package org.measuredmile.roadload;

import java.util.OptionalDouble;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/// Where drive and road load are equal: steady speeds and steepest grades.
///
/// Unit: SI; grade as rise over run.
public final class Balance {
    private static final double FASTEST_MPS = 60;
    private static final double SLOWEST_MPS = 1e-3;
    private static final int MOST_STEPS = 200;

    private Balance() {}

    /// The speed that a drive holds on a grade against a wind; empty when it cannot hold the bike at all.
    ///
    /// The highest such speed where there are several: drive falls and load rises with speed there.
    public static OptionalDouble speedMps(
            RoadLoad load, Setting setting, Ride.Drive drive, double grade, double headWindMps) {
        var solver = new BracketingNthOrderBrentSolver(1e-12, 1e-10, 5);
        double high = FASTEST_MPS;
        for (double low = FASTEST_MPS - 0.5; high > SLOWEST_MPS; low = Math.max(SLOWEST_MPS, low - 0.5)) {
            if (surplus(load, setting, drive, grade, headWindMps, low) >= 0) {
                if (high == FASTEST_MPS && surplus(load, setting, drive, grade, headWindMps, high) > 0) {
                    return OptionalDouble.empty();
                }
                return OptionalDouble.of(
                        solver.solve(MOST_STEPS, v -> surplus(load, setting, drive, grade, headWindMps, v), low, high));
            }
            high = low;
        }
        return OptionalDouble.empty();
    }

    private static double surplus(
            RoadLoad load, Setting setting, Ride.Drive drive, double grade, double headWindMps, double v) {
        return drive.forceN(v) - load.forceN(setting, v, grade, headWindMps);
    }

    /// The steepest grade on which a force moves a bike off from rest, in still air; negative where it cannot even
    /// on the level.
    ///
    /// Formula: F = m·g·(sin θ + C_rr·cos θ), solved for tan θ.
    public static double steepestStart(RoadLoad load, Setting setting, double launchN) {
        double weight = setting.massKg() * setting.gravityMps2();
        double c = load.rollingCoefficient();
        double f = Math.min(launchN / weight, StrictMath.sqrt(1 + c * c));
        double sine = (f - c * StrictMath.sqrt(1 + c * c - f * f)) / (1 + c * c);
        return sine / StrictMath.sqrt(1 - sine * sine);
    }
}
