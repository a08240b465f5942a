package org.measuredmile.demo.ride;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
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
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;

/// Braking days of six stops from 20 mph in the dry, by tape or by trace, with an accelerometer beside it or without,
/// from a stated population of bikes,
/// crews and receivers: see [BrakedBike#drawn], [#receiver] and [#plan].
public record SimulatedBraking(String method, boolean withAccelerometer) implements SimulatedTrial {
    private static final int RUNS = 6;
    private static final double NOMINAL_MPS = Unit.MILE_PER_HOUR.toSi(20);
    private static final String FILE = "stops.csv";
    private static final Instant START = Instant.EPOCH.plusSeconds(3600);
    private static final String BESIDE = "accelerations.csv";
    private static final RoadLine ROAD = new RoadLine(45, 10, 90, 100);

    /// Without an accelerometer.
    public SimulatedBraking(String method) {
        this(method, false);
    }

    @Override
    public String title() {
        return "braking by " + method + (withAccelerometer ? " and accelerometer" : "");
    }

    @Override
    public SimulatedDay day(Seed seed, long index) {
        var random = seed.child(title()).stream(index);
        var bike = BrakedBike.drawn(random);
        var today = bike.changed(Draw.normal(random, 0, bike.dayScatter()));
        var session = BrakingSession.ride(today, plan(random), random);
        var recordings = new TreeMap<String, byte[]>();
        if (method.equals("trace")) {
            var seen = receiver(random).watch(session.ride(), ROAD, random);
            recordings.put(FILE, new ReceiverLog(START, seen).delimited());
            if (withAccelerometer) {
                recordings.put(BESIDE, new AccelerometerLog(START).delimited(session.ride(), random));
            }
        }
        return new SimulatedDay(testDay(session), Bike.known("simulated"), recordings, truths(bike, today));
    }

    /// Road level within 0.3 %, mark within 0.01 s, display true within 0.2 %, each a standard deviation and one
    /// for the whole day.
    private static BrakingSession.Plan plan(RandomGenerator random) {
        return new BrakingSession.Plan(
                RUNS,
                NOMINAL_MPS,
                Draw.normal(random, 0, 0.003),
                Draw.normal(random, 0, 0.01),
                1 + Draw.normal(random, 0, 0.002));
    }

    /// 10 Hz, delay 0.1 to 0.3 s, noise 0.07 m/s white and 0.05 m/s correlated over 0.4 s; one receiver in five
    /// unfiltered, half averaging over 0.2 or 0.4 s, the rest lagging by 0.1 s.
    private static ReceiverModel receiver(RandomGenerator random) {
        double which = random.nextDouble();
        ReceiverModel.Filter filter = new ReceiverModel.Filter.Lag(0.1);
        if (which < 0.2) {
            filter = new ReceiverModel.Filter.None();
        } else if (which < 0.7) {
            filter = new ReceiverModel.Filter.MovingAverage(which < 0.45 ? 0.2 : 0.4);
        }
        return new ReceiverModel(10, ReceiverModel.Noise.STREET, filter, Draw.rectangular(random, 0.1, 0.3), 0);
    }

    private List<Truth> truths(BrakedBike bike, BrakedBike today) {
        if (method.equals("tape")) {
            var variant = Variant.of("method", "tape").with("surface", "dry").with("nominal", "20-mph");
            return List.of(truth("braking.stopping-distance", variant, bike, today, BrakedStop::fromControlM));
        }
        var variant = Variant.of("surface", "dry").with("nominal", "20-mph");
        return List.of(
                truth("braking.braking-distance", variant, bike, today, BrakedStop::fromOnsetM),
                truth("braking.mean-deceleration", variant, bike, today, BrakedStop::meanMps2),
                truth("braking.mfdd", variant, bike, today, BrakedStop::meanDevelopedMps2));
    }

    private static Truth truth(
            String figure, Variant variant, BrakedBike bike, BrakedBike today, ToDoubleFunction<BrakedStop> quantity) {
        double anyScatter = Math.sqrt(bike.runScatter() * bike.runScatter() + bike.dayScatter() * bike.dayScatter());
        var onThisDay = Expected.over(today, bike.runScatter(), quantity);
        var onAnyDay = Expected.over(bike, anyScatter, quantity);
        double runSd = onThisDay.sd();
        double daySd = onAnyDay.sd() * bike.dayScatter() / anyScatter;
        double sdThisDay = runSd / Math.sqrt(RUNS);
        return new Truth(
                figure,
                variant,
                onThisDay.mean(),
                onAnyDay.mean(),
                sdThisDay,
                Math.sqrt(sdThisDay * sdThisDay + daySd * daySd));
    }

    /// Mean and standard deviation of a stop's quantity over a normal scatter of the deceleration's logarithm, from
    /// exactly the nominal speed on level road: three points, exact to the fifth power of the scatter.
    private record Expected(double mean, double sd) {
        static Expected over(BrakedBike bike, double scatter, ToDoubleFunction<BrakedStop> quantity) {
            var entry = new BrakedStop.Entry(NOMINAL_MPS, 0, 0);
            double reach = Math.sqrt(3) * scatter;
            double low = quantity.applyAsDouble(BrakedStop.of(bike.changed(-reach), entry));
            double middle = quantity.applyAsDouble(BrakedStop.of(bike, entry));
            double high = quantity.applyAsDouble(BrakedStop.of(bike.changed(reach), entry));
            double mean = (low + 4 * middle + high) / 6;
            double variance = ((low - mean) * (low - mean) + (high - mean) * (high - mean)) / 6
                    + (middle - mean) * (middle - mean) * 4 / 6;
            return new Expected(mean, Math.sqrt(variance));
        }
    }

    private TestDay testDay(BrakingSession session) {
        var runs = new ArrayList<Run>();
        var readings = new ArrayList<Reading>();
        var ids = new ArrayList<String>();
        var variant = Variant.of("method", method).with("surface", "dry").with("nominal", "20-mph");
        for (var ridden : session.stops()) {
            String id = "b-" + (runs.size() + 1);
            ids.add(id);
            runs.add(new Run(
                    id,
                    "braking",
                    variant,
                    "R1",
                    Optional.empty(),
                    "",
                    "",
                    Run.State.CONFIRMED,
                    "",
                    "",
                    Place.atLine("runs.csv", runs.size() + 2)));
            if (method.equals("tape")) {
                readings.add(reading(id, "entry-speed", ridden.entryReading()));
                readings.add(reading(id, "stopping-distance", ridden.tapeReading()));
            }
        }
        var entries = new ArrayList<RecordingEntry>();
        if (method.equals("trace")) {
            entries.add(new RecordingEntry(FILE, "", ids, 0, ""));
        }
        if (withAccelerometer) {
            entries.add(new RecordingEntry(BESIDE, "", List.of(), 0, ""));
        }
        var calm = new Conditions(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(1),
                "",
                "dry",
                OptionalDouble.empty(),
                OptionalDouble.empty());
        return new TestDay(
                "simulated",
                LocalDate.of(2031, 5, 14),
                ZoneOffset.UTC,
                "",
                "simulated",
                Configuration.UNKNOWN,
                List.of(),
                List.of(),
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
