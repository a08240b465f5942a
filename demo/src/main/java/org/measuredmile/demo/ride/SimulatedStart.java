package org.measuredmile.demo.ride;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.SimulatedDay.Truth;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;

/// Days of six standing starts by throttle, three each way, by trace or by hand, from a stated population of
/// bikes, roads, winds and receivers: see [StartedBike#drawn], [#road] and [#receiver].
public record SimulatedStart(String method) implements SimulatedTrial {
    private static final int RUNS = 6;
    private static final int[] SPEEDS_MPH = {10, 15, 20};
    private static final String FILE = "starts.csv";
    private static final RoadLine ROAD = new RoadLine(45, 10, 90, 100);
    private static final double STANDS_S = 3;
    private static final double REFERENCE_RIDER_KG = 80;
    private static final double BRAKES_MPS2 = 3;

    @Override
    public String title() {
        return "standing start by " + method;
    }

    @Override
    public SimulatedDay day(Seed seed, long index) {
        var random = seed.child(title()).stream(index);
        var bike = StartedBike.drawn(random);
        var today = bike.changed(Draw.normal(random, 0, bike.dayScatter()));
        var road = road(random);
        var starts = new ArrayList<RiddenStart>();
        for (int i = 0; i < RUNS; i++) {
            var run = today.changed(Draw.normal(random, 0, today.runScatter()))
                    .buildingUpIn(Draw.normal(random, today.buildUpS(), 0.03));
            starts.add(RiddenStart.of(run, i % 2 == 0 ? road : road.back()));
        }
        var recordings = new TreeMap<String, byte[]>();
        var readings = new ArrayList<Reading>();
        if (method.equals("trace")) {
            var seen = receiver(random).watch(shown(ride(starts), random), ROAD, random);
            recordings.put(FILE, new ReceiverLog(Instant.EPOCH, seen).delimited());
        } else {
            readings.addAll(watched(starts, random));
        }
        return new SimulatedDay(testDay(today, readings), Bike.known("simulated"), recordings, truths(bike, today));
    }

    /// Level within 0.3 %, a wind along it of 0.7 m/s, each a standard deviation.
    private static RiddenStart.Road road(RandomGenerator random) {
        return new RiddenStart.Road(Draw.normal(random, 0, 0.003), Draw.normal(random, 0, 0.7));
    }

    /// 10 Hz, delay 0.1 to 0.3 s, noise 0.05 m/s white and 0.05 m/s correlated over 0.4 s; three receivers in ten
    /// unfiltered, four averaging over 0.2 or 0.4 s, the rest lagging by 0.15 s.
    static ReceiverModel receiver(RandomGenerator random) {
        double which = random.nextDouble();
        ReceiverModel.Filter filter = new ReceiverModel.Filter.Lag(0.15);
        if (which < 0.3) {
            filter = new ReceiverModel.Filter.None();
        } else if (which < 0.7) {
            filter = new ReceiverModel.Filter.MovingAverage(which < 0.5 ? 0.2 : 0.4);
        }
        return new ReceiverModel(10, ReceiverModel.Noise.OPEN_SKY, filter, Draw.rectangular(random, 0.1, 0.3), 0);
    }

    /// A receiver whose scale is right within 0.2 % (standard deviation), one for the day.
    static TrueRide shown(TrueRide ride, RandomGenerator random) {
        double scale = 1 + Draw.normal(random, 0, 0.002);
        return TrueRide.of(Arrays.stream(ride.speedMps()).map(v -> v * scale).toArray(), ride.stepS());
    }

