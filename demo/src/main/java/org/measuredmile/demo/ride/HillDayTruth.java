package org.measuredmile.demo.ride;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.ClimbUnknowns.Taken;
import org.measuredmile.demo.ride.SimulatedDay.Truth;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.recording.day.Variant;

/// A day around a hill as it really was: bike, hill and wind, and what endless climbs of that day, and of any day,
/// would have given.
///
/// Shape: the drive pushes on the hill as at that day's starts. `runSd` is the scatter of a climb's time from run to
/// run, relative.
/// Unit: m/s; the wind as written towards which it comes from: a rider going that way has it as a head wind; `headMps`
/// what it is against who climbs, `roadMps` against who goes east on the road of the coasts and starts.
record HillDayTruth(
        StartedBike bike,
        StartedBike today,
        RoadUp road,
        double entryShare,
        double runSd,
        double northMps,
        double eastMps,
        double headMps,
        double roadMps) {
    static final int CLIMBS = 3;
    /// That of 20 °C, 100 kPa and half humidity.
    static final double AIR_KG_PER_M3 = 1.183;
    private static final double RUN_SD = 0.013;
    private static final double REFERENCE_KG = 80;
    /// What five pairs of coasts by a watch leave open of rolling and air together at best, relative (see
    /// [SimulatedCoastDown]).
    private static final double COASTS_SD = 0.066 / Math.sqrt(5);
    private static final int STARTS = 6;
    private static final double STEP = 0.01;

    static HillDayTruth drawn(RandomGenerator random) {
        var bike = StartedBike.drawn(random);
        var road = new RoadUp(
                Draw.rectangular(random, 250, 500),
                Draw.rectangular(random, 0.05, 0.09),
                0.15,
                Draw.rectangular(random, 120, 250),
                Draw.rectangular(random, 0, 2 * Math.PI));
        double north = Draw.normal(random, 0, HillWeather.WRITTEN_SD);
        double east = Draw.normal(random, 0, HillWeather.WRITTEN_SD);
        double departs = HillWeather.departsBy(north, east);
        double angle = StrictMath.toRadians(SimulatedHillDay.HILL_BEARING);
        double along = north * StrictMath.cos(angle) + east * StrictMath.sin(angle);
        return new HillDayTruth(
                bike,
                bike.changed(Draw.normal(random, 0, bike.dayScatter())),
                road,
                Draw.rectangular(random, 0.9, 1.1),
                RUN_SD * Crews.spread(random),
                north,
                east,
                Draw.normal(random, along, departs),
                Draw.normal(random, east, departs));
    }

    CoastingBike coasting() {
        return new CoastingBike(
                bike.rolling(), bike.dragAreaM2(), bike.riderKg(), bike.bikeKg(), bike.wheelsKg(), 0.05, 0.04);
    }

    /// One run of the day.
    RiddenClimb ridden(RandomGenerator random) {
        return climb(today.changed(runSd / gain() * Draw.normal(random)), headMps);
    }

    /// How much a time answers to the logarithm of the power.
    private double gain() {
        double weaker = climb(today.changed(-STEP), headMps).timeS();
        double stronger = climb(today.changed(STEP), headMps).timeS();
        return StrictMath.log(weaker / stronger) / (2 * STEP);
    }

    private RiddenClimb climb(StartedBike of, double windMps) {
        return climb(climbing(of), windMps);
    }

    private RiddenClimb climb(ClimbedBike of, double windMps) {
        return RiddenClimb.of(of, road, new RiddenClimb.Weather(AIR_KG_PER_M3, windMps), entryMps());
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

    /// The best possible knows what [ClimbUnknowns] says, and the bike weighed, coasted and, for the foretold time,
    /// started: only there is the drive known to push on the hill as at a start.
    List<Truth> truths() {
        var variant = Variant.of("drive", "throttle").with("course", "hill");
        double seconds = climb(bike, 0).timeS();
        double watch = StrictMath.hypot(SimulatedClimb.WATCH_SD_S / Math.sqrt(CLIMBS), SimulatedClimb.WATCH_ALIKE_SD_S);
        double timed = StrictMath.hypot(runSd / Math.sqrt(CLIMBS), watch / seconds);
        var unknowns = ClimbUnknowns.of(
                taken -> climb(taken.bike(climbing(today)), headMps + taken.headMps()),
                taken -> climb(taken.bike(climbing(today.riddenBy(REFERENCE_KG))), 0),
                unsure(),
                timed);
        var time = truth("time", variant, RiddenClimb::timeS, timed);
        return List.of(
                time,
                truth("time", variant.with("at", "reference"), RiddenClimb::timeS, unknowns.ofReference()),
                truth("wheel-power", variant, RiddenClimb::powerW, unknowns.ofPower()),
                foretold(variant, time));
    }

    private List<Taken> unsure() {
        return List.of(
                new Taken(0, 0, ClimbUnknowns.RIDER_SD_KG, 0, 0, 0, 0),
                new Taken(0, 0, 0, COASTS_SD * bike.rolling(), COASTS_SD * bike.dragAreaM2(), 0, 0),
                new Taken(0, 0, 0, 0, 0, 0, HillWeather.departsBy(northMps, eastMps)));
    }

    /// The time that is foretold: of the day, what masses, coasts, wind and the mean of the starts leave open.
    /// Of any day what is open of this one's wind is no part, since the time is foretold for the wind as
    /// written.
    private Truth foretold(Variant variant, Truth time) {
        double starts = gain() * bike.runScatter() / Math.sqrt(STARTS);
        double drive = gain() * bike.dayScatter();
        double thisDay = starts * starts;
        double anyDay = thisDay + drive * drive;
        double seconds = climb(today, headMps).timeS();
        for (var taken : unsure()) {
            var moved = climb(taken.bike(climbing(today)), headMps + taken.headMps());
            double open = StrictMath.pow(StrictMath.log(moved.timeS() / seconds), 2);
            thisDay += open;
            anyDay += taken.headMps() == 0 ? open : 0;
        }
        double written =
                StrictMath.log(climb(today, headMps + HillWeather.WRITTEN_SD).timeS() / seconds);
        anyDay += written * written;
        return new Truth(
                "climb.foretold-time",
                variant,
                time.thisDay(),
                time.anyDay(),
                Math.sqrt(thisDay) * time.thisDay(),
                Math.sqrt(anyDay) * time.anyDay());
    }

    private Truth truth(String name, Variant variant, ToDoubleFunction<RiddenClimb> quantity, double measured) {
        boolean isCalm = variant.has("at", "reference");
        var onDay = isCalm ? today.riddenBy(REFERENCE_KG) : today;
        var any = isCalm ? bike.riddenBy(REFERENCE_KG) : bike;
        double thisDay = quantity.applyAsDouble(climb(onDay, isCalm ? 0 : headMps));
        var days = new ArrayList<RiddenClimb>();
        var winds = new ArrayList<RiddenClimb>();
        for (int i = -1; i <= 1; i++) {
            double reach = i * ThreePoints.REACH;
            days.add(climb(any.changed(reach * bike.dayScatter()), 0));
            winds.add(climb(any, isCalm ? 0 : reach * HillWeather.ALONG_SD));
        }
        var overDays = new ThreePoints(days);
        var overWinds = new ThreePoints(winds);
        double anyDay = overDays.mean(quantity) + overWinds.mean(quantity) - overDays.middle(quantity);
        double sd = measured * thisDay;
        double sdDays = StrictMath.hypot(overDays.sd(quantity), overWinds.sd(quantity));
        return new Truth("climb." + name, variant, thisDay, anyDay, sd, StrictMath.hypot(sd, sdDays));
    }
}
