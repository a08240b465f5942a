package org.measuredmile.demo.ride;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.SimulatedDay.Truth;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.recording.day.Variant;

/// Weigh-ins of three placements each with the battery in, with it out and of the battery alone, on calibrated scales
/// that show steps; with the battery in the load on each axle is read too.
///
/// Population: bikes of 18 to 45 kg with batteries of 2 to 4.5 kg; placements scatter by 0.03 kg, and from day to day
/// each thing's mass (mud, water, what is fitted) and the scale's zero change by 0.05 kg; a front share of 0.35 to 0.5
/// scatters by 0.0012 and from day to day by 0.002; all these standard deviations themselves differing between crews
/// as an estimate from 12 degrees of freedom does; a scale's factor is off by what its calibration states, 0.05 %;
/// steps of 0.02, 0.05 or 0.1 kg. Half the crews weigh the rear axle on a second scale. The maker permits 140 to 210 kg
/// with a rider, who is taken for 80 kg.
public record SimulatedWeighIn() implements SimulatedTrial {
    private static final int PLACEMENTS = 3;
    private static final double PLACING_KG = 0.03;
    private static final double DAY_KG = 0.05;
    private static final double PLACING_SHARE = 0.0012;
    private static final double DAY_SHARE = 0.002;
    private static final double RIDER_KG = 80;
    private static final double CALIBRATION = 0.0005;
    private static final double[] STEPS_KG = {0.02, 0.05, 0.1};

    @Override
    public String title() {
        return "weigh-in";
    }

    /// A scale: what it shows of a load is too little by its factor, in whole steps.
    private record Scale(String id, double factor, double stepKg) {
        static Scale drawn(String id, RandomGenerator random) {
            double stepKg = STEPS_KG[random.nextInt(STEPS_KG.length)];
            return new Scale(id, 1 + Draw.normal(random, 0, CALIBRATION), stepKg);
        }

        double calibrationSd(double loadKg) {
            return CALIBRATION * loadKg;
        }

        /// Of a mean of the placements, whose scatter spreads them over the step.
        double stepsSd() {
            return stepKg / Math.sqrt(12.0 * PLACEMENTS);
        }

        double sd(double loadKg) {
            return StrictMath.hypot(calibrationSd(loadKg), stepsSd());
        }

        Reading reading(String run, String name, double loadKg) {
            double steps = Math.rint(loadKg / factor / stepKg);
            String shown = new BigDecimal(steps * stepKg)
                    .setScale(2, RoundingMode.HALF_EVEN)
                    .toPlainString();
            return new Reading(run, name, shown, "kg", id, Optional.empty(), "T1", "", Place.NOWHERE);
        }

        Instrument written() {
            return new Instrument(
                    id,
                    Instrument.Kind.SCALE,
                    OptionalDouble.of(stepKg),
                    Optional.of(new Instrument.Calibration(1, CALIBRATION, Optional.empty())),
                    OptionalDouble.empty(),
                    OptionalDouble.empty());
        }
    }

    /// Something measured three times: what it is on any day, what it is today, and how its placements scatter.
    private record Weighed(double always, double today, double placing, double dayScatter) {
        static Weighed drawn(double always, double usualPlacing, double usualDay, RandomGenerator random) {
            double dayScatter = usualDay * Crews.spread(random);
            double today = always + dayScatter * Draw.normal(random);
            return new Weighed(always, today, usualPlacing * Crews.spread(random), dayScatter);
        }

        static Weighed mass(double always, RandomGenerator random) {
            return drawn(always, PLACING_KG, DAY_KG, random);
        }

        double placed(RandomGenerator random) {
            return today + placing * Draw.normal(random);
        }

        Weighed takenFrom(double whole) {
            return new Weighed(whole - always, whole - today, placing, dayScatter);
        }

        /// `scaleSd` is what scale and steps leave open of the mean of the placements.
        Truth truth(String figure, Variant variant, double scaleSd) {
            double sd = StrictMath.hypot(placing / Math.sqrt(PLACEMENTS), scaleSd);
            return new Truth(figure, variant, today, always, sd, StrictMath.hypot(sd, dayScatter));
        }
    }

