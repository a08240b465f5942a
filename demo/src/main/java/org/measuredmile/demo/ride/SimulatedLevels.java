package org.measuredmile.demo.ride;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.SimulatedDay.Truth;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;

/// Days on which three assist levels are ridden one after the other, out and back or out alone, each way a recording.
///
/// Population: bikes as [AssistedBike#drawn]; the rider's effort differs from 75 W by 10 W from day to day, what else
/// differs is 0.12 m/s (itself known to 12 degrees of freedom); the speed wanders by 0.10 to 0.20 m/s with a memory
/// around 10 s (log-normal, 0.45 in the
/// logarithm); levels are held for 25 to 45 s; wind up to 3 m/s of any bearing, each way 30 % of it apart, its bearing
/// written on half the days as a compass point; the receiver's scale is off by what its calibration states, 0.2 %.
/// Crews live where the air is 5 to 30 °C warm and weighs 86 to 102 kPa, their bikes 28 kg ± 4 kg, and what the rider
/// weighs is written within 0.5 kg; help ends at 9 to 12 m/s, above every level.
public record SimulatedLevels(boolean bothWays) implements SimulatedTrial {
    private static final int LEVELS = 3;
    private static final double EFFORT_W = 75;
    private static final double EFFORT_SD_W = 10;
    private static final double DAY_SD_MPS = 0.12;
    private static final double SCALE_SD = 0.002;
    private static final double WIND_CHANGE = 0.3;
    private static final RoadLine ROAD = new RoadLine(45, 10, 90, 100);

    @Override
    public String title() {
        return "assist levels " + (bothWays ? "both ways" : "one way");
    }

    /// The wind, and the angle between where it comes from and the way out.
    private record Weather(double windMps, double angle) {
        static Weather drawn(RandomGenerator random) {
            double wind =
                    Math.min(2.9, 1.25 * StrictMath.hypot(Draw.normal(random), Draw.normal(random)) / Math.sqrt(2));
            return new Weather(wind, Draw.rectangular(random, 0, 2 * Math.PI));
        }

        double alongMps() {
            return windMps * StrictMath.cos(angle);
        }

        /// Where it comes from, to the nearest of sixteen points.
        String fromPoint() {
            long point = Math.round((ROAD.bearingDegrees() + StrictMath.toDegrees(angle)) / 22.5);
            return point % 16 * 22.5 + "°";
        }

        double headWindMps(boolean isBack, RandomGenerator random) {
            return (isBack ? -alongMps() : alongMps()) + Draw.normal(random, 0, WIND_CHANGE * windMps);
        }
    }

    private record Habit(double wanderMps, double memoryS) {
        static Habit drawn(RandomGenerator random) {
            return new Habit(Draw.rectangular(random, 0.10, 0.20), 10 * StrictMath.exp(Draw.normal(random, 0, 0.45)));
        }
    }

    /// Where the crew lives and what its bike and rider weigh.
    ///
    /// Unit: kelvin, pascal, ratio, kilograms, m/s.
    private record Setting(
            double airK, double pressurePa, double humidity, double bikeKg, double readRiderKg, double cutOffMps) {
        private static final double REFERENCE_RIDER_KG = 80;
        private static final double REFERENCE_AIR_KG_PER_M3 = densityKgPerM3(293.15, 100_000, 0.5);

        static Setting drawn(RandomGenerator random, double massKg) {
            double bikeKg = 28 + 4 * Draw.normal(random);
            return new Setting(
                    Draw.rectangular(random, 278, 303),
                    Draw.rectangular(random, 86_000, 102_000),
                    Draw.rectangular(random, 0.3, 0.9),
                    bikeKg,
                    massKg - bikeKg + 0.5 * Draw.normal(random),
                    Draw.rectangular(random, 9, 12));
        }

        double airKgPerM3() {
            return densityKgPerM3(airK, pressurePa, humidity);
        }

        AssistedBike atReference(AssistedBike bike) {
            return bike.with(bikeKg + REFERENCE_RIDER_KG, REFERENCE_AIR_KG_PER_M3);
        }

        /// Source: ideal gases; saturation by Magnus's formula with the constants of Alduchov and Eskridge
        /// (1996).
        private static double densityKgPerM3(double kelvin, double pascal, double humidity) {
            double celsius = kelvin - 273.15;
            double vapourPa = humidity * 610.94 * StrictMath.exp(17.625 * celsius / (celsius + 243.04));
            return (pascal - vapourPa) / (287.05 * kelvin) + vapourPa / (461.5 * kelvin);
        }
    }

