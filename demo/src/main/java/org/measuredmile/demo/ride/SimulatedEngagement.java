package org.measuredmile.demo.ride;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.SimulatedDay.Truth;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;

/// Five pushes a day: by a logger of cranks (20 Hz), forward acceleration (50 Hz) and speed, or by frames of a video.
///
/// Population: thrust of 0.5 to 1.3 m/s² that comes within 0.05 to 0.5 s, 0.15 to 1.0 s after the cranks, and goes
/// within
/// the same 0.1 to 0.8 s after them; the rider's own push 0.05 to 0.2 m/s²; 60 turns a minute; delays scatter by 0.08 s
/// from push to push and 0.04 s from day to day, overruns by 0.10 and 0.05 s, crews differing; vibration 0.25 m/s².
public record SimulatedEngagement(boolean byVideo) implements SimulatedTrial {
    private static final int PUSHES = 5;
    private static final double TURN_HZ = 1;
    private static final double ROLL_MPS = 3;
    private static final double DELAY_SD_S = 0.08;
    private static final double DELAY_DAY_S = 0.04;
    private static final double OVERRUN_SD_S = 0.10;
    private static final double OVERRUN_DAY_S = 0.05;
    private static final double VIBRATION_MPS2 = 0.25;
    private static final double STEP_S = 0.02;
    private static final double FRAME_HZ = 120;
    private static final double PUSH_TAKES_S = 0.15;

    @Override
    public String title() {
        return byVideo ? "engagement by video" : "engagement by trace";
    }

    /// One push: when the thrust comes after the cranks, and how long it outlasts them.
    private record Push(double delayS, double overrunS) {}

    private record Motor(double thrustMps2, double comesWithinS, double goesWithinS, double riderMps2) {}

    @Override
    public SimulatedDay day(Seed seed, long index) {
        var random = seed.child(title()).stream(index);
        double anyDelayS = Draw.rectangular(random, 0.25, 1.0);
        double anyOverrunS = Draw.rectangular(random, 0.7, 1.3);
        double dayDelayS = anyDelayS + DELAY_DAY_S * Crews.spread(random) * Draw.normal(random);
        double dayOverrunS = anyOverrunS + OVERRUN_DAY_S * Crews.spread(random) * Draw.normal(random);
        double delaySd = DELAY_SD_S * Crews.spread(random);
        double overrunSd = OVERRUN_SD_S * Crews.spread(random);
        var motor = new Motor(
                Draw.rectangular(random, 0.5, 1.3),
                Draw.rectangular(random, 0.05, 0.5),
                Draw.rectangular(random, 0.05, 0.5),
                Draw.rectangular(random, 0.05, 0.2));
        var pushes = new ArrayList<Push>();
        for (int i = 0; i < PUSHES; i++) {
            pushes.add(new Push(
                    Math.max(0.05, Draw.normal(random, dayDelayS, delaySd)),
                    Math.max(motor.goesWithinS() + 0.05, Draw.normal(random, dayOverrunS, overrunSd))));
        }
        double delayMean = delaySd / Math.sqrt(PUSHES);
        double overrunMean = overrunSd / Math.sqrt(PUSHES);
        var key = Variant.of("level", "3").with("levelRole", "middle");
        var truths = List.of(
                new Truth(
                        "engagement.delay",
                        key,
                        dayDelayS,
                        anyDelayS,
                        delayMean,
                        StrictMath.hypot(delayMean, DELAY_DAY_S)),
                new Truth(
                        "engagement.overrun-time",
                        key,
                        dayOverrunS,
                        anyOverrunS,
                        overrunMean,
                        StrictMath.hypot(overrunMean, OVERRUN_DAY_S)));
        return byVideo ? filmed(pushes, truths) : traced(pushes, motor, truths, random);
    }

    private static Bike fiveLevels() {
        var known = Bike.known("simulated");
        return new Bike(
                known.id(),
                "",
                "",
                known.modelYear(),
                "",
                "pedal",
                "cadence",
                java.util.OptionalInt.of(5),
                "",
                known.price(),
                known.loan(),
                List.of());
    }

