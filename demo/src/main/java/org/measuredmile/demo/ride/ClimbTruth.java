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
/// `today` the day's share of the logarithm of each time. Half of what differs between days when pedalling is the
/// motor's, which the throttle has too.
record ClimbTruth(
        RoadUp road,
        List<ClimbedBike> bikes,
        List<Double> gains,
        List<Double> today,
        List<Double> entriesMps,
        Weather weather,
        double runSd,
        double daySd) {
    /// Air and wind of a day.
    record Weather(double kelvin, double pascal, double humidity, double headMps, double acrossMps) {
        private static final double DRY_AIR = 287.05;

        /// By the gas law of moist air with Magnus' formula for the vapour.
        double airKgPerM3() {
            double celsius = kelvin - 273.15;
            double vapour = humidity * 611.2 * StrictMath.exp(17.62 * celsius / (243.12 + celsius));
            return (pascal - 0.378 * vapour) / (DRY_AIR * kelvin);
        }
    }

    private static final double REFERENCE_AIR = new Weather(293.15, 100_000, 0.5, 0, 0).airKgPerM3();
    private static final double REFERENCE_RIDER_KG = 80;
    /// Of the day's share of a pedalled time, the part that the throttle shares, and the rider's own.
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
        var weather = new Weather(
                Draw.rectangular(random, 278, 303),
                Draw.rectangular(random, 98_500, 103_000),
                Draw.rectangular(random, 0.3, 0.9),
                Draw.normal(random, 0, SimulatedClimb.WIND_SD),
                Draw.normal(random, 0, SimulatedClimb.WIND_SD));
        double steady = Draw.rectangular(random, 3.5, 5.5);
        double fall = Math.max(0.25, Draw.normal(random, 1, 0.35));
        var bike = new ClimbedBike(
                Math.max(16, Draw.normal(random, 28, 4)),
                Draw.rectangular(random, 65, 100),
                3,
                Math.max(0.003, Draw.normal(random, 0.009, 0.003)),
                Math.max(0.35, Draw.normal(random, 0.6, 0.09)),
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

    private RiddenClimb.Weather calm() {
        return new RiddenClimb.Weather(1.2, 0);
    }

    private double gain(int drive) {
        double weaker = RiddenClimb.of(bikes.get(drive).stronger(-0.01), road, calm(), entriesMps.get(drive))
                .timeS();
        double stronger = RiddenClimb.of(bikes.get(drive).stronger(0.01), road, calm(), entriesMps.get(drive))
                .timeS();
        return StrictMath.log(weaker / stronger) / 0.02;
    }

    /// One run of the day.
    RiddenClimb ridden(int drive, RandomGenerator random) {
        return climb(drive, today.get(drive) + runSd * Draw.normal(random), weather.headMps(), false);
    }

    /// A climb whose time is shorter by so much of its logarithm.
    private RiddenClimb climb(int drive, double shorter, double headMps, boolean atReference) {
        var bike = bikes.get(drive).stronger(shorter / gains.get(drive));
        double entry = entriesMps.get(drive);
        return atReference
                ? RiddenClimb.of(
                        bike.carrying(REFERENCE_RIDER_KG), road, new RiddenClimb.Weather(REFERENCE_AIR, 0), entry)
                : RiddenClimb.of(bike, road, new RiddenClimb.Weather(weather.airKgPerM3(), headMps), entry);
    }

    List<Truth> truths(boolean isTraced) {
        var truths = new ArrayList<Truth>();
        for (int drive = 0; drive < 2; drive++) {
            var variant = Variant.of("drive", DRIVES.get(drive)).with("course", "hill");
            var measured = rides(drive, false);
            truths.add(truth(measured, "time", variant, RiddenClimb::timeS));
            truths.add(truth(measured, "mean-speed", variant, RiddenClimb::meanMps));
            if (isTraced) {
                truths.add(truth(measured, "lowest-speed", variant, RiddenClimb::lowestMps));
                truths.add(truth(measured, "wheel-power", variant, RiddenClimb::powerW));
            }
            truths.add(truth(rides(drive, true), "time", variant.with("at", "reference"), RiddenClimb::timeS));
        }
        truths.add(gainTruth(truths));
        return truths;
    }

    /// The rides that means are taken over by the three-point rule over a normal variable, which is exact to its
    /// fifth power: over the runs of the day; over days; over the wind of days, none at reference.
    private record Rides(List<RiddenClimb> runs, List<RiddenClimb> days, List<RiddenClimb> winds) {}

    private Rides rides(int drive, boolean atReference) {
        var runs = new ArrayList<RiddenClimb>();
        var days = new ArrayList<RiddenClimb>();
        double both = StrictMath.hypot(runSd, daySd);
        for (int i = -1; i <= 1; i++) {
            double reach = i * Math.sqrt(3);
            runs.add(climb(drive, today.get(drive) + reach * runSd, weather.headMps(), atReference));
            days.add(climb(drive, reach * both, 0, atReference));
        }
        var middle = days.get(1);
        if (atReference) {
            return new Rides(runs, days, List.of(middle, middle, middle));
        }
        double reach = Math.sqrt(3) * SimulatedClimb.WIND_SD;
        return new Rides(runs, days, List.of(climb(drive, 0, -reach, false), middle, climb(drive, 0, reach, false)));
    }

    private record Three(double mean, double sd) {
        static Three over(List<RiddenClimb> rides, ToDoubleFunction<RiddenClimb> quantity) {
            double low = quantity.applyAsDouble(rides.get(0));
            double middle = quantity.applyAsDouble(rides.get(1));
            double high = quantity.applyAsDouble(rides.get(2));
            double mean = (low + 4 * middle + high) / 6;
            double variance = ((low - mean) * (low - mean)
                            + 4 * (middle - mean) * (middle - mean)
                            + (high - mean) * (high - mean))
                    / 6;
            return new Three(mean, Math.sqrt(variance));
        }
    }

    private Truth truth(Rides rides, String name, Variant variant, ToDoubleFunction<RiddenClimb> quantity) {
        var runs = Three.over(rides.runs(), quantity);
        var days = Three.over(rides.days(), quantity);
        var winds = Three.over(rides.winds(), quantity);
        double middle = quantity.applyAsDouble(rides.days().get(1));
        double sdRuns = runs.sd() / Math.sqrt(SimulatedClimb.EACH);
        double sdDays = StrictMath.hypot(days.sd() * daySd / StrictMath.hypot(runSd, daySd), winds.sd());
        return new Truth(
                "climb." + name,
                variant,
                runs.mean(),
                days.mean() + winds.mean() - middle,
                sdRuns,
                StrictMath.hypot(sdRuns, sdDays));
    }

    private Truth gainTruth(List<Truth> truths) {
        var throttle = truths.getFirst();
        var pedal = truths.stream()
                .filter(truth -> truth.figure().equals("climb.time")
                        && truth.variant().has("drive", "pedal")
                        && truth.variant().get("at").isEmpty())
                .findFirst()
                .orElseThrow();
        double sdThisDay = StrictMath.hypot(throttle.sdThisDay(), pedal.sdThisDay());
        double own = daySd * throttle.anyDay();
        double pedals = daySd * pedal.anyDay();
        double days = StrictMath.hypot(own - MOTORS * pedals, RIDERS * pedals);
        return new Truth(
                "climb.pedalling-gain",
                Variant.of("course", "hill"),
                throttle.thisDay() - pedal.thisDay(),
                throttle.anyDay() - pedal.anyDay(),
                sdThisDay,
                StrictMath.hypot(sdThisDay, days));
    }
}
