package org.measuredmile.demo.ride;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.RiddenCoasts.Outside;
import org.measuredmile.demo.ride.SimulatedDay.Truth;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;

/// Days of five pairs of coasts, by trace or by hand, from a stated population: [CoastingBike#drawn]; grade 0.1 %, a
/// wind of 1 m/s along the road that changes by 0.4 m/s from run to run, gusts of 0.4 m/s that last 8 s (standard
/// deviations); 2 to 10 samples a second.
public record SimulatedCoastDown(String method) implements SimulatedTrial {
    private static final int PAIRS = 5;
    private static final String FILE = "coasts.csv";
    private static final RoadLine ROAD = new RoadLine(45, 10, 90, 100);
    private static final double KMH = 3.6;
    private static final int[] SPEEDS_KMH = {15, 20, 25, 30};
    private static final Best BY_TRACE = new Best(0.093, 0.087, new double[] {0.063, 0.061, 0.063, 0.066});
    private static final Best BY_HAND = new Best(0.117, 0.117, new double[] {0.069, 0.066, 0.072, 0.079});
    /// A rider of 80 kg in air of 20 °C, 100 kPa and 50 % humidity.
    private static final double REFERENCE_KG = 80;
    private static final double REFERENCE_AIR = 1.1834;

    /// How far a pair's coefficients and forces scatter at best, relative standard deviations.
    ///
    /// They are what ten coasts leave open by likelihood, times √5, medians over this population, worked out
    /// apart from this code: the information matrix of rolling, area, grade, the day's wind, wheels and the
    /// speed's scale, from the equation of motion linear about each coast, with the covariance that gusts
    /// and changes of wind give the speeds, the receiver's noise or the watch's 0.15 s a split; grade, wind,
    /// wheels and scale known beforehand as they are drawn here, mass and air exactly, rolling and area not.
    private record Best(double rolling, double dragArea, double[] force) {}

    @Override
    public String title() {
        return "coast-down by " + method;
    }

    @Override
    public SimulatedDay day(Seed seed, long index) {
        var random = seed.child(title()).stream(index);
        var bike = CoastingBike.drawn(random);
        var today = bike.today(random);
        double airK = 288.15 + Draw.normal(random, 0, 6);
        double pascal = 100_000 + Draw.normal(random, 0, 1500);
        // Dry air by the gas law, less what half humidity takes off at these temperatures.
        double air = 0.996 * pascal / 287.05 / airK;
        var outside = new Outside(air, Draw.normal(random, 0, 0.001), Draw.normal(random, 0, 1));
        var coasts = new ArrayList<double[]>();
        for (int i = 0; i < 2 * PAIRS; i++) {
            double sign = i % 2 == 0 ? 1 : -1;
            double windMps = sign * (outside.windMps() + Draw.normal(random, 0, 0.4));
            double fromMps = Draw.rectangular(random, 35, 38) / KMH;
            coasts.add(RiddenCoasts.speeds(today, new Outside(air, sign * outside.slope(), windMps), fromMps, random));
        }
        var recordings = new TreeMap<String, byte[]>();
        var readings = new ArrayList<Reading>();
        if (method.equals("trace")) {
            double rateHz = random.nextBoolean() ? 2 : random.nextBoolean() ? 5 : 10;
            var receiver =
                    new ReceiverModel(rateHz, ReceiverModel.Noise.OPEN_SKY, new ReceiverModel.Filter.Lag(0.1), 0.2, 0);
            double scale = 1 + Draw.normal(random, 0, 0.002);
            recordings.put(
                    FILE,
                    new ReceiverLog(Instant.EPOCH, receiver.watch(RiddenCoasts.ride(coasts, scale), ROAD, random))
                            .delimited());
        } else {
            readings.addAll(watched(coasts, random));
        }
        for (int i = 1; i <= 3; i++) {
            String kg = String.format(Locale.ROOT, "%.2f kg", today.bikeKg() + Draw.normal(random, 0, 0.03));
            readings.add(WrittenDay.reading("w-" + i, "mass", kg));
        }
        return new SimulatedDay(
                testDay(today, readings, airK, pascal), Bike.known("simulated"), recordings, truths(bike, today, air));
    }

