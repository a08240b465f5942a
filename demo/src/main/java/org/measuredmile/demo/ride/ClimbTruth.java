package org.measuredmile.demo.ride;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.SimulatedDay.Truth;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.recording.day.Variant;

/// A day of climbs as it really was, and what endless runs of that day, and of any day, would have given.
///
/// Shape: the bike by throttle and pedalling; `gains` are how much a time answers to the logarithm of the force;
/// `today` the day's share of the logarithm of each force. A part of what differs between days when pedalling is the
/// motor's, which the throttle has too.
record ClimbTruth(
        RoadUp road,
        List<ClimbedBike> bikes,
        List<Double> gains,
        List<Double> today,
        List<Double> entriesMps,
        HillWeather weather,
        double runSd,
        double daySd) {
    private static final double REFERENCE_AIR = HillWeather.airKgPerM3(293.15, 100_000, 0.5);
    private static final double REFERENCE_RIDER_KG = 80;
    /// Of the day's share of a pedalled climb, the part that the throttle shares, and the rider's own.
    private static final double MOTORS = 0.8;
    private static final double RIDERS = 0.6;
    private static final List<String> DRIVES = List.of("throttle", "pedal");

    static ClimbTruth drawn(RandomGenerator random) {
        double sine = Draw.rectangular(random, 0.04, 0.08);
        var road = new RoadUp(
                Draw.rectangular(random, 250, 500),
                sine,
                0.15,
                Draw.rectangular(random, 120, 250),
                Draw.rectangular(random, 0, 2 * Math.PI));
        var weather = HillWeather.drawn(random);
        double steady = Draw.rectangular(random, 3.5, 5.5);
        double fall = Math.max(0.25, Draw.normal(random, 1, ClimbUnknowns.FALL_SD));
        var bike = new ClimbedBike(
                Math.max(16, Draw.normal(random, 28, ClimbUnknowns.BIKE_SD_KG)),
                Draw.rectangular(random, 65, 100),
                3,
                Math.max(0.003, Draw.normal(random, 0.009, ClimbUnknowns.ROLLING_SD)),
                Math.max(0.35, Draw.normal(random, 0.6, ClimbUnknowns.AREA_SD_M2)),
                1,
                1,
                fall);
        var bikes = new ArrayList<ClimbedBike>();
        var entries = new ArrayList<Double>();
        for (double mps : new double[] {steady, 1.25 * steady}) {
            double push = ClimbedBike.holdingN(bike, mps, sine, 1.2);
            bikes.add(new ClimbedBike(
                    bike.bikeKg(),
                    bike.riderKg(),
                    bike.wheelsKg(),
                    bike.rolling(),
                    bike.dragAreaM2(),
                    push,
                    mps,
                    fall));
            entries.add(mps * Draw.rectangular(random, 0.95, 1.2));
        }
        double motor = Draw.normal(random);
        double daySd = SimulatedClimb.DAY_SD * Crews.spread(random);
        var today = List.of(daySd * motor, daySd * (MOTORS * motor + RIDERS * Draw.normal(random)));
        double runSd = SimulatedClimb.RUN_SD * Crews.spread(random);
        var known = new ClimbTruth(road, bikes, List.of(1.0, 1.0), today, entries, weather, runSd, daySd);
        return new ClimbTruth(
                road, bikes, List.of(known.gain(0), known.gain(1)), today, entries, weather, runSd, daySd);
    }

    private double gain(int drive) {
        return StrictMath.log(calm(drive, -0.01).timeS() / calm(drive, 0.01).timeS()) / 0.02;
    }

    private RiddenClimb calm(int drive, double stronger) {
        var still = new RiddenClimb.Weather(1.2, 0);
        return RiddenClimb.of(bikes.get(drive).stronger(stronger), road, still, entriesMps.get(drive));
    }

    /// One run of the day.
    RiddenClimb ridden(int drive, RandomGenerator random) {
        return climb(drive, today.get(drive) + run(drive) * Draw.normal(random), weather.headMps(), false);
    }

    /// What runs scatter by, of the logarithm of the force.
    private double run(int drive) {
        return runSd / gains.get(drive);
    }

    /// A climb with so much more of the logarithm of the force.
    private RiddenClimb climb(int drive, double stronger, double headMps, boolean atReference) {
        var bike = bikes.get(drive).stronger(stronger);
        return atReference ? atReference(bike, drive) : RiddenClimb.of(bike, road, air(headMps), entriesMps.get(drive));
    }

    private RiddenClimb atReference(ClimbedBike bike, int drive) {
        var still = new RiddenClimb.Weather(REFERENCE_AIR, 0);
        return RiddenClimb.of(bike.carrying(REFERENCE_RIDER_KG), road, still, entriesMps.get(drive));
    }

    private RiddenClimb.Weather air(double headMps) {
        return new RiddenClimb.Weather(weather.airKgPerM3(), headMps);
    }

    List<Truth> truths(boolean isTraced) {
        var truths = new ArrayList<Truth>();
        for (int drive = 0; drive < 2; drive++) {
            var variant = Variant.of("drive", DRIVES.get(drive)).with("course", "hill");
            var measured = rides(drive, false);
            double timed = StrictMath.hypot(runSd / Math.sqrt(SimulatedClimb.EACH), timing(drive, isTraced));
            var unknowns = unknowns(drive, timed);
            truths.add(truth(measured, "time", variant, RiddenClimb::timeS, timed));
            truths.add(truth(measured, "mean-speed", variant, RiddenClimb::meanMps, timed));
            if (isTraced) {
                double lowest = measured.runs().sd(RiddenClimb::lowestMps)
                        / measured.runs().mean(RiddenClimb::lowestMps)
                        / Math.sqrt(SimulatedClimb.EACH);
                double scaled = StrictMath.hypot(lowest, SimulatedClimb.SCALE_SD);
                truths.add(truth(measured, "lowest-speed", variant, RiddenClimb::lowestMps, scaled));
                truths.add(truth(measured, "wheel-power", variant, RiddenClimb::powerW, unknowns.ofPower()));
            }
            var reference = variant.with("at", "reference");
            truths.add(truth(rides(drive, true), "time", reference, RiddenClimb::timeS, unknowns.ofReference()));
        }
        truths.add(gainTruth(truths, isTraced));
        return truths;
    }

    /// What the watch leaves open of a mean time: what is a run's own and the part alike in all. A receiver's speed
    /// and positions together leave less than its scale alone, which is all that is counted of it.
    private double timing(int drive, boolean isTraced) {
        double seconds = calm(drive, 0).timeS();
        double watch = StrictMath.hypot(
                        SimulatedClimb.WATCH_SD_S / Math.sqrt(SimulatedClimb.EACH), SimulatedClimb.WATCH_ALIKE_SD_S)
                / seconds;
        return isTraced ? 0 : watch;
    }

    private ClimbUnknowns unknowns(int drive, double timed) {
        var usual = bikes.get(drive).stronger(today.get(drive));
        return ClimbUnknowns.overFalls(point -> {
            var bike = usual.falling(1 + point * ThreePoints.REACH * ClimbUnknowns.FALL_SD);
            return ClimbUnknowns.of(
                    taken -> RiddenClimb.of(
                            taken.bike(bike), road, air(weather.headMps() + taken.headMps()), entriesMps.get(drive)),
                    taken -> atReference(taken.bike(bike), drive),
                    ClimbUnknowns.nothingMeasured(weather.departsBy()),
                    timed);
        });
    }

    /// The rides that means are taken over: over the runs of the day; over days; over the wind of days, none at
    /// reference.
    private record Rides(ThreePoints runs, ThreePoints days, ThreePoints winds) {}

    private Rides rides(int drive, boolean atReference) {
        var runs = new ArrayList<RiddenClimb>();
        var days = new ArrayList<RiddenClimb>();
        var winds = new ArrayList<RiddenClimb>();
        double both = StrictMath.hypot(run(drive), daySd);
        for (int i = -1; i <= 1; i++) {
            double reach = i * ThreePoints.REACH;
            runs.add(climb(drive, today.get(drive) + reach * run(drive), weather.headMps(), atReference));
            days.add(climb(drive, reach * both, 0, atReference));
            winds.add(climb(drive, 0, reach * HillWeather.ALONG_SD, atReference));
        }
        return new Rides(new ThreePoints(runs), new ThreePoints(days), new ThreePoints(winds));
    }

    /// `measured` is what the best analyst leaves open of the day's mean, relative.
    private Truth truth(
            Rides rides, String name, Variant variant, ToDoubleFunction<RiddenClimb> quantity, double measured) {
        double thisDay = rides.runs().mean(quantity);
        double sdDays = StrictMath.hypot(
                rides.days().sd(quantity) * daySd / StrictMath.hypot(run(drive(variant)), daySd),
                rides.winds().sd(quantity));
        double anyDay = rides.days().mean(quantity)
                + rides.winds().mean(quantity)
                - rides.days().middle(quantity);
        double sdThisDay = measured * thisDay;
        return new Truth("climb." + name, variant, thisDay, anyDay, sdThisDay, StrictMath.hypot(sdThisDay, sdDays));
    }

    private static int drive(Variant variant) {
        return DRIVES.indexOf(variant.get("drive").orElseThrow());
    }

    private Truth gainTruth(List<Truth> truths, boolean isTraced) {
        var throttle = truths.getFirst();
        var pedal = truths.stream()
                .filter(truth -> truth.figure().equals("climb.time")
                        && truth.variant().has("drive", "pedal")
                        && truth.variant().get("at").isEmpty())
                .findFirst()
                .orElseThrow();
        // What is alike in both of a watch's means cancels, so each run's own is all that is left of it.
        double watch = isTraced ? 0 : SimulatedClimb.WATCH_SD_S * Math.sqrt(2.0 / SimulatedClimb.EACH);
        double runs = runSd / Math.sqrt(SimulatedClimb.EACH);
        double sdThisDay = StrictMath.hypot(StrictMath.hypot(runs * throttle.thisDay(), runs * pedal.thisDay()), watch);
        double motor = daySd * (gains.get(0) * throttle.anyDay() - MOTORS * gains.get(1) * pedal.anyDay());
        double rider = daySd * RIDERS * gains.get(1) * pedal.anyDay();
        double wind = HillWeather.ALONG_SD * (perMps(0) - perMps(1));
        double days = StrictMath.hypot(StrictMath.hypot(motor, rider), wind);
        return new Truth(
                "climb.pedalling-gain",
                Variant.of("course", "hill"),
                throttle.thisDay() - pedal.thisDay(),
                throttle.anyDay() - pedal.anyDay(),
                sdThisDay,
                StrictMath.hypot(sdThisDay, days));
    }

    /// The seconds that a metre a second of wind adds.
    private double perMps(int drive) {
        return climb(drive, 0, 0.5, false).timeS()
                - climb(drive, 0, -0.5, false).timeS();
    }
}
