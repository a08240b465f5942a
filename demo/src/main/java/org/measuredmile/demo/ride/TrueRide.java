package org.measuredmile.demo.ride;

import java.util.function.DoubleUnaryOperator;

/// What a bike really did: its speed at every fine step, and the way it had gone by then.
///
/// Shape: arrays of the same length, the first at time 0; handed over, not copied.
/// Unit: seconds, metres per second along the road, metres from the start.
public record TrueRide(double stepS, double[] speedMps, double[] distanceM) {
    /// Fine enough that nothing a bike does happens between two steps.
    public static final double FINE_STEP_S = 0.01;

    /// The ride with a given speed at each time.
    ///
    /// @param speedMps speed in m/s at a time in s; negative speeds count as standing
    public static TrueRide of(DoubleUnaryOperator speedMps, double durationS) {
        int count = (int) Math.round(durationS / FINE_STEP_S) + 1;
        double[] speeds = new double[count];
        for (int i = 0; i < count; i++) {
            speeds[i] = Math.max(0, speedMps.applyAsDouble(i * FINE_STEP_S));
        }
        return of(speeds, FINE_STEP_S);
    }

    /// The ride with given speeds, one a step.
    public static TrueRide of(double[] speedMps, double stepS) {
        double[] distances = new double[speedMps.length];
        for (int i = 1; i < speedMps.length; i++) {
            distances[i] = distances[i - 1] + 0.5 * (speedMps[i - 1] + speedMps[i]) * stepS;
        }
        return new TrueRide(stepS, speedMps, distances);
    }

    public double spanS() {
        return (speedMps.length - 1) * stepS;
    }

    /// The speed at a time; before the start and after the end that of the first and last step.
    public double speedAtMps(double timeS) {
        return between(speedMps, timeS);
    }

    public double distanceAtM(double timeS) {
        return between(distanceM, timeS);
    }

    private double between(double[] values, double timeS) {
        double at = Math.clamp(timeS / stepS, 0, values.length - 1.0);
        int before = (int) Math.min((long) at, values.length - 2L);
        if (before < 0) {
            return values[0];
        }
        return values[before] + (at - before) * (values[before + 1] - values[before]);
    }
}
