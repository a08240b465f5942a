package org.measuredmile.demo.ride;

import java.util.random.RandomGenerator;
import org.measuredmile.quantity.statistics.Draw;

/// A bike and its usual rider at a standing start, as they are and not as anybody measures them.
///
/// Unit: `thrustMps2` the most that the drive accelerates the whole, `powerWpkg` the most power a kilogram of
/// the whole; `buildUpS` from first movement to full thrust; masses in kilograms, `wheelsKg` what the turning of the
/// wheels adds; `dragAreaM2`. `runScatter` and `dayScatter` are standard deviations of the logarithm of thrust and
/// power from run to run and from day to day.
public record StartedBike(
        double thrustMps2,
        double powerWpkg,
        double buildUpS,
        double riderKg,
        double bikeKg,
        double wheelsKg,
        double rolling,
        double dragAreaM2,
        double runScatter,
        double dayScatter) {
    private static final double RUN_SCATTER = 0.03;
    private static final double DAY_SCATTER = 0.025;
    private static final int DEGREES = 8;

    /// A bike from the population that the standing start is proved on: thrust for 1.4 to 2.4 m/s², 5.5 to 8
    /// W/kg, build-up 0.2 to 0.6 s; a bike of 28 ± 4 kg with 3 ± 1 kg for its wheels; rolling 0.009 ± 0.003,
    /// drag area 0.60 ± 0.09 m²; scatter 3 % from run to run and 2.5 % from day to day, each bike's own
    /// differing from it as a standard deviation of 8 degrees of freedom would.
    public static StartedBike drawn(RandomGenerator random) {
        return new StartedBike(
                Draw.rectangular(random, 1.4, 2.4),
                Draw.rectangular(random, 5.5, 8.0),
                Draw.rectangular(random, 0.2, 0.6),
                Draw.rectangular(random, 65, 95),
                Draw.normal(random, 28, 4),
                Math.max(0.5, Draw.normal(random, 3, 1)),
                Math.max(0.003, Draw.normal(random, 0.009, 0.003)),
                Math.max(0.4, Draw.normal(random, 0.60, 0.09)),
                scatter(random, RUN_SCATTER),
                scatter(random, DAY_SCATTER));
    }

    private static double scatter(RandomGenerator random, double usual) {
        double chiSquare = 0;
        for (int i = 0; i < DEGREES; i++) {
            double normal = Draw.normal(random);
            chiSquare += normal * normal;
        }
        return usual * Math.sqrt(DEGREES / chiSquare);
    }

    /// The same bike with thrust and power changed by a share, as on another day or in another run.
    public StartedBike changed(double logarithm) {
        double factor = StrictMath.exp(logarithm);
        return new StartedBike(
                thrustMps2 * factor,
                powerWpkg * factor,
                buildUpS,
                riderKg,
                bikeKg,
                wheelsKg,
                rolling,
                dragAreaM2,
                runScatter,
                dayScatter);
    }

    /// The same with another build-up, never below a twentieth of a second.
    public StartedBike buildingUpIn(double seconds) {
        return new StartedBike(
                thrustMps2,
                powerWpkg,
                Math.max(0.05, seconds),
                riderKg,
                bikeKg,
                wheelsKg,
                rolling,
                dragAreaM2,
                runScatter,
                dayScatter);
    }

    /// The same bike under a rider of another mass: the motor pushes no harder for it.
    public StartedBike riddenBy(double kilograms) {
        double share = massKg() / (kilograms + bikeKg);
        return new StartedBike(
                thrustMps2 * share,
                powerWpkg * share,
                buildUpS,
                kilograms,
                bikeKg,
                wheelsKg,
                rolling,
                dragAreaM2,
                runScatter,
                dayScatter);
    }

    double massKg() {
        return riderKg + bikeKg;
    }
}
