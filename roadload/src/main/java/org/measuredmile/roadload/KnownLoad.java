package org.measuredmile.roadload;

import java.util.random.RandomGenerator;
import org.measuredmile.quantity.statistics.Draw;

/// A road load and how well it is known, its two numbers together: they lean on each other, so the force at a speed is
/// known far better than either.
///
/// Unit: as [RoadLoad]; standard uncertainties in the same units; `correlation` from −1 to 1. `degreesOfFreedom` are
/// infinite for a prior. `origin` says in words where it comes from; `assumed` whether nobody measured it.
/// Error: IllegalArgumentException for a negative uncertainty or a correlation beyond ±1.
public record KnownLoad(
        RoadLoad mean,
        double rollingSd,
        double dragAreaSdM2,
        double correlation,
        double degreesOfFreedom,
        boolean assumed,
        String origin) {
    private static final double LEAST_ROLLING = 0.001;
    private static final double LEAST_DRAG_AREA_M2 = 0.05;

    public KnownLoad {
        if (!(rollingSd >= 0) || !(dragAreaSdM2 >= 0) || !(Math.abs(correlation) <= 1)) {
            throw new IllegalArgumentException(rollingSd + ", " + dragAreaSdM2 + ", " + correlation);
        }
    }

    /// Standard uncertainty of the force at a speed on the level in still air, in newtons.
    public double forceSdN(Setting setting, double speedMps) {
        double byRolling = setting.massKg() * setting.gravityMps2();
        double byArea = setting.airKgPerM3() * speedMps * speedMps / 2;
        return sd(byRolling, byArea);
    }

    /// Standard uncertainty of anything linear in the two numbers, with these sensitivities.
    ///
    /// Source: JCGM 100:2008, 5.2.2, equation (16).
    public double sd(double perRolling, double perDragArea) {
        double a = perRolling * rollingSd;
        double b = perDragArea * dragAreaSdM2;
        return StrictMath.sqrt(Math.max(0, a * a + b * b + 2 * correlation * a * b));
    }

    /// One draw of both, never below what physics allows.
    public RoadLoad draw(RandomGenerator random) {
        double first = Draw.normal(random);
        double second = correlation * first + StrictMath.sqrt(1 - correlation * correlation) * Draw.normal(random);
        // One factor for both makes the pair a bivariate t.
        double scale = degreesOfFreedom == Double.POSITIVE_INFINITY
                ? 1
                : StrictMath.sqrt(degreesOfFreedom / Draw.chiSquared(random, degreesOfFreedom));
        double rolling = mean.rollingCoefficient() + scale * rollingSd * first;
        return bounded(rolling, mean.dragAreaM2() + scale * dragAreaSdM2 * second);
    }

    private static RoadLoad bounded(double rolling, double area) {
        return new RoadLoad(Math.max(rolling, LEAST_ROLLING), Math.max(area, LEAST_DRAG_AREA_M2));
    }
}
