package org.measuredmile.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.ClimbedBike;
import org.measuredmile.demo.ride.HillSession;
import org.measuredmile.demo.ride.ReceiverLog;
import org.measuredmile.demo.ride.ReceiverModel;
import org.measuredmile.demo.ride.RiddenClimb;
import org.measuredmile.recording.day.Variant;

/// Climbs of an invented bike on Mill Hill, three by throttle alone where one is fitted and three pedalling at the
/// highest level, by the handlebar computer or by a watch.
///
/// Unit: scatter as standard deviations of the logarithm of the force.
final class ClimbScene {
    private static final int EACH = 3;
    private static final double RUN_SCATTER = 0.015;
    private static final double DAY_SCATTER = 0.02;
    /// On a long hill an invented motor gives less than its label says.
    private static final double WHEEL_OF_LABEL = 0.8;
    private static final double RIDER_W = 140;
    private static final double ROLLING = 0.008;
    private static final double DRAG_AREA_M2 = 0.6;
    private static final double WHEELS_KG = 3;
    private static final double AIR_KGPM3 = 1.22;
    private static final double WATCH_SD_S = 0.12;
    private static final double BETWEEN_DRIVES_S = 240;

    private final DayScript day;
    private final Twist twist;
    private final RandomGenerator random;

    private ClimbScene(DayScript day, Twist twist, RandomGenerator random) {
        this.day = day;
        this.twist = twist;
        this.random = random;
    }

    static void play(DayScript day, Twist twist, RandomGenerator random) {
        var scene = new ClimbScene(day, twist, random);
        double motorW = WHEEL_OF_LABEL * day.member().truth().motorW();
        double today = DAY_SCATTER * random.nextGaussian();
        double windMps = 0.4 * random.nextGaussian();
        if (day.member().truth().throttleMps().isPresent()) {
            scene.ride("throttle", motorW, today, windMps);
        } else {
            day.notRidden("climb", Variant.of("drive", "throttle"), "no throttle is fitted");
        }
        scene.ride("pedal", motorW + RIDER_W, today, windMps);
    }

    private void ride(String drive, double watts, double today, double windMps) {
        var weather = new RiddenClimb.Weather(AIR_KGPM3, windMps);
        List<RiddenClimb> climbs = new ArrayList<>();
        for (int i = 0; i < EACH; i++) {
            var bike = bike(watts).stronger(today + RUN_SCATTER * random.nextGaussian());
            climbs.add(RiddenClimb.of(bike, Town.HILL_SLOPE, weather, 1.1 * bike.atMps()));
        }
        var session = HillSession.of(climbs);
        var ride = session.ride();
        var begun = day.now();
        List<String> runs = new ArrayList<>();
        double passedS = 0;
        for (int i = 0; i < EACH; i++) {
            day.pass(session.setOffs().get(i) - passedS);
            passedS = session.setOffs().get(i);
            runs.add(write(drive, climbs.get(i), i));
        }
        day.pass(ride.spanS() - passedS + BETWEEN_DRIVES_S);
        String file = "hill-" + drive + ".csv";
        if (twist == Twist.RECORDING_LOST) {
            day.lostRecording(file, Town.HANDLEBAR, runs, "the computer's battery ran flat; timed by hand");
        } else if (twist != Twist.TYPED_ONLY) {
            var seen = ReceiverModel.oneHertz().watch(ride, Town.HILL, random);
            var shown = HillSession.shown(seen, 1, ride, Town.HILL_SLOPE::heightM);
            day.recording(file, new ReceiverLog(begun, shown).delimited(), Town.HANDLEBAR, runs);
        }
    }

    private String write(String drive, RiddenClimb climb, int index) {
        var line = DayScript.Line.confirmed("climb", Variant.of("drive", drive)).on(Town.HILL_ID, "out");
        if (twist == Twist.PROPOSED) {
            line = line.proposed();
        }
        if (twist == Twist.RUN_VOID && index == 1) {
            line = line.voided("traffic");
        }
        String run = day.run(line);
        if (!twist.isRecorded() || twist == Twist.RECORDING_LOST) {
            double seconds = climb.timeS() + WATCH_SD_S * random.nextGaussian();
            day.reading(run, "climb-time", String.format(Locale.ROOT, "%.1f s", seconds), Town.STOPWATCH);
        }
        return run;
    }

    /// A bike at the limit of its power, written as the speed that it holds on the hill.
    private ClimbedBike bike(double watts) {
        double riderKg = Town.riders().stream()
                .filter(rider -> rider.code().equals(day.rider()))
                .findFirst()
                .orElseThrow()
                .massAsRiddenKg()
                .orElseThrow();
        double bikeKg = day.member().truth().massKg();
        double mps = 3;
        var bike = new ClimbedBike(bikeKg, riderKg, WHEELS_KG, ROLLING, DRAG_AREA_M2, watts / mps, mps, 1);
        double sine = Town.HILL_SLOPE.meanSine();
        for (int i = 0; i < 40; i++) {
            mps = (mps + watts / ClimbedBike.holdingN(bike, mps, sine, AIR_KGPM3)) / 2;
        }
        double held = Math.min(mps, day.member().truth().cutOffMps());
        return new ClimbedBike(
                bikeKg,
                riderKg,
                WHEELS_KG,
                ROLLING,
                DRAG_AREA_M2,
                ClimbedBike.holdingN(bike, held, sine, AIR_KGPM3),
                held,
                1);
    }
}