    @Override
    public SimulatedDay day(Seed seed, long index) {
        var random = seed.child(title()).stream(index);
        double withBatteryKg = Draw.rectangular(random, 18, 45);
        double batteryKg = Draw.rectangular(random, 2, 4.5);
        var in = Weighed.mass(withBatteryKg, random);
        var out = Weighed.mass(withBatteryKg - batteryKg, random);
        var alone = Weighed.mass(batteryKg, random);
        var share = Weighed.drawn(Draw.rectangular(random, 0.35, 0.5), PLACING_SHARE, DAY_SHARE, random);
        double permittedKg = 5 * (28 + random.nextInt(15));
        var front = Scale.drawn("scale-1", random);
        var rear = random.nextBoolean() ? front : Scale.drawn("scale-2", random);
        var runs = new ArrayList<Run>();
        var readings = new ArrayList<Reading>();
        for (int i = 1; i <= PLACEMENTS; i++) {
            double placedKg = in.placed(random);
            double frontKg = share.placed(random) * placedKg;
            readings.add(front.reading(run("in", i, runs), "mass", placedKg));
            readings.add(front.reading("w-in-" + i, "front-axle", frontKg));
            readings.add(rear.reading("w-in-" + i, "rear-axle", placedKg - frontKg));
            readings.add(front.reading(run("out", i, runs), "mass", out.placed(random)));
            readings.add(front.reading(run("alone", i, runs), "mass", alone.placed(random)));
        }
        double inSd = best(front, rear, in.today(), share.today());
        double shareSd = bestOfShare(front, rear, in.today(), share.today()) / in.today();
        var scales =
                List.of(front, rear).stream().distinct().map(Scale::written).toList();
        return new SimulatedDay(
                WrittenDay.of(runs, readings, scales, List.of(), Conditions.UNKNOWN),
                permitting(permittedKg),
                new TreeMap<>(),
                List.of(
                        in.truth("weighin.mass", Variant.of("battery", "in"), inSd),
                        out.truth("weighin.mass", Variant.of("battery", "out"), front.sd(out.today())),
                        alone.truth("weighin.battery-mass", Variant.NONE, front.sd(alone.today())),
                        share.truth("weighin.front-share", Variant.NONE, shareSd),
                        in.takenFrom(permittedKg - RIDER_KG).truth("weighin.payload", Variant.NONE, inSd)));
    }

    /// What scales leave open of the mass with the battery in, of which the load on both axles is a second
    /// weighing: by step on its own, by calibration where the rear axle has a scale of its own.
    private static double best(Scale front, Scale rear, double kg, double share) {
        if (front.equals(rear)) {
            double steps = front.stepsSd() / Math.sqrt(1.5);
            return StrictMath.hypot(front.calibrationSd(kg), steps);
        }
        // Least squares of the two weighings, of which the first calibration is in both.
        double alike = front.calibrationSd(kg) * front.calibrationSd(share * kg);
        double whole = front.sd(kg) * front.sd(kg);
        double ofFront = front.sd(share * kg);
        double ofRear = rear.sd((1 - share) * kg);
        double axles = ofFront * ofFront + ofRear * ofRear;
        return Math.sqrt((whole * axles - alike * alike) / (whole + axles - 2 * alike));
    }

    /// The same of the front axle's share, as a load: one scale's calibration errs alike on both axles.
    private static double bestOfShare(Scale front, Scale rear, double kg, double share) {
        double steps = StrictMath.hypot((1 - share) * front.stepsSd(), share * rear.stepsSd());
        double calibrations = front.equals(rear) ? 0 : Math.sqrt(2) * front.calibrationSd(share * (1 - share) * kg);
        return StrictMath.hypot(steps, calibrations);
    }

    private static String run(String battery, int placement, List<Run> runs) {
        String id = "w-" + battery + "-" + placement;
        runs.add(WrittenDay.run(id, "weighin", Variant.of("battery", battery), ""));
        return id;
    }

    private static Bike permitting(double permittedKg) {
        var known = Bike.known("simulated");
        String claimed = String.valueOf(Math.round(permittedKg));
        var permitted = new SpecLine("permitted-total", claimed, "kg", "", "", "", "", "", "", Place.NOWHERE);
        return new Bike(
                known.id(),
                "",
                "",
                OptionalInt.empty(),
                "",
                "pedal",
                "cadence",
                OptionalInt.empty(),
                "",
                known.price(),
                known.loan(),
                List.of(permitted));
    }
}
