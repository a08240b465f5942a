package org.measuredmile.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.measuredmile.demo.ride.LevelRide;
import org.measuredmile.demo.ride.ReceiverLog;
import org.measuredmile.demo.ride.ReceiverModel;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.day.Variant;

/// Steady riding of an invented bike at each assist level along the causeway, out and back, motor off first and the
/// throttle last.
///
/// Unit: what the day adds to every speed, and the wind to one way and takes from the other, in m/s.
final class AssistScene {
    private static final double DAY_SCATTER_MPS = 0.1;
    private static final double WIND_SCATTER_MPS = 0.15;
    private static final double WANDER_MPS = 0.14;
    private static final double MEMORY_S = 9;
    private static final double HOLD_S = 38;
    private static final double TURN_S = 240;

    private final DayScript day;
    private final Twist twist;

    /// A level's variant and the speed it settles at.
    private record Level(Variant variant, double speedMps) {}

    /// One way along the causeway, and what wind and day add there.
    private record Way(String direction, double addedMps) {}

    private AssistScene(DayScript day, Twist twist) {
        this.day = day;
        this.twist = twist;
    }

    static void play(DayScript day, Twist twist) {
        new AssistScene(day, twist).play();
    }

    private void play() {
        double dayMps = DAY_SCATTER_MPS * day.random().nextGaussian();
        double windMps = WIND_SCATTER_MPS * day.random().nextGaussian();
        BikeTruth truth = day.member().truth();
        for (Way way : List.of(new Way("out", dayMps + windMps), new Way("back", dayMps - windMps))) {
            List<String> runs = ride("levels", way, pedalled(truth));
            day.reading(runs.getLast(), "cut-off", shown(truth.cutOffMps(), 0.06), Town.HANDLEBAR);
            day.pass(TURN_S);
        }
        if (truth.throttleMps().isPresent()) {
            // The highest level and the throttle settle too close together to be told apart in one ride.
            var throttle = List.of(new Level(
                    Variant.of("drive", "throttle"), truth.throttleMps().getAsDouble()));
            for (Way way : List.of(new Way("out", dayMps + windMps), new Way("back", dayMps - windMps))) {
                ride("throttle", way, throttle);
                day.pass(TURN_S);
            }
        }
    }

    private static List<Level> pedalled(BikeTruth truth) {
        List<Level> levels = new ArrayList<>();
        levels.add(new Level(pedal("off"), truth.unassistedMps()));
        for (int i = 0; i < truth.levelMps().size(); i++) {
            levels.add(
                    new Level(pedal(Integer.toString(i + 1)), truth.levelMps().get(i)));
        }
        return levels;
    }

    private static Variant pedal(String level) {
        return Variant.of("drive", "pedal").with("level", level);
    }

    private List<String> ride(String what, Way way, List<Level> levels) {
        var begun = day.now();
        double[] speeds = levels.stream()
                .mapToDouble(level -> level.speedMps() + way.addedMps())
                .toArray();
        List<String> runs = new ArrayList<>();
        for (int i = 0; i < levels.size(); i++) {
            String run = day.run(
                    DayScript.Line.confirmed("assistspeed", levels.get(i).variant())
                            .on(Town.CAUSEWAY_ID, way.direction()));
            runs.add(run);
            if (twist == Twist.TYPED_ONLY) {
                day.reading(run, "speed", shown(speeds[i], 0.1), Town.HANDLEBAR);
            }
            day.pass(HOLD_S);
        }
        if (twist != Twist.TYPED_ONLY) {
            var ride = LevelRide.of(speeds, WANDER_MPS, MEMORY_S, day.random());
            var road = way.direction().equals("out") ? Town.CAUSEWAY : Town.CAUSEWAY.back(Town.CAUSEWAY_M);
            boolean isSlow = twist == Twist.ONE_HERTZ;
            var receiver = isSlow ? ReceiverModel.oneHertz() : ReceiverModel.fiveHertz();
            var log = new ReceiverLog(begun, receiver.droppingOut(0.3).watch(ride, road, day.random()));
            String instrument = isSlow ? Town.HANDLEBAR : Town.SLOW_RECEIVER;
            day.recording(what + "-" + way.direction() + ".csv", log.delimited(), instrument, runs);
            if (twist == Twist.FILMED
                    && what.equals("levels")
                    && way.direction().equals("out")) {
                day.recording("ride-along.vtt", new RideAlongClip(ride).captions(), Town.CAMERA, List.of());
            }
        }
        return runs;
    }

    private String shown(double speedMps, double scatterMps) {
        double shownMps = speedMps + scatterMps * day.random().nextGaussian();
        return String.format(Locale.ROOT, "%.1f mph", Unit.MILE_PER_HOUR.fromSi(shownMps));
    }
}
