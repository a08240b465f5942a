package org.measuredmile.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.CoastingBike;
import org.measuredmile.demo.ride.ReceiverLog;
import org.measuredmile.demo.ride.ReceiverModel;
import org.measuredmile.demo.ride.RiddenCoasts;
import org.measuredmile.demo.ride.RiddenCoasts.Outside;
import org.measuredmile.recording.day.Variant;

/// Coasts of an invented bike on the causeway in the calm of the morning, out and back in turn: five pairs of a
/// commuter, three of the others, one file a coast.
///
/// Unit: scatter as relative standard deviations; wind in m/s.
final class CoastScene {
    /// What every invented bike rolls on, and what it and its rider put against the air, m².
    static final double ROLLING = 0.0085;

    static final double DRAG_AREA_M2 = 0.58;

    private static final double TYRE_DAY = 0.05;
    private static final double POSTURE_DAY = 0.04;
    private static final double WHEELS_KG = 3;
    private static final double FROM_MPS = 34 / 3.6;
    private static final double WIND_CHANGES_MPS = 0.3;
    private static final double BACK_TO_THE_POST_S = 60;
    private static final double HAND_S = 0.15;

    private final DayScript day;
    private final Twist twist;
    private final RandomGenerator random;

    private CoastScene(DayScript day, Twist twist, RandomGenerator random) {
        this.day = day;
        this.twist = twist;
        this.random = random;
    }

    /// Who rides, in what air.
    record Morning(double riderKg, double airKgPerM3) {}

    static void play(DayScript day, Twist twist, Morning morning, RandomGenerator random) {
        String category = day.member().bike().category();
        if (category.equals("folding")) {
            day.notRidden("coastdown", Variant.NONE, "its small wheels are not coasted at 34 km/h");
            return;
        }
        if (twist == Twist.RECORDING_LOST) {
            day.notRidden("coastdown", Variant.NONE, "the breeze was up before the crew was");
            return;
        }
        new CoastScene(day, twist, random).ride(category.equals("commuter") ? 5 : 3, morning);
    }

    private void ride(int pairs, Morning morning) {
        var bike = new CoastingBike(
                ROLLING * (1 + TYRE_DAY * random.nextGaussian()),
                DRAG_AREA_M2 * (1 + POSTURE_DAY * random.nextGaussian()),
                morning.riderKg(),
                day.member().truth().massKg(),
                WHEELS_KG,
                TYRE_DAY,
                POSTURE_DAY);
        double windMps = 0.6 * random.nextGaussian();
        double slope = 0.0006 * random.nextGaussian();
        for (int i = 0; i < 2 * pairs; i++) {
            double sign = i % 2 == 0 ? 1 : -1;
            double headWindMps = sign * (windMps + WIND_CHANGES_MPS * random.nextGaussian());
            double fromMps = FROM_MPS + 0.2 * random.nextGaussian();
            double[] speeds = RiddenCoasts.speeds(
                    bike, new Outside(morning.airKgPerM3(), sign * slope, headWindMps), fromMps, random);
            write(i, sign > 0 ? "out" : "back", speeds);
        }
    }

    private void write(int index, String way, double[] speeds) {
        var line = DayScript.Line.confirmed("coastdown", Variant.NONE).on(Town.CAUSEWAY_ID, way);
        if (twist == Twist.RUN_VOID && index == 2) {
            line = line.voided("pedal");
        } else if (twist == Twist.PROPOSED) {
            line = line.proposed();
        }
        var begun = day.now();
        String run = day.run(line);
        var ride = RiddenCoasts.ride(List.of(speeds), 1);
        day.pass(ride.spanS() + BACK_TO_THE_POST_S);
        if (twist == Twist.TYPED_ONLY) {
            timed(run, speeds);
            return;
        }
        var road = way.equals("out") ? Town.CAUSEWAY : Town.CAUSEWAY.back(Town.CAUSEWAY_M);
        boolean isSlow = twist == Twist.ONE_HERTZ;
        var receiver = isSlow ? ReceiverModel.oneHertz() : ReceiverModel.fiveHertz();
        var log = new ReceiverLog(begun, receiver.watch(ride, road, random));
        String file = String.format(Locale.ROOT, "coast-%02d.csv", index + 1);
        day.recording(file, log.delimited(), isSlow ? Town.HANDLEBAR : Town.SLOW_RECEIVER, List.of(run));
    }

    private void timed(String run, double[] speeds) {
        var splits = new ArrayList<Double>();
        for (int kmh : new int[] {30, 20, 10}) {
            splits.add(RiddenCoasts.timeS(speeds, kmh / 3.6) + HAND_S / Math.sqrt(2) * random.nextGaussian());
        }
        read(run, "time-from-30-to-20-kmh", splits.get(1) - splits.get(0));
        read(run, "time-from-20-to-10-kmh", splits.get(2) - splits.get(1));
    }

    private void read(String run, String name, double seconds) {
        day.reading(run, name, String.format(Locale.ROOT, "%.1f s", seconds), Town.STOPWATCH);
    }
}
