package org.measuredmile.demo.ride;

import java.util.random.RandomGenerator;
import org.measuredmile.quantity.statistics.Draw;

/// A bike whose motor adds a fixed power at each level, and the road and air it rides against.
///
/// Shape: the steady speed is where power at the wheel equals speed times the forces: rolling, m·g·c, and air,
/// ½·ρ·A·(v + w)², found by halving.
/// Unit: kilograms, square metres, watts, kg/m³; `levelsW` is what the motor adds at level 1, 2 and so on.
public record AssistedBike(double massKg, double rolling, double dragAreaM2, double[] levelsW, double airKgPerM3) {
    private static final double GRAVITY_MPS2 = 9.80665;
    private static final double USUAL_AIR_KG_PER_M3 = 1.2;

    /// A bike of 85 to 125 kg with its rider, rolling coefficient 0.009 ± 0.003, drag area 0.60 ±
    /// 0.09 m², whose levels settle at speeds 0.7 to 1.4 m/s apart from 4 to 5 m/s on when the
    /// rider adds the stated effort.
    public static AssistedBike drawn(RandomGenerator random, int levels, double effortW) {
        double mass = Draw.rectangular(random, 85, 125);
        double rolling = Math.max(0.003, Draw.normal(random, 0.009, 0.003));
        double area = Math.max(0.35, Draw.normal(random, 0.6, 0.09));
        var bare = new AssistedBike(mass, rolling, area, new double[levels], USUAL_AIR_KG_PER_M3);
        double speed = Draw.rectangular(random, 4, 5);
        double[] added = new double[levels];
        for (int k = 0; k < levels; k++) {
            added[k] = speed * bare.forceN(speed, 0) - effortW;
            speed += Draw.rectangular(random, 0.7, 1.4);
        }
        return new AssistedBike(mass, rolling, area, added, USUAL_AIR_KG_PER_M3);
    }

    /// The same bike and motor with another rider in other air.
    AssistedBike with(double otherMassKg, double otherAirKgPerM3) {
        return new AssistedBike(otherMassKg, rolling, dragAreaM2, levelsW, otherAirKgPerM3);
    }

    /// The same with another road load.
    AssistedBike on(double moreRolling, double moreAreaM2) {
        return new AssistedBike(massKg, rolling + moreRolling, dragAreaM2 + moreAreaM2, levelsW, airKgPerM3);
    }

    AssistedBike heavier(double kilograms) {
        return with(massKg + kilograms, airKgPerM3);
    }

    /// The same with one level of its own, of so much power at the wheel.
    AssistedBike powered(double watts) {
        return new AssistedBike(massKg, rolling, dragAreaM2, new double[] {watts}, airKgPerM3);
    }

    /// What a speed takes on the level in still air.
    double powerW(double speedMps) {
        return speedMps * forceN(speedMps, 0);
    }

    private double forceN(double speedMps, double headWindMps) {
        double air = speedMps + headWindMps;
        return massKg * GRAVITY_MPS2 * rolling + 0.5 * airKgPerM3 * dragAreaM2 * air * Math.abs(air);
    }

    /// The speed at which the bike settles at a level (from 1) with a rider's effort and a head wind.
    public double settlesAtMps(int level, double effortW, double headWindMps) {
        double power = levelsW[level - 1] + effortW;
        double low = 0.1;
        double high = 30;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (middle * forceN(middle, headWindMps) < power) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