    /// All starts one after the other, each from a stand and ended by a stop.
    public static TrueRide ride(List<RiddenStart> starts) {
        double[] all = new double[1 << 16];
        int size = 0;
        for (var start : starts) {
            double last = start.speedMps()[start.speedMps().length - 1];
            int stands = (int) (STANDS_S / RiddenStart.STEP_S);
            int brakes = (int) (last / BRAKES_MPS2 / RiddenStart.STEP_S) + 1;
            int needed = size + stands + start.speedMps().length + brakes + stands;
            all = needed > all.length ? Arrays.copyOf(all, 2 * needed) : all;
            size += stands;
            System.arraycopy(start.speedMps(), 0, all, size, start.speedMps().length);
            size += start.speedMps().length;
            for (int i = 0; i < brakes; i++) {
                all[size++] = Math.max(0, last - BRAKES_MPS2 * RiddenStart.STEP_S * i);
            }
        }
        return TrueRide.of(Arrays.copyOf(all, size + 1), RiddenStart.STEP_S);
    }

    /// By a watch: 0.1 s of its own a run, 0.05 s alike in all, a display late by 0.2 s and wrong by 1 %, each a
    /// standard deviation and the latter three one for the whole day.
    private static List<Reading> watched(List<RiddenStart> starts, RandomGenerator random) {
        double alikeS = Draw.normal(random, 0, 0.05) + Draw.normal(random, 0, 0.2);
        double scale = 1 + Draw.normal(random, 0, 0.01);
        var readings = new ArrayList<Reading>();
        for (int i = 0; i < starts.size(); i++) {
            for (int mph : SPEEDS_MPH) {
                double shownAt = starts.get(i).timeToS(Unit.MILE_PER_HOUR.toSi(mph) / scale);
                double seconds = Math.max(0.6, shownAt + alikeS + Draw.normal(random, 0, 0.1));
                if (!Double.isNaN(shownAt)) {
                    readings.add(
                            reading(id(i), "time-to-" + mph + "-mph", String.format(Locale.ROOT, "%.2f s", seconds)));
                }
            }
        }
        return readings;
    }

    private List<Truth> truths(StartedBike bike, StartedBike today) {
        var truths = new ArrayList<Truth>();
        boolean byTrace = method.equals("trace");
        var best = byTrace ? BestStart.byTrace(today) : BestStart.byWatch(today);
        var expected = new Expectation(
                bike,
                quantity -> best.sd(quantity, false),
                Points.of(today, bike.runScatter()),
                Points.of(bike, StrictMath.hypot(bike.runScatter(), bike.dayScatter())));
        var atReference = new Expectation(
                bike,
                quantity -> best.sd(quantity, true),
                Points.of(today.riddenBy(REFERENCE_RIDER_KG), bike.runScatter()),
                Points.of(bike.riddenBy(REFERENCE_RIDER_KG), StrictMath.hypot(bike.runScatter(), bike.dayScatter())));
        for (int mph : SPEEDS_MPH) {
            double mps = Unit.MILE_PER_HOUR.toSi(mph);
            var variant = Variant.of("drive", "throttle").with("to", mph + "-mph");
            var reference = variant.with("at", "reference");
            truths.add(expected.truth("time-to", variant, start -> start.timeToS(mps)));
            truths.add(atReference.truth("time-to", reference, start -> start.timeToS(mps)));
            if (byTrace) {
                truths.add(atReference.truth("distance-to", reference, start -> start.distanceToM(mps)));
                truths.add(expected.truth("distance-to", variant, start -> start.distanceToM(mps)));
                truths.add(expected.truth("ramp-time-to", variant, start -> start.rampTimeToS(mps)));
                truths.add(expected.truth("mean-power", variant, start -> start.meanPowerW(mps)));
            }
        }
        if (byTrace) {
            var drive = Variant.of("drive", "throttle");
            truths.add(expected.truth("peak-power", drive, RiddenStart::peakPowerW));
            truths.add(expected.truth("launch-force", drive, RiddenStart::launchN));
            truths.add(expected.truth("power-limit", drive, RiddenStart::limitW));
        }
        // A bike some of whose starts never have the speed has no mean time to it: nothing to hold an interval against.
        return truths.stream()
                .filter(truth -> Double.isFinite(truth.thisDay()) && Double.isFinite(truth.anyDay()))
                .toList();
    }

