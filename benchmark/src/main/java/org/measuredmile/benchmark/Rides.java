package org.measuredmile.benchmark;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.measuredmile.demo.ride.BrakedBike;
import org.measuredmile.demo.ride.BrakingSession;
import org.measuredmile.demo.ride.LevelRide;
import org.measuredmile.demo.ride.ReceiverLog;
import org.measuredmile.demo.ride.ReceiverModel;
import org.measuredmile.demo.ride.RoadLine;
import org.measuredmile.demo.ride.TrueRide;

/// Invented rides as a receiver on the bike recorded them: a session of hard stops, then assist levels one after the
/// other until the time is over. The same seed gives the same bytes.
final class Rides {
    static final int STOPS = 6;
    static final Instant START = Instant.parse("2031-05-14T09:00:00Z");

    private static final double[] LEVELS_MPS = {4.2, 5.1, 6.0, 6.8};
    private static final double NOMINAL_MPS = 8.94;
    private static final RoadLine ROAD = new RoadLine(45, 10, 90, 100);
    private static final long SEED = 20_310_514;

    private Rides() {}

    /// What a receiver saw of a ride of so many hours.
    static List<ReceiverModel.Epoch> epochs(double hours, double rateHz) {
        RandomGenerator random = random();
        var parts = new ArrayList<TrueRide>();
        parts.add(stops(random));
        double seconds = parts.getFirst().spanS();
        while (seconds < hours * 3600) {
            parts.add(LevelRide.of(LEVELS_MPS, 0.15, 10, random));
            seconds += parts.getLast().spanS();
        }
        TrueRide ride = joined(parts, hours * 3600);
        var filter = new ReceiverModel.Filter.Lag(0.1);
        return new ReceiverModel(rateHz, ReceiverModel.Noise.OPEN_SKY, filter, 0.2, 0).watch(ride, ROAD, random);
    }

    private static TrueRide stops(RandomGenerator random) {
        var plan = new BrakingSession.Plan(STOPS, NOMINAL_MPS, 0, 0, 1);
        return BrakingSession.ride(BrakedBike.drawn(random), plan, random).ride();
    }

    /// When the stops end, in seconds from the start.
    static List<Double> restsS() {
        TrueRide ride = stops(random());
        var rests = new ArrayList<Double>();
        for (int i = 1; i < ride.speedMps().length; i++) {
            if (ride.speedMps()[i] == 0 && ride.speedMps()[i - 1] > 0) {
                rests.add(i * ride.stepS());
            }
        }
        return rests;
    }

    private static RandomGenerator random() {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(SEED);
    }

    static ReceiverLog log(double hours, double rateHz) {
        return new ReceiverLog(START, epochs(hours, rateHz));
    }

    private static TrueRide joined(List<TrueRide> parts, double seconds) {
        double[] speeds = new double[(int) Math.round(seconds / TrueRide.FINE_STEP_S) + 1];
        int part = 0;
        double began = 0;
        for (int i = 0; i < speeds.length; i++) {
            double timeS = i * TrueRide.FINE_STEP_S;
            while (part + 1 < parts.size() && timeS - began > parts.get(part).spanS()) {
                began += parts.get(part++).spanS();
            }
            speeds[i] = parts.get(part).speedAtMps(timeS - began);
        }
        return TrueRide.of(speeds, TrueRide.FINE_STEP_S);
    }
}
