package org.measuredmile.demo.ride;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.measuredmile.demo.ride.SimulatedDay.Truth;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;

/// Weigh-ins of three placements each with the battery in and out, on a calibrated scale that shows steps.
///
/// Population: bikes of 18 to 45 kg with batteries of 2 to 4.5 kg; placements scatter by 0.03 kg, and from day to day
/// the bike's mass (mud, water, what is fitted) and the scale's zero change by 0.05 kg, both standard deviations
/// themselves differing between crews as an estimate from 12 degrees of freedom does; the scale's factor is off by what
/// its calibration states, 0.05 %; steps of 0.02, 0.05 or 0.1 kg.
public record SimulatedWeighIn() implements SimulatedTrial {
    private static final int PLACEMENTS = 3;
    private static final double PLACING_KG = 0.03;
    private static final double DAY_KG = 0.05;
    private static final double CALIBRATION = 0.0005;
    private static final double[] STEPS_KG = {0.02, 0.05, 0.1};

    @Override
    public String title() {
        return "weigh-in";
    }

    @Override
    public SimulatedDay day(Seed seed, long index) {
        var random = seed.child(title()).stream(index);
        double withBatteryKg = Draw.rectangular(random, 18, 45);
        double withoutKg = withBatteryKg - Draw.rectangular(random, 2, 4.5);
        double stepKg = STEPS_KG[random.nextInt(STEPS_KG.length)];
        double factor = 1 + Draw.normal(random, 0, CALIBRATION);
        double dayKg = DAY_KG * Crews.spread(random) * Draw.normal(random);
        double placingKg = PLACING_KG * Crews.spread(random);
        var runs = new ArrayList<Run>();
        var readings = new ArrayList<Reading>();
        for (String battery : List.of("in", "out")) {
            double today = (battery.equals("in") ? withBatteryKg : withoutKg) + dayKg;
            for (int i = 1; i <= PLACEMENTS; i++) {
                String id = "w-" + battery + "-" + i;
                runs.add(WrittenDay.run(id, "weighin", Variant.of("battery", battery), ""));
                readings.add(
                        WrittenDay.reading(id, "mass", shown(today + placingKg * Draw.normal(random), factor, stepKg)));
            }
        }
        var scale = new Instrument(
                "scale-1",
                Instrument.Kind.SCALE,
                OptionalDouble.of(stepKg),
                Optional.of(new Instrument.Calibration(1, CALIBRATION, Optional.empty())),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        var day = WrittenDay.of(runs, readings, List.of(scale), List.of(), Conditions.UNKNOWN);
        return new SimulatedDay(
                day,
                Bike.known("simulated"),
                new TreeMap<>(),
                List.of(truth("in", withBatteryKg, dayKg, placingKg), truth("out", withoutKg, dayKg, placingKg)));
    }

    private static String shown(double placedKg, double factor, double stepKg) {
        double onScale = placedKg / factor;
        double steps = Math.rint(onScale / stepKg);
        return new BigDecimal(steps * stepKg)
                        .setScale(2, RoundingMode.HALF_EVEN)
                        .toPlainString() + " kg";
    }

    private static Truth truth(String battery, double trueKg, double dayKg, double placingKg) {
        double sd = placingKg / Math.sqrt(PLACEMENTS);
        return new Truth(
                "weighin.mass",
                Variant.of("battery", battery),
                trueKg + dayKg,
                trueKg,
                sd,
                StrictMath.hypot(sd, DAY_KG));
    }
}
