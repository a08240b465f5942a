package org.measuredmile.demo;

import java.util.Locale;
import org.measuredmile.recording.day.Variant;

/// The weigh-in of an invented bike: three placements on the scale with the battery in, three without, two of the
/// battery alone.
///
/// Unit: the scale shows kilograms in steps of 0.05 and repeats within 0.04 kg.
final class WeighInScene {
    private static final double STEP_KG = 0.05;
    private static final double REPEATS_WITHIN_KG = 0.04;
    private static final double LIFT_S = 50;

    private WeighInScene() {}

    static void play(DayScript day) {
        BikeTruth truth = day.member().truth();
        for (int i = 0; i < 3; i++) {
            String run = weigh(day, "in", truth.massKg());
            if (i == 0) {
                day.reading(run, "front-axle", shown(day, truth.massKg() * truth.frontShare()), Town.SCALE);
                day.reading(run, "rear-axle", shown(day, truth.massKg() * (1 - truth.frontShare())), Town.SCALE);
            }
        }
        for (int i = 0; i < 3; i++) {
            weigh(day, "out", truth.massKg() - truth.batteryKg());
        }
        for (int i = 0; i < 2; i++) {
            weigh(day, "alone", truth.batteryKg());
        }
    }

    private static String weigh(DayScript day, String battery, double massKg) {
        String run = day.run(DayScript.Line.confirmed("weighin", Variant.of("battery", battery)));
        day.reading(run, "mass", shown(day, massKg), Town.SCALE);
        day.pass(LIFT_S);
        return run;
    }

    private static String shown(DayScript day, double massKg) {
        double onScale =
                massKg * Town.SCALE_READS + REPEATS_WITHIN_KG * day.random().nextGaussian();
        return String.format(Locale.ROOT, "%.2f kg", Math.rint(onScale / STEP_KG) * STEP_KG);
    }
}
