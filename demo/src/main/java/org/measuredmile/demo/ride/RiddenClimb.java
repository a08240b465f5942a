package org.measuredmile.demo.ride;

import java.util.Arrays;

/// One climb, moved through in steps of a fiftieth of a second from the first gate to the last.
///
/// Unit: metres per second and metres from the first gate at every step; joules at the wheel.
public record RiddenClimb(double[] speedMps, double[] distanceM, double timeS, double workJ, double lengthM) {
    static final double STEP_S = 0.02;
    private static final double GRAVITY_MPS2 = 9.80665;
    private static final int MOST_STEPS = 30_000;
    private static final double LOWEST_OVER_S = 10;
    private static final double LOWEST_FROM = 0.25;
    private static final double SLOWEST_MPS = 0.2;

    /// The air of a climb: its density, and the wind against the rider.
    public record Weather(double airKgPerM3, double headWindMps) {}

    /// Rides a hill from an entry speed.
    public static RiddenClimb of(ClimbedBike bike, RoadUp road, Weather weather, double entryMps) {
        double[] speed = new double[MOST_STEPS];
        double[] distance = new double[MOST_STEPS];
        speed[0] = entryMps;
        double work = 0;
        int i = 0;
        while (distance[i] < road.lengthM() && i < MOST_STEPS - 1) {
            double v = speed[i];
            double air = v + weather.headWindMps();
            double push = bike.pushN(v);
            double against = weather.airKgPerM3() * bike.dragAreaM2() * air * Math.abs(air) / 2
                    + bike.massKg() * GRAVITY_MPS2 * (road.sineAt(distance[i]) + bike.rolling());
            double next = v + (push - against) / (bike.massKg() + bike.wheelsKg()) * STEP_S;
            speed[i + 1] = Math.max(SLOWEST_MPS, next);
            double step = (v + speed[i + 1]) / 2 * STEP_S;
            distance[i + 1] = distance[i] + step;
            work += push * step;
            i++;
        }
        double beyond = (distance[i] - road.lengthM()) / Math.max(SLOWEST_MPS, speed[i]);
        return new RiddenClimb(
                Arrays.copyOf(speed, i + 1), Arrays.copyOf(distance, i + 1), i * STEP_S - beyond, work, road.lengthM());
    }

    public double meanMps() {
        return lengthM / timeS;
    }

    public double powerW() {
        return workJ / timeS;
    }

    /// The lowest mean over ten seconds, past the first quarter.
    public double lowestMps() {
        int wide = (int) (LOWEST_OVER_S / STEP_S);
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i + wide < distanceM.length; i++) {
            if (distanceM[i] >= LOWEST_FROM * lengthM) {
                lowest = Math.min(lowest, (distanceM[i + wide] - distanceM[i]) / LOWEST_OVER_S);
            }
        }
        return lowest;
    }
}
