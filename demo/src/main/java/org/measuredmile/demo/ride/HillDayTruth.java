package org.measuredmile.demo.ride;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.SimulatedDay.Truth;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.recording.day.Variant;

/// A day around a hill as it really was: bike, hill and wind, and what endless climbs of that day, and of any day,
/// would
/// have given.
///
/// Unit: wind towards which it comes from, m/s: a rider going that way has it as a head wind.
record HillDayTruth(
        StartedBike bike, StartedBike today, RoadUp road, double entryShare, double windNorthMps, double windEastMps) {
    static final int CLIMBS = 3;
    /// That of 20 °C, 100 kPa and half humidity.
    static final double AIR_KG_PER_M3 = 1.183;
    private static final double GRAVITY = 9.80665;
    private static final double WIND_SD = 0.7;
    private static final double REFERENCE_KG = 80;
    /// What the instruments of such a day leave open at best: wind along the hill, rider's mass, and the force
    /// of five pairs of coasts, relative (see [SimulatedCoastDown]).
    private static final double WIND_LEAST_SD = 0.5;
    private static final double WIND_SHARE_SD = 0.3;
    private static final double RIDER_READ_SD = 0.5;
    private static final double COASTS_SD = 0.06 / Math.sqrt(5);
    private static final int STARTS = 6;
    /// A long climb averages out some of what differs between starts, so that times scatter by 1.3 %.
    private static final double CLIMB_SHARE = 0.55;
    /// Days differ by more on a long climb than at a start, battery and motor being warmer or colder.
    private static final double DAY_SHARE = 1.15;

    static HillDayTruth drawn(RandomGenerator random) {
        var bike = StartedBike.drawn(random);
        var road = new RoadUp(
                Draw.rectangular(random, 250, 500),
                Draw.rectangular(random, 0.05, 0.09),
                0.15,
                Draw.rectangular(random, 120, 250),
                Draw.rectangular(random, 0, 2 * Math.PI));
        return new HillDayTruth(
                bike,
                bike.changed(Draw.normal(random, 0, DAY_SHARE * bike.dayScatter())),
                road,
                Draw.rectangular(random, 0.9, 1.1),
                Draw.normal(random, 0, WIND_SD),
                Draw.normal(random, 0, WIND_SD));
    }

    /// The wind against who goes along a bearing in degrees.
    double windFrom(double bearingDegrees) {
        double angle = StrictMath.toRadians(bearingDegrees);
        return windNorthMps * StrictMath.cos(angle) + windEastMps * StrictMath.sin(angle);
    }

    /// How far what is written of either component of the wind is off: 0.5 m/s, and three tenths of the wind.
    double windOpen() {
        return StrictMath.hypot(WIND_LEAST_SD, WIND_SHARE_SD * StrictMath.hypot(windNorthMps, windEastMps));
    }

    CoastingBike coasting() {
        return new CoastingBike(
                bike.rolling(), bike.dragAreaM2(), bike.riderKg(), bike.bikeKg(), bike.wheelsKg(), 0.05, 0.04);
    }

    /// Of the logarithm of the power, from climb to climb.
    double climbScatter() {
        return CLIMB_SHARE * bike.runScatter();
    }

    /// One climb of the day, of so much of the logarithm more power.
    RiddenClimb climb(double logarithm) {
        return climb(today.changed(logarithm), windFrom(SimulatedHillDay.hillBearing()));
    }

    private RiddenClimb climb(StartedBike of, double headMps) {
        return RiddenClimb.of(climbing(of), road, new RiddenClimb.Weather(AIR_KG_PER_M3, headMps), entryMps());
    }

    /// A drive at its limit of power: its force falls as one over the speed.
    private static ClimbedBike climbing(StartedBike of) {
        double watts = of.powerWpkg() * of.massKg();
        return new ClimbedBike(
                of.bikeKg(), of.riderKg(), of.wheelsKg(), of.rolling(), of.dragAreaM2(), watts / 6, 6, 1);
    }

    /// Near the speed that the bike holds on the hill.
    private double entryMps() {
        double mps = 1;
        var drive = climbing(bike);
        while (mps < 12
                && mps * ClimbedBike.holdingN(drive, mps, road.meanSine(), AIR_KG_PER_M3) < 6 * drive.forceN()) {
            mps += 0.05;
        }
        return mps * entryShare;
    }

    List<Truth> truths() {
        var variant = Variant.of("drive", "throttle").with("course", "hill");
        double climbs = climbScatter() / Math.sqrt(CLIMBS);
        return List.of(
                truth("time", variant, today, bike, RiddenClimb::timeS, climbs, 0),
                truth(
                        "time",
                        variant.with("at", "reference"),
                        today.riddenBy(REFERENCE_KG),
                        bike.riddenBy(REFERENCE_KG),
                        RiddenClimb::timeS,
                        climbs,
                        1),
                truth("wheel-power", variant, today, bike, RiddenClimb::powerW, climbs, 1),
                truth(
                        "foretold-time",
                        variant,
                        today,
                        bike,
                        RiddenClimb::timeS,
                        bike.runScatter() / Math.sqrt(STARTS),
                        1));
    }

    /// `scatter` is that of the logarithm of power that is left in the mean of the runs; with `byModel` 1, what the
    /// day's instruments leave open of the road load is in the best possible as well.
    private Truth truth(
            String name,
            Variant variant,
            StartedBike onDay,
            StartedBike any,
            ToDoubleFunction<RiddenClimb> quantity,
            double scatter,
            int byModel) {
        boolean isCalm = variant.has("at", "reference");
        double head = isCalm ? 0 : windFrom(SimulatedHillDay.hillBearing());
        double thisDay = quantity.applyAsDouble(climb(onDay, head));
        double anyDay = quantity.applyAsDouble(climb(any, 0));
        double gain = (quantity.applyAsDouble(climb(onDay.changed(0.01), head))
                        - quantity.applyAsDouble(climb(onDay.changed(-0.01), head)))
                / 0.02;
        double force = byModel * forceOpen(onDay);
        double sd = Math.abs(gain) * StrictMath.hypot(scatter, force);
        double windSd = isCalm
                ? 0
                : WIND_SD
                        * Math.abs(quantity.applyAsDouble(climb(any, 0.5)) - quantity.applyAsDouble(climb(any, -0.5)));
        double days = StrictMath.hypot(Math.abs(gain) * DAY_SHARE * bike.dayScatter(), windSd);
        return new Truth("climb." + name, variant, thisDay, anyDay, sd, StrictMath.hypot(sd, days));
    }

    /// What wind, mass and coasts leave open of the force on the hill, relative to it.
    private double forceOpen(StartedBike of) {
        double v = entryMps() / entryShare;
        double rolling = of.massKg() * GRAVITY * of.rolling();
        double air = AIR_KG_PER_M3 * of.dragAreaM2() * v * v / 2;
        double slope = of.massKg() * GRAVITY * road.meanSine();
        double wind = AIR_KG_PER_M3 * of.dragAreaM2() * v * windOpen();
        double mass = RIDER_READ_SD / of.massKg() * (slope + rolling);
        double coasts = COASTS_SD * (rolling + air);
        return StrictMath.hypot(StrictMath.hypot(wind, mass), coasts) / (rolling + air + slope);
    }
}
