package org.measuredmile.demo.ride;

import java.util.random.RandomGenerator;
import org.measuredmile.quantity.statistics.Draw;

/// A bike and its rider that coast: what holds them back, and how that changes from day to day.
///
/// Unit: kilograms, square metres; `wheelsKg` what the turning of both wheels adds; scatters relative, as standard
/// deviations.
public record CoastingBike(
        double rolling,
        double dragAreaM2,
        double riderKg,
        double bikeKg,
        double wheelsKg,
        double tyreDay,
        double postureDay) {
    static final double GRAVITY = 9.80665;

    /// Rolling 0.006 to 0.012, drag area 0.50 to 0.75 m², riders of 62 to 98 kg on bikes of 20 to 36 kg.
    static CoastingBike drawn(RandomGenerator random) {
        return new CoastingBike(
                Draw.rectangular(random, 0.006, 0.012),
                Draw.rectangular(random, 0.50, 0.75),
                Draw.rectangular(random, 62, 98),
                Draw.rectangular(random, 20, 36),
                Math.max(0.8, Draw.normal(random, 3.0, 0.8)),
                0.05,
                0.04);
    }

    /// The same on another day: tyres warmer or softer, the rider sitting otherwise; crews differ in how much.
    CoastingBike today(RandomGenerator random) {
        return new CoastingBike(
                rolling * (1 + Draw.normal(random, 0, tyreDay * Crews.spread(random))),
                dragAreaM2 * (1 + Draw.normal(random, 0, postureDay * Crews.spread(random))),
                riderKg,
                bikeKg,
                wheelsKg,
                tyreDay,
                postureDay);
    }

    double massKg() {
        return riderKg + bikeKg;
    }

    /// Newtons on the level in still air.
    double resistanceN(double speedMps, double airKgPerM3) {
        return rolling * massKg() * GRAVITY + 0.5 * airKgPerM3 * dragAreaM2 * speedMps * speedMps;
    }

    /// Newtons with a wind along the road and a slope (rise over way).
    double resistanceN(double speedMps, double airKgPerM3, double headWindMps, double slope) {
        double air = speedMps + headWindMps;
        return massKg() * GRAVITY * (rolling + slope) + 0.5 * airKgPerM3 * dragAreaM2 * air * Math.abs(air);
    }
}
