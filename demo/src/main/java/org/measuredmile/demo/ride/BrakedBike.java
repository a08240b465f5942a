package org.measuredmile.demo.ride;

import java.util.random.RandomGenerator;
import org.measuredmile.quantity.statistics.Draw;

/// A bike and its usual rider at the brakes, as they are and not as anybody measures them.
///
/// Unit: `decelerationMps2` of the developed braking at its beginning, which changes by `riseShare` of itself
/// over a stop; `takeUpS` from the control's first movement to the onset of deceleration, `buildUpS` from there
/// until it is developed. `runScatter` and `dayScatter` are standard deviations of the logarithm of the
/// deceleration from run to run and from day to day.
public record BrakedBike(
        double decelerationMps2,
        double riseShare,
        double takeUpS,
        double buildUpS,
        double runScatter,
        double dayScatter) {
    /// Scatter from run to run of the population, and the degrees of freedom by which a bike's own differs from it.
    private static final double RUN_SCATTER = 0.045;

    private static final int RUN_DEGREES = 12;
    private static final double DAY_SCATTER = 0.035;
    private static final int DAY_DEGREES = 12;

    /// A bike from the population that braking is proved on: 4.8 to 6.6 m/s², changing by −10 to +20 % over a
    /// stop; take-up 0.05 to 0.15 s, build-up 0.225 ± 0.045 s; scatter 4.5 % from run to run and 3.5 % from day to
    /// day, each bike's own differing from it as a standard deviation of 12 degrees of freedom would.
    public static BrakedBike drawn(RandomGenerator random) {
        return new BrakedBike(
                Draw.rectangular(random, 4.8, 6.6),
                Draw.rectangular(random, -0.10, 0.20),
                Draw.rectangular(random, 0.05, 0.15),
                Math.clamp(Draw.normal(random, 0.225, 0.045), 0.10, 0.35),
                scatter(random, RUN_SCATTER, RUN_DEGREES),
                scatter(random, DAY_SCATTER, DAY_DEGREES));
    }

    private static double scatter(RandomGenerator random, double usual, int degrees) {
        double chiSquare = 0;
        for (int i = 0; i < degrees; i++) {
            double normal = Draw.normal(random);
            chiSquare += normal * normal;
        }
        return usual * Math.sqrt(degrees / chiSquare);
    }

    /// The same bike with its deceleration changed by a share, as on another day or in another run.
    public BrakedBike changed(double logarithm) {
        return new BrakedBike(
                decelerationMps2 * StrictMath.exp(logarithm), riseShare, takeUpS, buildUpS, runScatter, dayScatter);
    }

    /// The same with other times of take-up and build-up, never below a hundredth of a second.
    public BrakedBike timed(double newTakeUpS, double newBuildUpS) {
        return new BrakedBike(
                decelerationMps2,
                riseShare,
                Math.max(0.01, newTakeUpS),
                Math.max(0.01, newBuildUpS),
                runScatter,
                dayScatter);
    }
}
