package org.measuredmile.demo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.measuredmile.demo.ride.ReceiverLog;
import org.measuredmile.demo.ride.ReceiverModel;
import org.measuredmile.demo.ride.RiddenStart;
import org.measuredmile.demo.ride.SimulatedStart;
import org.measuredmile.demo.ride.StartedBike;
import org.measuredmile.demo.ride.TrueRide;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.day.Variant;

/// Standing starts of an invented bike on the causeway, three each way: pedalling at the highest level, and by throttle
/// alone where one is fitted.
///
/// Unit: scatter as standard deviations of the logarithm of the thrust.
final class StartScene {
    private static final int EACH_WAY = 3;
    private static final double RUN_SCATTER = 0.03;
    private static final double DAY_SCATTER = 0.025;
    /// For some seconds an invented motor gives more than its label says.
    private static final double WHEEL_OVER_LABEL = 1.4;
    private static final double RIDER_W = 150;
    private static final double PEDALLED_BEYOND_CUT_OFF_MPS = 0.5;
    private static final double BACK_TO_THE_POST_S = 150;

    private final DayScript day;
    private final Twist twist;

    /// How the bike is driven, with what power at the wheel, and no faster than what.
    private record Drive(String name, double powerW, double topMps) {}

    private StartScene(DayScript day, Twist twist) {
        this.day = day;
        this.twist = twist;
    }

    static void play(DayScript day, Twist twist) {
        new StartScene(day, twist).play();
    }

    private void play() {
        if (twist == Twist.ONE_HERTZ) {
            day.notRidden("standingstart", Variant.NONE, "the fast receiver was away for repair");
            return;
        }
        var truth = day.member().truth();
        double motorW = WHEEL_OVER_LABEL * truth.motorW();
        ride(new Drive("pedal", motorW + RIDER_W, truth.cutOffMps() + PEDALLED_BEYOND_CUT_OFF_MPS));
        if (truth.throttleMps().isPresent()) {
            ride(new Drive("throttle", motorW, truth.throttleMps().getAsDouble()));
        }
    }

    private void ride(Drive drive) {
        double dayShare = DAY_SCATTER * day.random().nextGaussian();
        double windMps = 0.5 * day.random().nextGaussian();
        double slope = 0.001 * day.random().nextGaussian();
        ride(drive, dayShare, "out", new RiddenStart.Road(slope, windMps));
        ride(drive, dayShare, "back", new RiddenStart.Road(-slope, -windMps));
    }

    private void ride(Drive drive, double dayShare, String way, RiddenStart.Road road) {
        List<RiddenStart> starts = new ArrayList<>();
        for (int i = 0; i < EACH_WAY; i++) {
            double runShare = RUN_SCATTER * day.random().nextGaussian();
            starts.add(RiddenStart.of(bike(drive).changed(dayShare + runShare), road));
        }
        var all = SimulatedStart.ride(starts);
        var ride = TrueRide.of(
                Arrays.stream(all.speedMps())
                        .map(v -> Math.min(v, drive.topMps()))
                        .toArray(),
                all.stepS());
        var begun = day.now();
        List<String> runs = new ArrayList<>();
        double passedS = 0;
        List<Double> setOffs = BrakingScene.setOffs(ride);
        for (int i = 0; i < EACH_WAY; i++) {
            day.pass(setOffs.get(i) - passedS);
            passedS = setOffs.get(i);
            runs.add(write(drive, way, starts.get(i)));
        }
        day.pass(ride.spanS() - passedS + BACK_TO_THE_POST_S);
        if (twist != Twist.TYPED_ONLY) {
            var line = way.equals("out") ? Town.CAUSEWAY : Town.CAUSEWAY.back(Town.CAUSEWAY_M);
            var log = new ReceiverLog(begun, ReceiverModel.tenHertz().watch(ride, line, day.random()));
            day.recording("starts-" + drive.name() + "-" + way + ".csv", log.delimited(), Town.FAST_RECEIVER, runs);
        }
    }

    private String write(Drive drive, String way, RiddenStart start) {
        var line = DayScript.Line.confirmed("standingstart", Variant.of("drive", drive.name()))
                .on(Town.CAUSEWAY_ID, way);
        String run = day.run(line);
        if (twist == Twist.TYPED_ONLY) {
            for (int mph : new int[] {10, 15, 20}) {
                double mps = Unit.MILE_PER_HOUR.toSi(mph);
                if (mps < drive.topMps()) {
                    double seconds = start.timeToS(mps) + 0.1 * day.random().nextGaussian();
                    day.reading(
                            run,
                            "time-to-" + mph + "-mph",
                            String.format(Locale.ROOT, "%.1f s", seconds),
                            Town.STOPWATCH);
                }
            }
        }
        return run;
    }

    private StartedBike bike(Drive drive) {
        double riderKg = Town.riders().stream()
                .filter(rider -> rider.code().equals(day.rider()))
                .findFirst()
                .orElseThrow()
                .massAsRiddenKg()
                .orElseThrow();
        double bikeKg = day.member().truth().massKg();
        double powerWpkg = drive.powerW() / (riderKg + bikeKg);
        return new StartedBike(
                1.3 + 0.1 * powerWpkg, powerWpkg, 0.35, riderKg, bikeKg, 3, 0.008, 0.6, RUN_SCATTER, DAY_SCATTER);
    }
}
