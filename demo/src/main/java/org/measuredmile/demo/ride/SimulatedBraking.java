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
    /// What riders lose on average between taking hold of the brakes and their bite.
    private static final double COASTING_MPS2 = -0.1;
    private static final double GRAVITY_MPS2 = 9.80665;
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
        Optional<StopInformation> information = Optional.empty();
        if (method.equals("trace")) {
            var receiver = receiver(random);
            information = Optional.of(information(today, receiver));
            var seen = receiver.watch(session.ride(), ROAD, random);
            recordings.put(FILE, new ReceiverLog(START, seen).delimited());
            if (withAccelerometer) {
                recordings.put(BESIDE, new AccelerometerLog(START).delimited(session.ride(), random));
            }
        }
        return new SimulatedDay(
                testDay(session), Bike.known("simulated"), recordings, truths(bike, today, information));
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

    private StopInformation information(BrakedBike today, ReceiverModel receiver) {
        return withAccelerometer
                ? StopInformation.byBoth(today, NOMINAL_MPS, RUNS, receiver)
                : StopInformation.byReceiver(today, NOMINAL_MPS, RUNS, receiver);
    }

    private List<Truth> truths(BrakedBike bike, BrakedBike today, Optional<StopInformation> information) {
        if (method.equals("tape")) {
            var variant = Variant.of("method", "tape").with("surface", "dry").with("nominal", "20-mph");
            var stops = new Stops(bike, today, false, BrakedStop::fromControlM);
            return List.of(stops.truth("braking.stopping-distance", variant, bestByTape(today)));
        }
        return List.of(
                traced("braking.braking-distance", new Stops(bike, today, true, BrakedStop::fromOnsetM), information),
                traced("braking.mean-deceleration", new Stops(bike, today, true, BrakedStop::meanMps2), information),
                traced("braking.mfdd", new Stops(bike, today, true, BrakedStop::meanDevelopedMps2), information));
    }

    private static Truth traced(String figure, Stops stops, Optional<StopInformation> information) {
        var variant = Variant.of("surface", "dry").with("nominal", "20-mph");
        return stops.truth(figure, variant, information.orElseThrow().sd(stops.quantity()));
    }

    /// The least standard deviation of the day's mean stop by tape, of an analyst who knows how runs scatter
    /// and how well mark, tape, display and road are known.
    private static double bestByTape(BrakedBike today) {
        var stops = new Stops(today, today, false, BrakedStop::fromControlM);
        double metres = stops.of(today);
        double step = 0.01;
        double perLogarithm = (stops.of(today.changed(step)) - stops.of(today.changed(-step))) / (2 * step);
        double readMps = StrictMath.hypot(0.05, Unit.MILE_PER_HOUR.toSi(0.1) / Math.sqrt(12));
        // Crews enter within 0.15 m/s of the nominal speed, which says a little beside the display.
        double entryMps = 1 / StrictMath.hypot(1 / readMps, 1 / 0.15);
        double[] ofARun = {
            perLogarithm * today.runScatter(),
            NOMINAL_MPS * 0.015,
            NOMINAL_MPS * 0.02 / 2,
            NOMINAL_MPS * 0.02,
            StrictMath.hypot(0.02, 0.01 / Math.sqrt(12)),
            2 * metres / NOMINAL_MPS * entryMps
        };
        double[] ofTheDay = {
            NOMINAL_MPS * 0.01, 2 * metres * 0.002, perLogarithm * GRAVITY_MPS2 * 0.003 / today.decelerationMps2()
        };
        return Math.sqrt(sumOfSquares(ofARun) / RUNS + sumOfSquares(ofTheDay));
    }

    private static double sumOfSquares(double[] parts) {
        double sum = 0;
        for (double part : parts) {
            sum += part * part;
        }
        return sum;
    }

    /// A bike's stops, always and today, as one quantity of them, on level road: at the nominal
    /// speed when the control moves, or at the onset of deceleration.
    private record Stops(
            BrakedBike bike, BrakedBike today, boolean isFromOnset, ToDoubleFunction<BrakedStop> quantity) {
        double of(BrakedBike one) {
            double lost = isFromOnset ? -COASTING_MPS2 * one.takeUpS() : 0;
            return quantity.applyAsDouble(
                    BrakedStop.of(one, new BrakedStop.Entry(NOMINAL_MPS + lost, COASTING_MPS2, 0)));
        }

        Truth truth(String figure, Variant variant, double bestSd) {
            double scatter = StrictMath.hypot(bike.runScatter(), bike.dayScatter());
            var onAnyDay = expected(bike, scatter);
            double daySd = onAnyDay.sd() * bike.dayScatter() / scatter;
            return new Truth(
                    figure,
                    variant,
                    expected(today, bike.runScatter()).mean(),
                    onAnyDay.mean(),
                    bestSd,
                    StrictMath.hypot(bestSd, daySd));
        }

        /// Over a normal scatter of the deceleration's logarithm: three points, exact to the fifth power of the
        /// scatter.
        private Expected expected(BrakedBike one, double scatter) {
            double reach = Math.sqrt(3) * scatter;
            double low = of(one.changed(-reach));
            double middle = of(one);
            double high = of(one.changed(reach));
            double mean = (low + 4 * middle + high) / 6;
            double variance = ((low - mean) * (low - mean) + (high - mean) * (high - mean)) / 6
                    + (middle - mean) * (middle - mean) * 4 / 6;
            return new Expected(mean, Math.sqrt(variance));
        }

        private record Expected(double mean, double sd) {}
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
