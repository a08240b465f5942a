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
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;

/// Days of three climbs by throttle and three pedalling, in turn, by a receiver of 1 Hz or by a watch.
///
/// Population: hills of 250 to 500 m and 4 to 8 %, their slope swelling by 15 %, surveyed to 0.1 m and 0.05 m; bikes of
/// 28 ± 4 kg that nobody weighed, riders of 65 to 100 kg written to 0.5 kg, climbing at 3.5 to 5.5 m/s by throttle
/// and a quarter faster pedalling; rolling 0.009 ± 0.003, drag area 0.60 ± 0.09 m²; the drive's force falls as the
/// speed to the power −1 ± 0.35. Times scatter by 1.3 % from run to run and the force by 2.5 % from day to day, a
/// crew's own differing from these as a standard deviation of 12 degrees of freedom would. A wind of 0.5 m/s along the
/// hill and across is written for the day; that of the hill departs from it as [HillWeather] has it.
public record SimulatedClimb(String method) implements SimulatedTrial {
    static final int EACH = 3;
    static final double RUN_SD = 0.013;
    static final double DAY_SD = 0.025;
    static final double SCALE_SD = 0.003;
    /// A run's own, and what all runs of a watch holder have alike.
    static final double WATCH_SD_S = 0.1;
    static final double WATCH_ALIKE_SD_S = 0.05;
    private static final String FILE = "hill.csv";
    private static final RoadLine ROAD = new RoadLine(45, 10, 63, 100);
    private static final List<String> DRIVES = List.of("throttle", "pedal");

    @Override
    public String title() {
        return "climb by " + method;
    }

    @Override
    public SimulatedDay day(Seed seed, long index) {
        var random = seed.child(title()).stream(index);
        var truth = ClimbTruth.drawn(random);
        var climbs = new ArrayList<RiddenClimb>();
        for (int i = 0; i < 2 * EACH; i++) {
            climbs.add(truth.ridden(i % 2, random));
        }
        var recordings = new TreeMap<String, byte[]>();
        var readings = new ArrayList<Reading>();
        var entries = new ArrayList<RecordingEntry>();
        boolean isTraced = method.equals("trace");
        if (isTraced) {
            recordings.put(FILE, recorded(climbs, truth.road(), random));
            entries.add(new RecordingEntry(FILE, "", ids(), 0, ""));
        } else {
            readings.addAll(watched(climbs, random));
        }
        var day = testDay(truth, random, readings, entries);
        return new SimulatedDay(day, Bike.known("simulated"), recordings, truth.truths(isTraced));
    }

    private static List<String> ids() {
        var ids = new ArrayList<String>();
        for (int i = 0; i < 2 * EACH; i++) {
            ids.add("c-" + (i + 1));
        }
        return ids;
    }

    /// Once a second; position within 2.5 m, speed 0.05 m/s white and 0.05 m/s correlated over half a second, its
    /// scale right within 0.3 %.
    private static byte[] recorded(List<RiddenClimb> climbs, RoadUp road, RandomGenerator random) {
        var ride = HillSession.of(climbs).ride();
        var noise = new ReceiverModel.Noise(0.05, 0.05, 0.5, 2.5);
        double delayS = Draw.rectangular(random, 0.1, 0.4);
        var receiver = new ReceiverModel(1, noise, new ReceiverModel.Filter.None(), delayS, 0);
        var seen = receiver.watch(ride, ROAD, random);
        double scale = 1 + Draw.normal(random, 0, SCALE_SD);
        var shown = HillSession.shown(seen, scale, ride, road::heightM);
        return new ReceiverLog(Instant.EPOCH, shown).delimited();
    }

    /// A watch in steps of 0.1 s: 0.10 s of its own a run, 0.05 s alike in all.
    private static List<Reading> watched(List<RiddenClimb> climbs, RandomGenerator random) {
        double alikeS = Draw.normal(random, 0, WATCH_ALIKE_SD_S);
        var readings = new ArrayList<Reading>();
        for (int i = 0; i < climbs.size(); i++) {
            double seconds = climbs.get(i).timeS() + alikeS + Draw.normal(random, 0, WATCH_SD_S);
            String written = String.format(Locale.ROOT, "%.1f s", seconds);
            readings.add(WrittenDay.reading(ids().get(i), "climb-time", written));
        }
        return readings;
    }

    private static TestDay testDay(
            ClimbTruth truth, RandomGenerator random, List<Reading> readings, List<RecordingEntry> entries) {
        var runs = new ArrayList<Run>();
        for (int i = 0; i < 2 * EACH; i++) {
            var variant = Variant.of("drive", DRIVES.get(i % 2));
            runs.add(new Run(
                    ids().get(i),
                    "climb",
                    variant,
                    "R1",
                    Optional.empty(),
                    "hill",
                    "out",
                    Run.State.CONFIRMED,
                    "",
                    "",
                    Place.atLine("runs.csv", i + 2L)));
        }
        double riderKg = truth.bikes().getFirst().riderKg() + Draw.normal(random, 0, 0.5);
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
                entries);
    }

    private static Conditions conditions(ClimbTruth truth) {
        var weather = truth.weather();
        // A head wind comes from where the road leads.
        double from =
                (63 + StrictMath.toDegrees(StrictMath.atan2(weather.acrossMps(), weather.writtenMps())) + 720) % 360;
        return new Conditions(
                OptionalDouble.of(weather.kelvin()),
                OptionalDouble.of(weather.pascal()),
                OptionalDouble.of(weather.humidity()),
                OptionalDouble.of(StrictMath.hypot(weather.writtenMps(), weather.acrossMps())),
                String.format(Locale.ROOT, "%.0f°", from),
                "dry",
                OptionalDouble.of(0.95),
                OptionalDouble.empty());
    }

    static Course course(RoadUp road, RandomGenerator random) {
        return new Course(
                "hill",
                "climb",
                Optional.of(new Course.Surveyed(road.lengthM() + Draw.normal(random, 0, 0.1), 0.1)),
                Optional.of(new Course.Surveyed(road.riseM() + Draw.normal(random, 0, 0.05), 0.05)),
                Optional.of(gate(HillSession.RUN_UP_M)),
                Optional.of(gate(HillSession.RUN_UP_M + road.lengthM())),
                "",
                Optional.empty(),
                "");
    }

    private static Course.Gate gate(double alongM) {
        var spot = ROAD.at(alongM, 0);
        return new Course.Gate(spot.latitudeDegrees(), spot.longitudeDegrees(), ROAD.bearingDegrees());
    }
}
