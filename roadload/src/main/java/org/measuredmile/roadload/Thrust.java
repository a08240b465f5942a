package org.measuredmile.roadload;

/// What drives a bike at the wheel at full throttle or full assistance: no more force than the motor has, no more power
/// than it gives, and less and less around the speed where help ends.
///
/// Formula: F(v) = min(F₀, P/v)·c(v), where c falls in a straight line from 1 at `cutOffMps − taperMps/2` to 0 at
/// `cutOffMps + taperMps/2`.
/// Unit: newtons, watts, m/s; an infinite cut-off never ends.
/// Error: IllegalArgumentException for a negative force or power, or a taper that is not positive.
public record Thrust(double launchN, double powerW, double cutOffMps, double taperMps) {
    public static final Thrust NONE = new Thrust(0, 0, Double.POSITIVE_INFINITY, 1);

    public Thrust {
        if (!(launchN >= 0) || !(powerW >= 0) || !(taperMps > 0)) {
            throw new IllegalArgumentException(launchN + " N, " + powerW + " W, taper " + taperMps + " m/s");
        }
    }

    /// The force at a speed, in newtons.
    public double forceN(double speedMps) {
        double full = speedMps * launchN <= powerW ? launchN : powerW / speedMps;
        return full * help(speedMps);
    }

    /// The share of full help at a speed, from 1 to 0.
    public double help(double speedMps) {
        if (cutOffMps == Double.POSITIVE_INFINITY) {
            return 1;
        }
        return Math.clamp(0.5 - (speedMps - cutOffMps) / taperMps, 0, 1);
    }

    /// Thrust that is a steady power without an end, as a rider's.
    public static Thrust ofPower(double launchN, double powerW) {
        return new Thrust(launchN, powerW, Double.POSITIVE_INFINITY, 1);
    }
}
