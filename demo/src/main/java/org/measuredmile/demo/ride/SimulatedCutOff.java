package org.measuredmile.demo.ride;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.SimulatedDay.Truth;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;

/// Days on which a rider pedals on, feels where the push of the motor ends, and writes down what
/// the speed read, once out and once back.
///
/// Population: motors that fade at 6.5 to 12.5 m/s; a rider feels it 0.15 m/s apart from passage to
/// passage, and 0.08 m/s apart from day to day, in which the rider's own feeling, tyres and battery
/// are; both standard deviations themselves differing between crews as an estimate from 12 degrees of
/// freedom does. Half the crews read a receiver in steps of 0.1 km/h, off by what its calibration
/// states, 0.2 %; the others a display by the wheel in steps of 0.1, 0.5 or 1 km/h that nobody
/// calibrated, off by 2 %.
public record SimulatedCutOff() implements SimulatedTrial {
    private static final double PASSAGE_MPS = 0.15;
    private static final double DAY_MPS = 0.08;
    private static final List<String> WAYS = List.of("out", "back");

    @Override
    public String title() {
        return "cut-off speed by reading";
    }

    /// What is read: it shows a speed times its scale, in whole steps.
    private record Dial(Instrument.Kind kind, boolean isCalibrated, double scale, double stepKmh) {
        private static final double KMH_PER_MPS = 3.6;
        private static final double RECEIVER_SD = 0.002;
        private static final double DISPLAY_SD = 0.02;
        private static final double[] DISPLAY_STEPS_KMH = {0.1, 0.5, 1};

        static Dial drawn(RandomGenerator random) {
            if (random.nextBoolean()) {
                return new Dial(Instrument.Kind.RECEIVER, true, 1 + Draw.normal(random, 0, RECEIVER_SD), 0.1);
            }
            double stepKmh = DISPLAY_STEPS_KMH[random.nextInt(DISPLAY_STEPS_KMH.length)];
            return new Dial(Instrument.Kind.WHEEL, false, 1 + Draw.normal(random, 0, DISPLAY_SD), stepKmh);
        }

        /// What scale and step leave open of the mean of a reading each way.
        double bestSd(double speedMps) {
            double ofScale = speedMps * (isCalibrated ? RECEIVER_SD : DISPLAY_SD);
            return StrictMath.hypot(ofScale, stepKmh / KMH_PER_MPS / Math.sqrt(12.0 * WAYS.size()));
        }

        Reading reading(String run, double speedMps) {
            double shownKmh = Math.rint(speedMps * scale * KMH_PER_MPS / stepKmh) * stepKmh;
            String shown = String.format(Locale.ROOT, "%.1f", shownKmh);
            return new Reading(run, "cut-off", shown, "km/h", "dial-1", Optional.empty(), "T1", "", Place.NOWHERE);
        }

        Instrument written() {
            Optional<Instrument.Calibration> calibration = isCalibrated
                    ? Optional.of(new Instrument.Calibration(1, RECEIVER_SD, Optional.empty()))
                    : Optional.empty();
            return new Instrument(
                    "dial-1",
                    kind,
                    OptionalDouble.of(stepKmh / KMH_PER_MPS),
                    calibration,
                    OptionalDouble.empty(),
                    OptionalDouble.empty());
        }
    }

    @Override
    public SimulatedDay day(Seed seed, long index) {
        var random = seed.child(title()).stream(index);
        double always = Draw.rectangular(random, 6.5, 12.5);
        double dayMps = DAY_MPS * Crews.spread(random);
        double today = always + dayMps * Draw.normal(random);
        double passageMps = PASSAGE_MPS * Crews.spread(random);
        var dial = Dial.drawn(random);
        var runs = new ArrayList<Run>();
        var readings = new ArrayList<Reading>();
        var variant = Variant.of("drive", "pedal").with("level", "3");
        for (String way : WAYS) {
            runs.add(WrittenDay.run(way, "assistspeed", variant, way));
            readings.add(dial.reading(way, today + passageMps * Draw.normal(random)));
        }
        double sd = StrictMath.hypot(passageMps / Math.sqrt(WAYS.size()), dial.bestSd(today));
        return new SimulatedDay(
                WrittenDay.of(runs, readings, List.of(dial.written()), List.of(), Conditions.UNKNOWN),
                Bike.known("simulated"),
                new TreeMap<>(),
                List.of(new Truth(
                        "assistspeed.cut-off",
                        Variant.of("drive", "pedal"),
                        today,
                        always,
                        sd,
                        StrictMath.hypot(sd, dayMps))));
    }
}
