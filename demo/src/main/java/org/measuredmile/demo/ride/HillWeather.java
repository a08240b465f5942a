package org.measuredmile.demo.ride;

import java.util.random.RandomGenerator;
import org.measuredmile.quantity.statistics.Draw;

/// Air and wind of a day of climbs: what is written of the wind for the whole day, and what it is on the hill.
///
/// The wind at a rider's height on a slope is not that of the open place where somebody reads it: it departs by
/// 0.5 m/s and by three tenths of what is written (standard deviations), as the house takes it to.
/// Unit: kelvin, pascal, share of saturation; m/s, `writtenMps` and `headMps` against who climbs, `acrossMps` as
/// written.
record HillWeather(double kelvin, double pascal, double humidity, double writtenMps, double acrossMps, double headMps) {
    /// Of either component that is written.
    static final double WRITTEN_SD = 0.5;
    /// Of the wind along a hill over all days: √(0.5² + 0.5² + 0.3²·(0.5² + 0.5²)).
    static final double ALONG_SD = 0.738;

    private static final double LEAST_SD = 0.5;
    private static final double SHARE_SD = 0.3;
    private static final double DRY_AIR = 287.05;

    static HillWeather drawn(RandomGenerator random) {
        double kelvin = Draw.rectangular(random, 278, 303);
        double pascal = Draw.rectangular(random, 98_500, 103_000);
        double humidity = Draw.rectangular(random, 0.3, 0.9);
        double along = Draw.normal(random, 0, WRITTEN_SD);
        double across = Draw.normal(random, 0, WRITTEN_SD);
        double head = Draw.normal(random, along, departsBy(along, across));
        return new HillWeather(kelvin, pascal, humidity, along, across, head);
    }

    /// How far the wind of a place departs from a written one of these components.
    static double departsBy(double oneMps, double otherMps) {
        return StrictMath.hypot(LEAST_SD, SHARE_SD * StrictMath.hypot(oneMps, otherMps));
    }

    /// The same for this day's hill.
    double departsBy() {
        return departsBy(writtenMps, acrossMps);
    }

    /// By the gas law of moist air with Magnus' formula for the vapour.
    double airKgPerM3() {
        return airKgPerM3(kelvin, pascal, humidity);
    }

    static double airKgPerM3(double kelvin, double pascal, double humidity) {
        double celsius = kelvin - 273.15;
        double vapour = humidity * 611.2 * StrictMath.exp(17.62 * celsius / (243.12 + celsius));
        return (pascal - 0.378 * vapour) / (DRY_AIR * kelvin);
    }
}
