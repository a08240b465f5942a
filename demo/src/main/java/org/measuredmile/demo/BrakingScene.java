package org.measuredmile.demo;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.demo.ride.BrakedBike;
import org.measuredmile.demo.ride.BrakingSession;
import org.measuredmile.demo.ride.ReceiverLog;
import org.measuredmile.demo.ride.ReceiverModel;
import org.measuredmile.demo.ride.TrueRide;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.day.Variant;

/// Hard stops of an invented bike on the promenade: read by display and tape, and recorded where the day has a
/// receiver.
///
/// Unit: scatter as standard deviations of the logarithm of the deceleration.
final class BrakingScene {
    private static final double NOMINAL_MPS = Unit.MILE_PER_HOUR.toSi(20);
    private static final double RUN_SCATTER = 0.04;
    private static final double DAY_SCATTER = 0.03;
    private static final double TESTER_SCATTER = 0.015;
    private static final double RISE_SHARE = 0.05;
    private static final double BETWEEN_RIDES_S = 180;

    private final DayScript day;
    private final Twist twist;

    private BrakingScene(DayScript day, Twist twist) {
        this.day = day;
        this.twist = twist;
    }

    static void play(DayScript day, Twist twist, int runs) {
        new BrakingScene(day, twist).play(runs);
    }

    private void play(int count) {
        var random = day.random();
        BikeTruth truth = day.member().truth();
        double tester = TESTER_SCATTER * (day.rider().hashCode() % 3 - 1);
        var today = new BrakedBike(
                        truth.decelerationMps2(),
                        RISE_SHARE,
                        truth.takeUpS(),
                        truth.buildUpS(),
                        RUN_SCATTER,
                        DAY_SCATTER)
                .changed(tester + DAY_SCATTER * random.nextGaussian());
        var plan = new BrakingSession.Plan(
                count,
                NOMINAL_MPS,
                0.001 * random.nextGaussian(),
                0.01 * random.nextGaussian(),
                1 + 0.002 * random.nextGaussian());
        var session = BrakingSession.ride(today, plan, random);
        List<Double> starts = setOffs(session.ride());
        var begun = day.now();
        List<String> runs = new ArrayList<>();
        double passedS = 0;
        for (int i = 0; i < count; i++) {
            day.pass(starts.get(i) - passedS);
            passedS = starts.get(i);
            runs.add(write(session.stops().get(i), i));
        }
        day.pass(session.ride().spanS() - passedS + BETWEEN_RIDES_S);
        record(new Watched(session.ride(), begun), runs);
    }

    private String write(BrakingSession.Ridden ridden, int index) {
        boolean byTrace = twist == Twist.ONE_HERTZ;
        var variant = Variant.of("method", byTrace ? "trace" : "tape")
                .with("surface", "dry")
                .with("nominal", "20-mph");
        var line = DayScript.Line.confirmed("braking", variant).on(Town.PROMENADE_ID, "out");
        if (twist == Twist.PROPOSED) {
            line = line.proposed();
        }
        if (twist == Twist.RUN_VOID && index == 1) {
            line = line.voided("traffic");
        }
        String run = day.run(line);
        if (!byTrace) {
            String display = twist.isRecorded() ? Town.FAST_RECEIVER : Town.HANDLEBAR;
            day.reading(run, "entry-speed", ridden.entryReading(), display);
            day.reading(run, "stopping-distance", tape(ridden.tapeReading()), Town.TAPE);
        }
        return run;
    }

    /// T2 reads the side of the tape that has feet and inches.
    private String tape(String metres) {
        if (!day.rider().equals("T2")) {
            return metres;
        }
        double halfInches = Unit.INCH.fromSi(Double.parseDouble(metres.replace(" m", ""))) * 2;
        long whole = Math.round(halfInches);
        String inches = whole % 2 == 0 ? Long.toString(whole % 24 / 2) : whole % 24 / 2 + ".5";
        return whole / 24 + " ft " + inches + " in";
    }

    private record Watched(TrueRide ride, java.time.Instant start) {}

    private void record(Watched watched, List<String> runs) {
        switch (twist) {
            case TYPED_ONLY -> {
                // Nothing was switched on that day.
            }
            case RECORDING_LOST ->
                day.lostRecording("stops.csv", Town.FAST_RECEIVER, runs, "card could not be read; the file is lost");
            case ONE_HERTZ ->
                day.recording(
                        "handlebar.gpx", log(ReceiverModel.oneHertz(), watched).gpx(), Town.HANDLEBAR, runs);
            case NONE, NO_WIND, PROPOSED, RUN_VOID, FILMED -> {
                ReceiverLog log = log(ReceiverModel.tenHertz().droppingOut(0.2), watched);
                switch (Math.floorMod(day.member().bike().id().hashCode(), 3)) {
                    case 0 -> day.recording("stops.nmea", log.nmea(), Town.FAST_RECEIVER, runs);
                    case 1 -> day.recording("stops.gpx", log.gpx(), Town.FAST_RECEIVER, runs);
                    default -> day.recording("stops.csv", log.delimited(), Town.FAST_RECEIVER, runs);
                }
            }
        }
    }

    private ReceiverLog log(ReceiverModel receiver, Watched watched) {
        return new ReceiverLog(watched.start(), receiver.watch(watched.ride(), Town.PROMENADE, day.random()));
    }

    /// The times at which the bike sets off from rest.
    static List<Double> setOffs(TrueRide ride) {
        List<Double> times = new ArrayList<>();
        double[] speeds = ride.speedMps();
        for (int i = 1; i < speeds.length; i++) {
            if (speeds[i] > 0 && speeds[i - 1] <= 0) {
                times.add(i * ride.stepS());
            }
        }
        return times;
    }
}
