package org.measuredmile.demo.ride;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;

/// Coasts that are made up: how fast a bike is at each moment that nobody drives or brakes, in gusts of 0.4 m/s
/// (standard deviation) that last 8 s.
///
/// Shape: speeds of one fine step after the other, from the moment that driving stops down to 8 km/h.
public final class RiddenCoasts {
    private static final double STEP_S = TrueRide.FINE_STEP_S;
    private static final double UNTIL_MPS = 8 / 3.6;
    private static final double GUST_MPS = 0.4;
    private static final double GUST_LASTS_S = 8;
    private static final int MOST_STEPS = 60_000;
    private static final double DRIVEN_MPS2 = 1.0;
    private static final double BRAKED_MPS2 = 2.0;
    private static final int STANDING_STEPS = 400;

    private RiddenCoasts() {}

    /// Air and road as one direction meets them: kg/m³, rise over way, head wind in m/s.
    public record Outside(double airKgPerM3, double slope, double windMps) {}

    /// The speeds of one coast.
    public static double[] speeds(CoastingBike bike, Outside outside, double fromMps, RandomGenerator random) {
        double[] speeds = new double[MOST_STEPS];
        double kept = StrictMath.exp(-STEP_S / GUST_LASTS_S);
        double fresh = Math.sqrt(1 - kept * kept) * GUST_MPS;
        double gust = GUST_MPS * random.nextGaussian();
        double v = fromMps;
        int count = 0;
        while (v > UNTIL_MPS && count < speeds.length) {
            speeds[count++] = v;
            gust = kept * gust + fresh * random.nextGaussian();
            double force = bike.resistanceN(v, outside.airKgPerM3(), outside.windMps() + gust, outside.slope());
            v -= force / (bike.massKg() + bike.wheelsKg()) * STEP_S;
        }
        return Arrays.copyOf(speeds, count);
    }

    /// All coasts one after the other, each driven up to its speed before and braked after; `scale` is what a
    /// speedometer makes of one.
    public static TrueRide ride(List<double[]> coasts, double scale) {
        var all = new ArrayList<double[]>();
        for (double[] coast : coasts) {
            all.add(ramp(0, coast[0], DRIVEN_MPS2));
            all.add(coast);
            all.add(ramp(coast[coast.length - 1], 0, BRAKED_MPS2));
            all.add(new double[STANDING_STEPS]);
        }
        double[] joined =
                all.stream().flatMapToDouble(Arrays::stream).map(v -> v * scale).toArray();
        return TrueRide.of(joined, STEP_S);
    }

    private static double[] ramp(double fromMps, double toMps, double rateMps2) {
        int count = (int) (Math.abs(toMps - fromMps) / rateMps2 / STEP_S) + 1;
        double[] speeds = new double[count];
        for (int i = 0; i < count; i++) {
            speeds[i] = fromMps + (toMps - fromMps) * i / count;
        }
        return speeds;
    }

    /// When a coast first has a speed or less, in seconds from its beginning.
    public static double timeS(double[] coast, double mps) {
        for (int i = 0; i < coast.length; i++) {
            if (coast[i] <= mps) {
                return i * STEP_S;
            }
        }
        return coast.length * STEP_S;
    }
}
