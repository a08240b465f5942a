package org.measuredmile.demo.ride;

import java.util.Arrays;

/// One start, moved through in steps of a millisecond from the first movement until a little after 20 mph.
///
/// Unit: metres per second, metres from rest and watts at the wheel at every step; `launchN` and `limitW` the most
/// force and the most power of the drive.
public record RiddenStart(
        double buildUpS, double launchN, double limitW, double[] speedMps, double[] distanceM, double[] powerW) {
    static final double STEP_S = 0.001;
    private static final double GRAVITY_MPS2 = 9.80665;
    private static final double AIR_KGPM3 = 1.183;
    private static final int MOST_STEPS = 60_000;
    private static final double TWENTY_MPH_MPS = 8.9408;
    private static final double RIDES_ON_S = 1.6;

    /// The road and the air of a start.
    ///
    /// Unit: slope uphill positive, head wind positive in m/s.
    public record Road(double slope, double headWindMps) {
        public static final Road LEVEL = new Road(0, 0);

        Road back() {
            return new Road(-slope, -headWindMps);
        }
    }

    /// The start of a bike.
    public static RiddenStart of(StartedBike bike, Road road) {
        double[] speed = new double[MOST_STEPS];
        double[] distance = new double[MOST_STEPS];
        double[] power = new double[MOST_STEPS];
        double mass = bike.massKg();
        int last = MOST_STEPS - 1;
        for (int i = 0; i < last; i++) {
            double v = speed[i];
            double thrust = Math.min(bike.thrustMps2(), bike.powerWpkg() / Math.max(v, 0.1)) * mass;
            double share = Math.min(1, (i + 0.5) * STEP_S / bike.buildUpS());
            double air = v + road.headWindMps();
            double against = AIR_KGPM3 * bike.dragAreaM2() * air * Math.abs(air) / 2
                    + mass * GRAVITY_MPS2 * (bike.rolling() + road.slope());
            // The road resists no more than it is pushed, so the bike moves from the first step on.
            double acceleration = share * thrust - share * against;
            acceleration /= mass + bike.wheelsKg();
            speed[i + 1] = Math.max(0, v + acceleration * STEP_S);
            distance[i + 1] = distance[i] + (v + speed[i + 1]) / 2 * STEP_S;
            power[i] = share * thrust * v;
            if (v >= TWENTY_MPH_MPS && last == MOST_STEPS - 1) {
                last = Math.min(MOST_STEPS - 1, i + (int) (RIDES_ON_S / STEP_S));
            }
        }
        power[last] = power[last - 1];
        return new RiddenStart(
                bike.buildUpS(),
                bike.thrustMps2() * mass,
                bike.powerWpkg() * mass,
                Arrays.copyOf(speed, last + 1),
                Arrays.copyOf(distance, last + 1),
                Arrays.copyOf(power, last + 1));
    }

    /// The first step at or above a speed, as a real number of steps.
    private double stepAt(double targetMps) {
        for (int i = 1; i < speedMps.length; i++) {
            if (speedMps[i] >= targetMps) {
                return i - (speedMps[i] - targetMps) / (speedMps[i] - speedMps[i - 1]);
            }
        }
        return Double.NaN;
    }

    public double timeToS(double targetMps) {
        return stepAt(targetMps) * STEP_S;
    }

    /// From half of the build-up of thrust.
    public double rampTimeToS(double targetMps) {
        return timeToS(targetMps) - buildUpS / 2;
    }

    public double distanceToM(double targetMps) {
        double step = stepAt(targetMps);
        int before = (int) step;
        return distanceM[before] + (step - before) * (distanceM[before + 1] - distanceM[before]);
    }

    /// Work at the wheel until the speed over the time it took.
    public double meanPowerW(double targetMps) {
        double to = stepAt(targetMps);
        if (Double.isNaN(to)) {
            return Double.NaN;
        }
        int whole = (int) to;
        double sum = (to - whole) * powerW[whole];
        for (int i = 0; i < whole; i++) {
            sum += powerW[i];
        }
        return sum / to;
    }

    /// The highest mean of power over two seconds.
    public double peakPowerW() {
        int window = (int) Math.round(2 / STEP_S);
        double sum = 0;
        double highest = 0;
        for (int i = 0; i < powerW.length; i++) {
            sum += powerW[i] - (i >= window ? powerW[i - window] : 0);
            highest = i >= window - 1 ? Math.max(highest, sum / window) : highest;
        }
        return highest;
    }
}
