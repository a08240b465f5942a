package org.measuredmile.demo;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.RiddenRange;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Variant;

/// The range ride of an invented bike, from a full battery until assistance ends: by throttle where there is one, else
/// at the highest level with a power meter.
///
/// A wheel computer writes a line every five seconds; cargo bikes and commuters carry a battery log whose clock nobody
/// set, the
/// others are charged at a wall meter afterwards.
final class RangeScene {
    private static final double STEP_S = 1;
    private static final int EVERY_S = 5;
    private static final double DRIVE = 0.74;
    private static final double USABLE = 0.93;
    private static final double CHARGER = 0.88;
    private static final double WATT_HOUR_J = 3600;
    private static final double RIDER_W = 90;
    private static final double AIR_KG_PER_M3 = 1.21;
    private static final double EARLY = 0.55;
    private static final int LAPS_EARLY = 5;
    private static final double SCATTER = 0.04;

    private final DayScript day;
    private final RandomGenerator random;
    private final double nominalJ;

    private RangeScene(DayScript day) {
        this.day = day;
        this.random = day.random();
        this.nominalJ = day.member()
                .bike()
                .claimed("battery-energy", QuantityKind.ENERGY)
                .orElseThrow();
    }

    /// @param isEarly whether rain ended it after some laps
    static void play(DayScript day, Twist twist, boolean isLogged, boolean isEarly, double riderKg) {
        new RangeScene(day).ride(twist, twist != Twist.TYPED_ONLY && (isLogged || isEarly), isEarly, riderKg);
    }

    private void ride(Twist twist, boolean isLogged, boolean isEarly, double riderKg) {
        var bike = bike(riderKg, RiddenRange.speeds(8000, meanMps(), 0.0003, STEP_S, random));
        double costJPerM = Math.max(8, bike.costJPerM()) * (1 + SCATTER * random.nextGaussian());
        double wholeM = nominalJ * USABLE * DRIVE / costJPerM;
        var ridden = RiddenRange.speeds(isEarly ? EARLY * wholeM : wholeM, meanMps(), 0.0003, STEP_S, random);
        double usedJ = nominalJ * USABLE * (isEarly ? EARLY : 1);
        var begun = day.now();
        String run = day.run(DayScript.Line.confirmed("range", variant()));
        day.reading(run, "ended", isEarly ? "stopped-early" : "assistance-ended", "");
        day.reading(run, "ascent", String.format(Locale.ROOT, "%.0f m", 0.003 * ridden.wayM()), "");
        if (isEarly) {
            day.reading(run, "laps", Integer.toString(LAPS_EARLY), "");
        }
        if (!hasThrottle()) {
            day.reading(run, "rider-power", String.format(Locale.ROOT, "%.0f W", RIDER_W), "");
        }
        keep(twist, run, ridden, begun);
        if (isLogged) {
            day.recording("battery.csv", log(ridden, usedJ, begun), Town.BATTERY_LOG, List.of(run));
        } else {
            double wallKwh = usedJ / CHARGER / WATT_HOUR_J / 1000;
            day.reading(run, "wall-energy", String.format(Locale.ROOT, "%.2f kWh", wallKwh), Town.WALL_METER);
        }
        day.pass(ridden.mps().length * STEP_S);
    }

    private boolean hasThrottle() {
        return day.member().truth().throttleMps().isPresent();
    }

    private Variant variant() {
        return hasThrottle()
                ? Variant.of("drive", "throttle")
                : Variant.of("drive", "pedal")
                        .with(
                                "level",
                                Integer.toString(day.member().truth().levelMps().size()));
    }

    private double meanMps() {
        var truth = day.member().truth();
        return 0.8 * truth.throttleMps().orElse(truth.levelMps().getLast());
    }

    private RiddenRange bike(double riderKg, RiddenRange.Speeds speeds) {
        return new RiddenRange(
                day.member().truth().massKg(),
                riderKg,
                AIR_KG_PER_M3,
                CoastScene.ROLLING,
                CoastScene.DRAG_AREA_M2,
                0.75,
                1.5,
                0.003,
                0.0003,
                hasThrottle() ? 0 : RIDER_W,
                speeds);
    }

    /// By the wheel computer, in two files where it was switched off at the half; by hand where nothing ran.
    private void keep(Twist twist, String run, RiddenRange.Speeds ridden, Instant begun) {
        int half = ridden.mps().length / 2;
        int whole = ridden.mps().length;
        switch (twist) {
            case TYPED_ONLY -> byHand(run, ridden);
            case NO_WIND, RUN_VOID -> {
                day.recording("range-1.csv", wheel(ridden, 0, half, begun), Town.WHEEL, List.of(run));
                day.recording("range-2.csv", wheel(ridden, half, whole, begun), Town.WHEEL, List.of(run));
            }
            default -> day.recording("range.csv", wheel(ridden, 0, whole, begun), Town.WHEEL, List.of(run));
        }
    }

    private void byHand(String run, RiddenRange.Speeds ridden) {
        day.reading(run, "distance", String.format(Locale.ROOT, "%.1f mi", ridden.wayM() / 1609.344), Town.WHEEL);
        day.reading(run, "riding-time", String.format(Locale.ROOT, "%.0f s", ridden.ridingS()), Town.STOPWATCH);
        day.reading(run, "stops", Long.toString(Math.round(0.0003 * ridden.wayM())), "");
    }

    private static byte[] wheel(RiddenRange.Speeds ridden, int from, int to, Instant begun) {
        var text = new StringBuilder("time,wheel_speed_kmh\n");
        for (int i = from; i < to; i += EVERY_S) {
            text.append(begun.plusSeconds(Math.round(i * STEP_S)))
                    .append(String.format(Locale.ROOT, ",%.1f%n", 3.6 * uneven(ridden.mps()[i], i)));
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    /// Nobody holds a speed to the tenth of a kilometre an hour; over the ride it comes to nothing.
    private static double uneven(double mps, int step) {
        return mps < 1 ? mps : mps + 0.12 * Math.sin(0.37 * step) + 0.08 * Math.sin(1.31 * step);
    }

    /// Seven minutes slow, as whoever set it last left it.
    private byte[] log(RiddenRange.Speeds ridden, double usedJ, Instant begun) {
        double perMetre = usedJ / ridden.wayM();
        var text = new StringBuilder("time,voltage_V,current_A\n");
        for (int i = 0; i < ridden.mps().length; i += EVERY_S) {
            double volts = 52 - 9.0 * i / ridden.mps().length;
            double amperes = ridden.mps()[i] * perMetre * Math.max(0, 1 + 0.2 * random.nextGaussian()) / volts;
            text.append(begun.plusSeconds(Math.round(i * STEP_S) - 420))
                    .append(String.format(Locale.ROOT, ",%.1f,%.2f%n", volts, amperes));
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }
}
