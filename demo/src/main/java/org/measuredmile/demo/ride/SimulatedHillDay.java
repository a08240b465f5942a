package org.measuredmile.demo.ride;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.Course;
import org.measuredmile.recording.day.CourseHeights;
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;

/// Whole days around a hill: three weighings, five pairs of coasts by a watch, six standing starts by a receiver of
/// 10 Hz, and three climbs by throttle by a watch, all with the same bike and rider in the same weather.
///
/// Population: bikes of [StartedBike#drawn], whose power on the hill is that of the day's starts, times scattering by
/// 1.3 % from run to run; hills of 250 to 500 m and 5 to 9 %, half of them levelled every 50 m to 0.05 m; a wind of
/// 0.5 m/s either way is written, from which that of hill and road depart each by themselves as [HillWeather] has
/// it; riders written to 0.5 kg; the speeds at the gates read to 0.1 m/s.
public record SimulatedHillDay() implements SimulatedTrial {
    private static final int STARTS = 6;
    private static final int PAIRS = 5;
    private static final String FILE = "starts.csv";
    private static final RoadLine ROAD = new RoadLine(45, 10, 90, 100);
    static final double HILL_BEARING = 63;
    private static final double KMH = 3.6;
    private static final double LEVELLED_M = 50;
    private static final double LEVELLED_SD_M = 0.05;

    @Override
    public String title() {
        return "hill day with weigh-in, coast-down and starts";
    }

    @Override
    public SimulatedDay day(Seed seed, long index) {
        var random = seed.child(title()).stream(index);
        var truth = HillDayTruth.drawn(random);
        var readings = new ArrayList<Reading>();
        var runs = new ArrayList<Run>();
        weigh(truth, runs, readings, random);
        coast(truth, runs, readings, random);
        var recordings = new TreeMap<String, byte[]>();
        recordings.put(FILE, starts(truth, runs, random));
        climb(truth, runs, readings, random);
        return new SimulatedDay(
                testDay(truth, runs, readings, random), Bike.known("simulated"), recordings, truth.truths());
    }

    private static void weigh(HillDayTruth truth, List<Run> runs, List<Reading> readings, RandomGenerator random) {
        for (int i = 1; i <= 3; i++) {
            runs.add(WrittenDay.run("w-" + i, "weighin", Variant.of("battery", "in"), ""));
            String kg = String.format(Locale.ROOT, "%.2f kg", truth.bike().bikeKg() + Draw.normal(random, 0, 0.03));
            readings.add(WrittenDay.reading("w-" + i, "mass", kg));
        }
    }

    private static void coast(HillDayTruth truth, List<Run> runs, List<Reading> readings, RandomGenerator random) {
        double slope = Draw.normal(random, 0, 0.001);
        double windMps = truth.roadMps();
        var coasts = new ArrayList<double[]>();
        for (int i = 0; i < 2 * PAIRS; i++) {
            double sign = i % 2 == 0 ? 1 : -1;
            var outside = new RiddenCoasts.Outside(
                    HillDayTruth.AIR_KG_PER_M3, sign * slope, sign * (windMps + Draw.normal(random, 0, 0.4)));
            double fromMps = Draw.rectangular(random, 35, 38) / KMH;
            coasts.add(RiddenCoasts.speeds(truth.coasting(), outside, fromMps, random));
            String id = String.format(Locale.ROOT, "c-%02d", i + 1);
            runs.add(WrittenDay.run(id, "coastdown", Variant.NONE, i % 2 == 0 ? "out" : "back"));
        }
        readings.addAll(SimulatedCoastDown.watched(coasts, random));
    }

    private static byte[] starts(HillDayTruth truth, List<Run> runs, RandomGenerator random) {
        var road = new RiddenStart.Road(Draw.normal(random, 0, 0.003), truth.roadMps());
        var starts = new ArrayList<RiddenStart>();
        var variant = Variant.of("drive", "throttle").with("to", "20-mph");
        for (int i = 0; i < STARTS; i++) {
            var run = truth.today()
                    .changed(Draw.normal(random, 0, truth.bike().runScatter()))
                    .buildingUpIn(Draw.normal(random, truth.bike().buildUpS(), 0.03));
            starts.add(RiddenStart.of(run, i % 2 == 0 ? road : road.back()));
            runs.add(WrittenDay.run("s-" + (i + 1), "standingstart", variant, i % 2 == 0 ? "out" : "back"));
        }
        var ride = SimulatedStart.shown(SimulatedStart.ride(starts), random);
        var seen = SimulatedStart.receiver(random).watch(ride, ROAD, random);
        return new ReceiverLog(Instant.EPOCH, seen).delimited();
    }