    /// By a watch good to 0.15 s a split, and a display wrong by 1 % (standard deviations).
    static List<Reading> watched(List<double[]> coasts, RandomGenerator random) {
        double scale = 1 + Draw.normal(random, 0, 0.01);
        var readings = new ArrayList<Reading>();
        for (int i = 0; i < coasts.size(); i++) {
            double at30 = RiddenCoasts.timeS(coasts.get(i), 30 / KMH / scale);
            double at20 = RiddenCoasts.timeS(coasts.get(i), 20 / KMH / scale);
            double at10 = RiddenCoasts.timeS(coasts.get(i), 10 / KMH / scale);
            readings.add(read(i, "time-from-30-to-20-kmh", at20 - at30 + Draw.normal(random, 0, 0.15)));
            readings.add(read(i, "time-from-20-to-10-kmh", at10 - at20 + Draw.normal(random, 0, 0.15)));
        }
        return readings;
    }

    private static Reading read(int index, String name, double seconds) {
        return WrittenDay.reading(id(index), name, String.format(Locale.ROOT, "%.2f s", seconds));
    }

    private List<Truth> truths(CoastingBike bike, CoastingBike today, double air) {
        var truths = new ArrayList<Truth>();
        var best = method.equals("trace") ? BY_TRACE : BY_HAND;
        truths.add(truth(
                "rolling-coefficient", Variant.NONE, today.rolling(), bike.rolling(), best.rolling(), bike.tyreDay()));
        truths.add(truth(
                "drag-area", Variant.NONE, today.dragAreaM2(), bike.dragAreaM2(), best.dragArea(), bike.postureDay()));
        for (int i = 0; i < SPEEDS_KMH.length; i++) {
            int kmh = SPEEDS_KMH[i];
            double v = kmh / KMH;
            double share = rollingShare(bike, v, air);
            double day = StrictMath.hypot(share * bike.tyreDay(), (1 - share) * bike.postureDay());
            truths.add(truth(
                    "force-at-" + kmh + "-kmh",
                    Variant.NONE,
                    today.resistanceN(v, air),
                    bike.resistanceN(v, air),
                    best.force()[i],
                    day));
            truths.add(truth(
                    "force-at-" + kmh + "-kmh",
                    Variant.of("at", "reference"),
                    withReference(today).resistanceN(v, REFERENCE_AIR),
                    withReference(bike).resistanceN(v, REFERENCE_AIR),
                    best.force()[i],
                    day));
        }
        return truths;
    }

    private static double rollingShare(CoastingBike bike, double v, double air) {
        return bike.rolling() * bike.massKg() * CoastingBike.GRAVITY / bike.resistanceN(v, air);
    }

    private static CoastingBike withReference(CoastingBike bike) {
        return new CoastingBike(
                bike.rolling(),
                bike.dragAreaM2(),
                REFERENCE_KG,
                bike.bikeKg(),
                bike.wheelsKg(),
                bike.tyreDay(),
                bike.postureDay());
    }

    private static Truth truth(
            String figure, Variant variant, double thisDay, double anyDay, double pairSd, double daySd) {
        double runs = pairSd * anyDay / Math.sqrt(PAIRS);
        return new Truth("coastdown." + figure, variant, thisDay, anyDay, runs, StrictMath.hypot(runs, daySd * anyDay));
    }

    private static String id(int index) {
        return String.format(Locale.ROOT, "c-%02d", index + 1);
    }

    private TestDay testDay(CoastingBike bike, List<Reading> readings, double airK, double pascal) {
        var runs = new ArrayList<Run>();
        var ids = new ArrayList<String>();
        for (int i = 1; i <= 3; i++) {
            runs.add(WrittenDay.run("w-" + i, "weighin", Variant.of("battery", "in"), ""));
        }
        for (int i = 0; i < 2 * PAIRS; i++) {
            ids.add(id(i));
            runs.add(WrittenDay.run(id(i), "coastdown", Variant.NONE, i % 2 == 0 ? "out" : "back"));
        }
        var entries =
                method.equals("trace") ? List.of(new RecordingEntry(FILE, "", ids, 0, "")) : List.<RecordingEntry>of();
        var conditions = new Conditions(
                OptionalDouble.of(airK),
                OptionalDouble.of(pascal),
                OptionalDouble.of(0.5),
                OptionalDouble.empty(),
                "",
                "dry",
                OptionalDouble.empty(),
                OptionalDouble.empty());
        var day = WrittenDay.of(runs, readings, List.of(), entries, conditions);
        return new TestDay(
                day.id(),
                day.date(),
                day.timeZone(),
                day.place(),
                day.bike(),
                Configuration.UNKNOWN,
                day.crew(),
                List.of(new Rider("R1", OptionalDouble.of(bike.riderKg()))),
                day.preRideCheck(),
                day.conditions(),
                day.instruments(),
                day.courses(),
                day.notRidden(),
                day.runs(),
                day.readings(),
                day.recordings());
    }
}
