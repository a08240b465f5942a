package org.measuredmile.demo.ride;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.random.RandomGenerator;
import org.measuredmile.quantity.statistics.Draw;

/// An accelerometer somewhere on the bike: what it writes of a true ride, a hundred times a second.
///
/// It sits at any angle, each axis off by 0.15 m/s² and the whole by 1 % (standard deviations, one for the day). The
/// bike pitches by up to 2° at 6 m/s² of braking and swings back after it, sways a little, and shakes by 0.4 to 0.9
/// m/s² while it moves. Its clock is right within 0.1 s.
/// Unit: m/s²; instants of a clock of its own.
/// Source: magnitudes are house values.
public record AccelerometerLog(Instant start) {
    private static final double STEP_S = 0.01;
    private static final double GRAVITY_MPS2 = 9.80665;
    private static final double PITCH_PER_MPS2 = Math.toRadians(2) / 6;
    private static final double SWING_PER_S2 = 180;
    private static final double DAMPING_PER_S = 14;
    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern(
                    "uuuu-MM-dd'T'HH:mm:ss.SSS'Z'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    /// `time,ax,ay,az` in steps of 0.01 m/s².
    public byte[] delimited(TrueRide ride, RandomGenerator random) {
        var mounted = Mounted.drawn(random);
        double clockS = Draw.rectangular(random, -0.1, 0.1);
        double shakes = Draw.rectangular(random, 0.4, 0.9);
        double pitchPerMps2 = PITCH_PER_MPS2 * random.nextDouble();
        var text = new StringBuilder("time,ax_mps2,ay_mps2,az_mps2\n");
        double pitch = 0;
        double swing = 0;
        double[] shaken = new double[3];
        int count = (int) (ride.spanS() / STEP_S);
        for (int i = 0; i < count; i++) {
            double timeS = i * STEP_S;
            double ahead = (ride.speedAtMps(timeS + STEP_S / 2) - ride.speedAtMps(timeS - STEP_S / 2)) / STEP_S;
            swing += (-SWING_PER_S2 * (pitch + pitchPerMps2 * ahead) - DAMPING_PER_S * swing) * STEP_S;
            pitch += swing * STEP_S;
            double moving = Math.min(1, ride.speedAtMps(timeS) / 4);
            double[] body = {
                ahead * StrictMath.cos(pitch) - GRAVITY_MPS2 * StrictMath.sin(pitch),
                0.2 * StrictMath.sin(1.3 * timeS) * moving,
                GRAVITY_MPS2 * StrictMath.cos(pitch)
            };
            for (int axis = 0; axis < 3; axis++) {
                shaken[axis] = 0.5 * shaken[axis] + Math.sqrt(0.75) * (0.03 + shakes * moving) * Draw.normal(random);
                body[axis] += shaken[axis];
            }
            text.append(STAMP.format(start.plusMillis(Math.round((timeS + clockS) * 1000))));
            for (int axis = 0; axis < 3; axis++) {
                text.append(',').append(fixed(mounted.reads(axis, body)));
            }
            text.append('\n');
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String fixed(double value) {
        return BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_EVEN).toPlainString();
    }

    /// Three axes at right angles, any way round, with their errors.
    private record Mounted(double[][] axes, double[] bias, double scale) {
        static Mounted drawn(RandomGenerator random) {
            double[] first = unit(normals(random, 1));
            double[] second = normals(random, 1);
            double along = first[0] * second[0] + first[1] * second[1] + first[2] * second[2];
            for (int i = 0; i < 3; i++) {
                second[i] -= along * first[i];
            }
            second = unit(second);
            double[] third = {
                first[1] * second[2] - first[2] * second[1],
                first[2] * second[0] - first[0] * second[2],
                first[0] * second[1] - first[1] * second[0]
            };
            return new Mounted(
                    new double[][] {first, second, third}, normals(random, 0.15), 1 + Draw.normal(random, 0, 0.01));
        }

        double reads(int axis, double[] body) {
            double along = axes[axis][0] * body[0] + axes[axis][1] * body[1] + axes[axis][2] * body[2];
            return scale * along + bias[axis];
        }

        private static double[] normals(RandomGenerator random, double sd) {
            return new double[] {Draw.normal(random, 0, sd), Draw.normal(random, 0, sd), Draw.normal(random, 0, sd)};
        }

        private static double[] unit(double[] a) {
            double length = Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
            return new double[] {a[0] / length, a[1] / length, a[2] / length};
        }
    }
}