    private static void climb(HillDayTruth truth, List<Run> runs, List<Reading> readings, RandomGenerator random) {
        double alikeS = Draw.normal(random, 0, SimulatedClimb.WATCH_ALIKE_SD_S);
        for (int i = 1; i <= HillDayTruth.CLIMBS; i++) {
            var climb = truth.ridden(random);
            String id = "h-" + i;
            runs.add(new Run(
                    id,
                    "climb",
                    Variant.of("drive", "throttle"),
                    "R1",
                    Optional.empty(),
                    "hill",
                    "out",
                    Run.State.CONFIRMED,
                    "",
                    "",
                    Place.NOWHERE));
            double seconds = climb.timeS() + alikeS + Draw.normal(random, 0, SimulatedClimb.WATCH_SD_S);
            double last = climb.speedMps()[climb.speedMps().length - 1];
            readings.add(WrittenDay.reading(id, "climb-time", String.format(Locale.ROOT, "%.1f s", seconds)));
            readings.add(WrittenDay.reading(id, "climb-entry-speed", read(climb.speedMps()[0], random)));
            readings.add(WrittenDay.reading(id, "climb-exit-speed", read(last, random)));
        }
    }

    private static String read(double mps, RandomGenerator random) {
        return String.format(Locale.ROOT, "%.1f m/s", mps + Draw.normal(random, 0, 0.05));
    }

    private static TestDay testDay(HillDayTruth truth, List<Run> runs, List<Reading> readings, RandomGenerator random) {
        var ids = runs.stream()
                .filter(run -> run.trial().equals("standingstart"))
                .map(Run::id)
                .toList();
        double riderKg = truth.bike().riderKg() + Draw.normal(random, 0, 0.5);
        return new TestDay(
                "simulated",
                LocalDate.of(2031, 5, 14),
                ZoneOffset.UTC,
                "",
                "simulated",
                Configuration.UNKNOWN,
                List.of(),
                List.of(new Rider("R1", OptionalDouble.of(riderKg))),
                Optional.of(new PreRideCheck("M1", "T1", "08:40")),
                conditions(truth),
                List.of(),
                List.of(course(truth.road(), random)),
                List.of(),
                runs,
                readings,
                List.of(new RecordingEntry(FILE, "", ids, 0, "")));
    }

    /// The surveyed hill; half the crews levelled its profile too, every 50 m to 0.05 m.
    private static Course course(RoadUp road, RandomGenerator random) {
        var course = SimulatedClimb.course(road, random);
        return random.nextBoolean() ? course.withHeights(levelled(road, random)) : course;
    }

    private static CourseHeights levelled(RoadUp road, RandomGenerator random) {
        int cells = (int) Math.ceil(road.lengthM() / LEVELLED_M);
        var points = new ArrayList<CourseHeights.Point>();
        for (int i = 0; i <= cells; i++) {
            double alongM = road.lengthM() * i / cells;
            double errorM = i == 0 ? 0 : Draw.normal(random, 0, LEVELLED_SD_M);
            points.add(new CourseHeights.Point(alongM, road.heightM(alongM) + errorM, i == 0 ? 0 : LEVELLED_SD_M));
        }
        return new CourseHeights(points);
    }

    private static Conditions conditions(HillDayTruth truth) {
        double north = truth.northMps();
        double east = truth.eastMps();
        double from = (StrictMath.toDegrees(StrictMath.atan2(east, north)) + 360) % 360;
        return new Conditions(
                OptionalDouble.of(293.15),
                OptionalDouble.of(100_000),
                OptionalDouble.of(0.5),
                OptionalDouble.of(StrictMath.hypot(north, east)),
                String.format(Locale.ROOT, "%.0f°", from),
                "dry",
                OptionalDouble.of(0.95),
                OptionalDouble.empty());
    }
}
