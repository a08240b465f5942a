package org.measuredmile.demo;

import java.util.Locale;
import org.measuredmile.recording.day.Variant;

/// How an invented bike's motor answers the pedals, filmed from the side: five pushes at the highest level, frames
/// counted.
///
/// Unit: a bike that senses torque answers within a fifth of a second, one that counts the cranks' turns waits for half
/// a turn.
final class EngagementScene {
    private static final int PUSHES = 5;
    private static final double FRAME_HZ = 60;
    private static final double PUSH_TAKES_S = 40;

    private EngagementScene() {}

    static void play(DayScript day) {
        var bike = day.member().bike();
        boolean feelsTorque = bike.sensor().equals("torque");
        var level = Variant.of(
                "level", Integer.toString(day.member().truth().levelMps().size()));
        for (int i = 0; i < PUSHES; i++) {
            String run = day.run(DayScript.Line.confirmed("engagement", level));
            double delayS = (feelsTorque ? 0.2 : 0.55) * scattered(day, 0.15);
            double overrunS = (feelsTorque ? 0.35 : 0.8) * scattered(day, 0.12);
            day.reading(run, "delay", frames(delayS), Town.FAST_CAMERA);
            day.reading(run, "crank-angle", String.format(Locale.ROOT, "%.0f°", 5 * Math.rint(delayS * 70)), "");
            day.reading(run, "overrun-time", frames(overrunS), Town.FAST_CAMERA);
            day.pass(PUSH_TAKES_S);
        }
    }

    private static double scattered(DayScript day, double relative) {
        return Math.max(0.3, 1 + relative * day.random().nextGaussian());
    }

    private static String frames(double seconds) {
        return "frame 200 to " + (200 + Math.round(seconds * FRAME_HZ));
    }
}