    @Override
    public SimulatedDay day(Seed seed, long index) {
        var random = seed.child(title()).stream(index);
        var drawn = AssistedBike.drawn(random, LEVELS, EFFORT_W);
        var elsewhere = seed.child(title() + ", where").stream(index);
        var setting = Setting.drawn(elsewhere, drawn.massKg());
        var bike = drawn.with(drawn.massKg(), setting.airKgPerM3());
        var today = Today.drawn(random);
        var weather = Weather.drawn(random);
        var habit = Habit.drawn(random);
        double scale = 1 + Draw.normal(random, 0, SCALE_SD);
        var runs = new ArrayList<Run>();
        var entries = new ArrayList<RecordingEntry>();
        var recordings = new TreeMap<String, byte[]>();
        for (String way : bothWays ? List.of("out", "back") : List.of("out")) {
            double head = weather.headWindMps(way.equals("back"), random);
            double[] speeds = new double[LEVELS];
            var ids = new ArrayList<String>();
            for (int k = 1; k <= LEVELS; k++) {
                speeds[k - 1] = (bike.settlesAtMps(k, today.effortW(), head) + today.otherMps()) * scale;
                String id = way + "-" + k;
                ids.add(id);
                runs.add(WrittenDay.run(
                        id,
                        "assistspeed",
                        Variant.of("level", String.valueOf(k)).with("drive", "pedal"),
                        way));
            }
            var ride = LevelRide.of(speeds, habit.wanderMps(), habit.memoryS(), random);
            var road = way.equals("back") ? ROAD.back(2000) : ROAD;
            var seen = ReceiverModel.fiveHertz().watch(ride, road, random);
            recordings.put(way + ".csv", new ReceiverLog(Instant.EPOCH, seen).delimited());
            entries.add(new RecordingEntry(way + ".csv", "receiver-1", ids, 0, ""));
        }
        var readings = List.of(WrittenDay.reading(
                runs.getFirst().id(), "cut-off", String.format(Locale.ROOT, "%.1f m/s", setting.cutOffMps())));
        boolean isBearingWritten = elsewhere.nextBoolean();
        var ridden = new WrittenDay.Ridden(
                conditions(setting, weather, isBearingWritten),
                List.of(new Rider("R1", OptionalDouble.of(setting.readRiderKg()))));
        var best = new BestOfLevels(
                bothWays ? 2 : 1,
                habit.wanderMps(),
                habit.memoryS(),
                weather.windMps(),
                weather.angle(),
                isBearingWritten);
        return new SimulatedDay(
                WrittenDay.of(runs, readings, List.of(receiver()), entries, ridden),
                threeLevels(),
                recordings,
                truths(bike, setting.atReference(bike), today, best));
    }

    private static Instrument receiver() {
        return new Instrument(
                "receiver-1",
                Instrument.Kind.RECEIVER,
                OptionalDouble.empty(),
                Optional.of(new Instrument.Calibration(1, SCALE_SD, Optional.empty())),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    private static Conditions conditions(Setting setting, Weather weather, boolean isBearingWritten) {
        return new Conditions(
                OptionalDouble.of(setting.airK()),
                OptionalDouble.of(setting.pressurePa()),
                OptionalDouble.of(setting.humidity()),
                OptionalDouble.of(weather.windMps()),
                isBearingWritten ? weather.fromPoint() : "",
                "dry",
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    private static Bike threeLevels() {
        var known = Bike.known("simulated");
        return new Bike(
                known.id(),
                "",
                "",
                OptionalInt.empty(),
                "",
                "pedal",
                "cadence",
                OptionalInt.of(LEVELS),
                "",
                known.price(),
                known.loan(),
                List.of());
    }

    /// The figures' truths, as measured and at reference.
    private List<Truth> truths(AssistedBike bike, AssistedBike reference, Today today, BestOfLevels best) {
        String[] roles = {"lowest", "middle", "highest"};
        var truths = new ArrayList<Truth>();
        for (int k = 1; k <= LEVELS; k++) {
            var variant = Variant.of("level", String.valueOf(k))
                    .with("drive", "pedal")
                    .with("levelRole", roles[k - 1]);
            truths.add(today.truth(bike, k, variant, best.asMeasuredSd(bike, k, today.effortW())));
            truths.add(today.truth(
                    reference,
                    k,
                    variant.with("at", "reference"),
                    best.atReferenceSd(bike, reference, k, today.effortW())));
        }
        return truths;
    }

    /// What the day is like beside any other: the rider's effort, and all else.
    private record Today(double effortW, double otherSdMps, double otherMps) {
        static Today drawn(RandomGenerator random) {
            double effortW = EFFORT_W + Draw.normal(random, 0, EFFORT_SD_W);
            double otherSdMps = DAY_SD_MPS * Crews.spread(random);
            return new Today(effortW, otherSdMps, otherSdMps * Draw.normal(random));
        }

        Truth truth(AssistedBike bike, int level, Variant variant, double bestSd) {
            double any = bike.settlesAtMps(level, EFFORT_W, 0);
            double perWatt = bike.settlesAtMps(level, EFFORT_W + 0.5, 0) - bike.settlesAtMps(level, EFFORT_W - 0.5, 0);
            double ofDays = StrictMath.hypot(otherSdMps, perWatt * EFFORT_SD_W);
            return new Truth(
                    "assistspeed.speed",
                    variant,
                    bike.settlesAtMps(level, effortW, 0) + otherMps,
                    any,
                    bestSd,
                    StrictMath.hypot(bestSd, ofDays));
        }
    }
}
