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
/// Population: thrust of 0.5 to 1.3 m/s² that comes within 0.05 to 0.5 s, 0.25 to 1.0 s after the cranks, and is gone
/// 0.7 to 1.3 s after them; the rider's own push 0.05 to 0.2 m/s²; 60 turns a minute for three seconds; delays scatter
/// by 0.08 s from push to push and 0.04 s from day to day, overruns by 0.10 and 0.05 s, crews differing; vibration
/// 0.25 m/s²; speeds shown within 1 %; crank angles read off a video to 5°.
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
    private static final double TURNED_S = 3;
    private static final double ROLLED_S = 2.05;
    private static final double DRAG_MPS2 = 0.12;
    private static final double FINE_S = 0.005;
    private static final double HALF_S = 0.05;
    private static final double SCALE_SD = 0.01;
    private static final double ANGLE_STEP_DEG = 5;
    private static final double KMH = 3.6;
    /// What a push's trace leaves open at best of when thrust came or was gone, in seconds: the bound by
    /// likelihood of a ramp of unknown begin, length and height beside the rider's own, with lengths, heights
    /// and pushes known as they are drawn here, cranks to half a sample; root of the mean square over this
    /// population, worked out apart from this code.
    private static final double TRACE_SD_S = 0.041;
    /// The same by frames.
    private static final double FRAME_SD_S = 1 / FRAME_HZ / Math.sqrt(6);
    /// Of the thrusts drawn here, which a film does not show.
    private static final double THRUST_SD_MPS2 = 0.8 / Math.sqrt(12);

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
        var truths = truths(
                motor,
                new Push(dayDelayS, dayOverrunS),
                new Push(anyDelayS, anyOverrunS),
                new Push(delaySd, overrunSd));
        return byVideo ? filmed(pushes, motor, truths, random) : traced(pushes, motor, truths, random);
    }

    /// The best possible knows how pushes and days scatter and what the record leaves open of each push.
    private List<Truth> truths(Motor motor, Push day, Push any, Push scatter) {
        double own = byVideo ? FRAME_SD_S : TRACE_SD_S;
        double delayMean = StrictMath.hypot(scatter.delayS(), own) / Math.sqrt(PUSHES);
        double overrunMean = StrictMath.hypot(scatter.overrunS(), own) / Math.sqrt(PUSHES);
        double radians = 2 * Math.PI * TURN_HZ;
        double wayM = overrunM(motor, day);
        double rateMps = (overrunM(motor, longer(day, HALF_S)) - overrunM(motor, longer(day, -HALF_S))) / (2 * HALF_S);
        double pushedM = byVideo ? THRUST_SD_MPS2 * day.overrunS() * day.overrunS() / 2 : 0;
        double wayMean = StrictMath.hypot(StrictMath.hypot(rateMps * overrunMean, SCALE_SD * wayM), pushedM);
        return List.of(
                truth("delay", day.delayS(), any.delayS(), delayMean, DELAY_DAY_S),
                truth(
                        "crank-angle",
                        radians * day.delayS(),
                        radians * any.delayS(),
                        radians * delayMean,
                        radians * DELAY_DAY_S),
                truth("overrun-time", day.overrunS(), any.overrunS(), overrunMean, OVERRUN_DAY_S),
                truth("overrun-distance", wayM, overrunM(motor, any), wayMean, rateMps * OVERRUN_DAY_S));
    }

    private static Push longer(Push push, double bySeconds) {
        return new Push(push.delayS(), push.overrunS() + bySeconds);
    }

    private static Truth truth(String figure, double day, double any, double mean, double daySd) {
        var key = Variant.of("level", "3").with("levelRole", "middle");
        return new Truth("engagement." + figure, key, day, any, mean, StrictMath.hypot(mean, daySd));
    }

    /// The forward acceleration so long after the cranks began.
    private static double forwardMps2(Motor motor, Push push, double sinceS) {
        double own = motor.riderMps2() * (grown(sinceS, 0, PUSH_TAKES_S) - grown(sinceS, TURNED_S, PUSH_TAKES_S));
        double gone = TURNED_S + push.overrunS();
        double thrust = motor.thrustMps2()
                * (grown(sinceS, push.delayS(), motor.comesWithinS())
                        - grown(sinceS, gone - motor.goesWithinS(), motor.goesWithinS()));
        return -DRAG_MPS2 + own + thrust;
    }

    /// How fast the bike is when the cranks stop.
    private static double stoppedMps(Motor motor, Push push) {
        double speed = ROLL_MPS - DRAG_MPS2 * ROLLED_S;
        for (int i = 0; i * FINE_S < TURNED_S; i++) {
            speed += forwardMps2(motor, push, (i + 0.5) * FINE_S) * FINE_S;
        }
        return speed;
    }

    /// How far it goes from there until the thrust is gone.
    private static double overrunM(Motor motor, Push push) {
        double speed = stoppedMps(motor, push);
        double way = 0;
        int steps = (int) Math.round(push.overrunS() / FINE_S);
        double stepS = push.overrunS() / steps;
        for (int i = 0; i < steps; i++) {
            double gained = forwardMps2(motor, push, TURNED_S + (i + 0.5) * stepS) * stepS;
            way += (speed + gained / 2) * stepS;
            speed += gained;
        }
        return way;
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

    private static SimulatedDay filmed(List<Push> pushes, Motor motor, List<Truth> truths, RandomGenerator random) {
        var runs = new ArrayList<Run>();
        var readings = new ArrayList<Reading>();
        double scale = 1 + Draw.normal(random, 0, SCALE_SD);
        for (int i = 1; i <= pushes.size(); i++) {
            runs.add(run(i));
            var push = pushes.get(i - 1);
            readings.add(film("e-" + i, "delay", push.delayS()));
            readings.add(film("e-" + i, "overrun-time", push.overrunS()));
            double degrees = ANGLE_STEP_DEG * Math.rint(360 * TURN_HZ * push.delayS() / ANGLE_STEP_DEG);
            readings.add(WrittenDay.reading("e-" + i, "crank-angle", String.format(Locale.ROOT, "%.0f°", degrees)));
            String shown = String.format(Locale.ROOT, "%.1f km/h", KMH * stoppedMps(motor, push) / scale);
            readings.add(WrittenDay.reading("e-" + i, "rolling-speed", shown));
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
        double spanS = 9;
        double scale = 1 + Draw.normal(random, 0, SCALE_SD);
        for (int i = 0; i < pushes.size(); i++) {
            runs.add(run(i + 1));
            ids.add("e-" + (i + 1));
            double cranksS = i * spanS + 2 + random.nextDouble() * 0.1;
            write(text, i * spanS, spanS, cranksS, new Ridden(pushes.get(i), motor, scale, random));
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

    private record Ridden(Push push, Motor motor, double scale, RandomGenerator random) {}

    private static void write(StringBuilder text, double fromS, double spanS, double cranksS, Ridden ridden) {
        double speed = ROLL_MPS;
        int steps = (int) Math.round(spanS / STEP_S);
        for (int i = 0; i < steps; i++) {
            double timeS = fromS + i * STEP_S;
            double turns = TURN_HZ * (timeS >= cranksS && timeS < cranksS + TURNED_S ? 1 : 0);
            double forward = forwardMps2(ridden.motor(), ridden.push(), timeS - cranksS);
            speed = Math.max(0.5, speed + forward * STEP_S);
            text.append(String.format(
                    Locale.ROOT,
                    "%.2f,%.0f,%.3f,%.2f%n",
                    timeS,
                    60 * turns,
                    forward + VIBRATION_MPS2 * Draw.normal(ridden.random()),
                    speed / ridden.scale()));
        }
    }

    private static double grown(double timeS, double beginS, double withinS) {
        return Math.clamp((timeS - beginS) / withinS, 0, 1);
    }
}
