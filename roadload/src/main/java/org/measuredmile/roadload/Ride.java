package org.measuredmile.roadload;

/// A ride along a profile, worked out from forces: speeds, time and work on the grid, or where the bike came to stand.
///
/// Formula: d(½·m_eff·v²)/ds = F_drive(v) − F(v, grade, wind), integrated over distance by the fourth-order Runge-Kutta
/// rule in v²; time and work by Simpson's rule. From rest the time of a step is its length over the mean speed, which
/// is
/// exact for steady acceleration.
/// Unit: SI; `workJ` is that of the drive at the wheel.
/// Shape: `speedsMps` at the ends of the steps that were ridden, the first the start speed.
public record Ride(
        boolean finished, double distanceM, double timeS, double workJ, double lowestMps, double[] speedsMps) {
    private static final double LONGEST_STEP_M = 1;
    /// Slower than this a bike is pushed, not ridden.
    private static final double STALL_MPS = 0.3;
    /// Slower than this, one over the speed bends too much for Simpson's rule.
    private static final double SLOW_MPS = 1;

    /// What a ride is made of.
    public record Plan(RoadLoad load, Setting setting, Drive drive, double headWindMps, double startMps) {}

    /// The force at the wheel at a speed: motor, rider, or both.
    @FunctionalInterface
    public interface Drive {
        double forceN(double speedMps);
    }

    /// Rides the profile from its beginning.
    ///
    /// A start from rest is a start speed of 0. A bike without the force to go on stands where it came to.
    public static Ride along(Profile profile, Plan plan) {
        return along(profile, plan, LONGEST_STEP_M);
    }

    /// With steps of at most a length, in metres.
    public static Ride along(Profile profile, Plan plan, double longestM) {
        var rider = new Rider(plan);
        for (int cell = 0; cell < profile.cells(); cell++) {
            int steps = Math.max(1, (int) Math.ceil(profile.cellM(cell) / longestM - 1e-9));
            double step = profile.cellM(cell) / steps;
            double grade = profile.grade(cell);
            for (int k = 0; k < steps; k++) {
                if (!rider.step(step, grade)) {
                    return rider.ride(false);
                }
            }
        }
        return rider.ride(true);
    }

    private static final class Rider {
        private final Plan plan;
        private final double effectiveKg;
        private double square;
        private double distanceM;
        private double timeS;
        private double workJ;
        private double lowestMps;
        private double[] speeds = new double[256];
        private int count = 1;

        Rider(Plan plan) {
            this.plan = plan;
            this.effectiveKg = plan.setting().effectiveKg();
            this.square = plan.startMps() * plan.startMps();
            this.lowestMps = plan.startMps();
            speeds[0] = plan.startMps();
        }

        private double netN(double v, double grade) {
            return plan.drive().forceN(v) - plan.load().forceN(plan.setting(), v, grade, plan.headWindMps());
        }

        /// d(v²)/ds.
        private double rate(double v2, double grade) {
            return 2 * netN(StrictMath.sqrt(Math.max(0, v2)), grade) / effectiveKg;
        }

        boolean step(double h, double grade) {
            double from = StrictMath.sqrt(square);
            double k1 = rate(square, grade);
            if (from < STALL_MPS && k1 <= 0) {
                return false;
            }
            double k2 = rate(square + h / 2 * k1, grade);
            double k3 = rate(square + h / 2 * k2, grade);
            double k4 = rate(square + h * k3, grade);
            double next = square + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
            if (next <= STALL_MPS * STALL_MPS && next <= square) {
                return false;
            }
            double to = StrictMath.sqrt(next);
            // Between the ends v² is taken as the cubic that its slopes there make.
            double half = (square + next) / 2 + h / 8 * (k1 - rate(next, grade));
            double middle = StrictMath.sqrt(Math.max(0, half));
            double stepS = from < SLOW_MPS ? 2 * h / (from + to) : h / 6 * (1 / from + 4 / middle + 1 / to);
            workJ += h
                    / 6
                    * (plan.drive().forceN(from)
                            + 4 * plan.drive().forceN(middle)
                            + plan.drive().forceN(to));
            square = next;
            distanceM += h;
            timeS += stepS;
            lowestMps = Math.min(lowestMps, to);
            if (count == speeds.length) {
                speeds = java.util.Arrays.copyOf(speeds, 2 * count);
            }
            speeds[count++] = to;
            return true;
        }

        Ride ride(boolean finished) {
            return new Ride(finished, distanceM, timeS, workJ, lowestMps, java.util.Arrays.copyOf(speeds, count));
        }
    }
}