    private static Run run(int push) {
        return WrittenDay.run("e-" + push, "engagement", Variant.of("level", "3"), "");
    }

    private static SimulatedDay filmed(List<Push> pushes, List<Truth> truths) {
        var runs = new ArrayList<Run>();
        var readings = new ArrayList<Reading>();
        for (int i = 1; i <= pushes.size(); i++) {
            runs.add(run(i));
            var push = pushes.get(i - 1);
            readings.add(film("e-" + i, "delay", push.delayS()));
            readings.add(film("e-" + i, "overrun-time", push.overrunS()));
        }
        var camera = new Instrument(
                "camera-1",
                Instrument.Kind.CAMERA,
                OptionalDouble.empty(),
                java.util.Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(FRAME_HZ));
        return new SimulatedDay(
                WrittenDay.of(runs, readings, List.of(camera), List.of(), Conditions.UNKNOWN),
                fiveLevels(),
                new TreeMap<>(),
                truths);
    }

    private static Reading film(String run, String name, double seconds) {
        long frames = Math.round(seconds * FRAME_HZ);
        return new Reading(
                run,
                name,
                "frame 100 to " + (100 + frames),
                "",
                "camera-1",
                java.util.Optional.empty(),
                "T1",
                "",
                org.measuredmile.recording.Place.NOWHERE);
    }

    private static SimulatedDay traced(List<Push> pushes, Motor motor, List<Truth> truths, RandomGenerator random) {
        var runs = new ArrayList<Run>();
        var ids = new ArrayList<String>();
        var text = new StringBuilder("time_s,cadence_rpm,acceleration_x_mps2,speed_mps\n");
        double turnedS = 3;
        double spanS = 9;
        for (int i = 0; i < pushes.size(); i++) {
            runs.add(run(i + 1));
            ids.add("e-" + (i + 1));
            double cranksS = i * spanS + 2 + random.nextDouble() * 0.1;
            write(text, i * spanS, spanS, cranksS, cranksS + turnedS, new Ridden(pushes.get(i), motor, random));
        }
        var recordings = new TreeMap<String, byte[]>();
        recordings.put("pushes.csv", text.toString().getBytes(StandardCharsets.UTF_8));
        var entries = List.of(new RecordingEntry("pushes.csv", "", ids, 0, ""));
        return new SimulatedDay(
                WrittenDay.of(runs, List.of(), List.of(), entries, Conditions.UNKNOWN),
                fiveLevels(),
                recordings,
                truths);
    }

    private record Ridden(Push push, Motor motor, RandomGenerator random) {}

    private static void write(
            StringBuilder text, double fromS, double spanS, double cranksS, double stopS, Ridden ridden) {
        var motor = ridden.motor();
        double goneS = stopS + ridden.push().overrunS();
        double speed = ROLL_MPS;
        int steps = (int) Math.round(spanS / STEP_S);
        for (int i = 0; i < steps; i++) {
            double timeS = fromS + i * STEP_S;
            double turns = TURN_HZ * (timeS >= cranksS && timeS < stopS ? 1 : 0);
            double own = motor.riderMps2() * (grown(timeS, cranksS, PUSH_TAKES_S) - grown(timeS, stopS, PUSH_TAKES_S));
            double thrust = motor.thrustMps2()
                    * (grown(timeS, cranksS + ridden.push().delayS(), motor.comesWithinS())
                            - grown(timeS, goneS - motor.goesWithinS(), motor.goesWithinS()));
            double forward = -0.12 + own + thrust;
            speed = Math.max(0.5, speed + forward * STEP_S);
            text.append(String.format(
                    Locale.ROOT,
                    "%.2f,%.0f,%.3f,%.2f%n",
                    timeS,
                    60 * turns,
                    forward + VIBRATION_MPS2 * Draw.normal(ridden.random()),
                    speed));
        }
    }

    private static double grown(double timeS, double beginS, double withinS) {
        return Math.clamp((timeS - beginS) / withinS, 0, 1);
    }
}