    private interface Best {
        double sd(ToDoubleFunction<RiddenStart> quantity);
    }

    /// What is to be expected on the day and on any day, and the best that the day's records can tell of it.
    private record Expectation(StartedBike bike, Best best, Points thisDay, Points anyDay) {
        Truth truth(String figure, Variant variant, ToDoubleFunction<RiddenStart> quantity) {
            double sdThisDay = best.sd(quantity);
            double daySd =
                    anyDay.sd(quantity) * bike.dayScatter() / StrictMath.hypot(bike.runScatter(), bike.dayScatter());
            return new Truth(
                    "standingstart." + figure,
                    variant,
                    thisDay.mean(quantity),
                    anyDay.mean(quantity),
                    sdThisDay,
                    StrictMath.hypot(sdThisDay, daySd));
        }
    }

    /// Starts on level road in still air at three points of a normal scatter of the thrust's logarithm, which
    /// give a mean exact to the fifth power of the scatter.
    private record Points(RiddenStart low, RiddenStart middle, RiddenStart high) {
        static Points of(StartedBike bike, double scatter) {
            double reach = Math.sqrt(3) * scatter;
            return new Points(
                    RiddenStart.of(bike.changed(-reach), RiddenStart.Road.LEVEL),
                    RiddenStart.of(bike, RiddenStart.Road.LEVEL),
                    RiddenStart.of(bike.changed(reach), RiddenStart.Road.LEVEL));
        }

        double mean(ToDoubleFunction<RiddenStart> quantity) {
            return (quantity.applyAsDouble(low) + 4 * quantity.applyAsDouble(middle) + quantity.applyAsDouble(high))
                    / 6;
        }

        double sd(ToDoubleFunction<RiddenStart> quantity) {
            double mean = mean(quantity);
            double a = quantity.applyAsDouble(low) - mean;
            double b = quantity.applyAsDouble(middle) - mean;
            double c = quantity.applyAsDouble(high) - mean;
            return Math.sqrt((a * a + 4 * b * b + c * c) / 6);
        }
    }

    private static String id(int index) {
        return "s-" + (index + 1);
    }

    private TestDay testDay(StartedBike bike, List<Reading> readings) {
        var runs = new ArrayList<Run>();
        var ids = new ArrayList<String>();
        var variant = Variant.of("drive", "throttle").with("to", "20-mph");
        for (int i = 0; i < RUNS; i++) {
            ids.add(id(i));
            runs.add(new Run(
                    id(i),
                    "standingstart",
                    variant,
                    "R1",
                    Optional.empty(),
                    "",
                    i % 2 == 0 ? "out" : "back",
                    Run.State.CONFIRMED,
                    "",
                    "",
                    Place.atLine("runs.csv", i + 2)));
        }
        var entries =
                method.equals("trace") ? List.of(new RecordingEntry(FILE, "", ids, 0, "")) : List.<RecordingEntry>of();
        var calm = new Conditions(
                OptionalDouble.of(293.15),
                OptionalDouble.of(100_000),
                OptionalDouble.of(0.5),
                OptionalDouble.of(1),
                "",
                "dry",
                OptionalDouble.of(1),
                OptionalDouble.empty());
        return new TestDay(
                "simulated",
                LocalDate.of(2031, 5, 14),
                ZoneOffset.UTC,
                "",
                "simulated",
                Configuration.UNKNOWN,
                List.of(),
                List.of(new Rider("R1", OptionalDouble.of(bike.riderKg()))),
                Optional.of(new PreRideCheck("M1", "T1", "08:40")),
                calm,
                List.of(),
                List.of(),
                List.of(),
                runs,
                readings,
                entries);
    }

    private static Reading reading(String run, String name, String value) {
        return new Reading(run, name, value, "", "", Optional.empty(), "T1", "", Place.NOWHERE);
    }
}
