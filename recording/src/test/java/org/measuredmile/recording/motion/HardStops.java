package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

/// Hard stops of known truth, seen by a receiver of 10 Hz and an accelerometer of 100 Hz, in steps of a millisecond and
/// without any formula of the reduction.
///
/// The brake builds up in 0.15 to 0.30 s to 4.5 to 6.5 m/s², which drifts and which the rider's hand makes ripple. The
/// bike pitches by up to 2° with the deceleration, rocks after the stop, and shakes while it moves. The accelerometer
/// has biases of 0.15 m/s², a scale right within 1 %, sits at any angle, and its clock is its own.
final class HardStops {
    static final double STEP_S = 0.001;
    private static final double GRAVITY_MPS2 = 9.80665;
    final Random random;
    private final List<Double> speeds = new ArrayList<>();
    private int onset;
    private int rest;
    double lagS;
    double turnHalfwayDegrees;
    double clipMps2 = Double.POSITIVE_INFINITY;
    double shakeMps2;
    double restsForS = 2.5;

    HardStops(long seed) {
        random = new Random(seed);
        shakeMps2 = 0.4 + 0.5 * random.nextDouble();
    }

    /// A start, a steady stretch, a hard stop and a rest.
    HardStops ride() {
        hold(0, 3);
        double top = 8.94 + 0.3 * random.nextGaussian();
        for (double v = 0; v < top; v += 1.2 * STEP_S) {
            speeds.add(v);
        }
        double drift = -0.1 + 0.1 * random.nextGaussian();
        double v = top;
        for (int i = 0; i < 6000; i++) {
            v += (i > 3000 ? drift : 0) * STEP_S;
            speeds.add(v);
        }
        onset = speeds.size() - 1;
        double buildUpS = 0.15 + 0.15 * random.nextDouble();
        double hard = 4.5 + 2 * random.nextDouble();
        double rise = hard * (-0.1 + 0.3 * random.nextDouble()) / 1.5;
        double ripple = 0.3 * random.nextDouble();
        double phase = 6.28 * random.nextDouble();
        for (int i = 0; v > 0; i++) {
            double t = (i + 0.5) * STEP_S;
            double grip = Math.min(1, t / buildUpS);
            double now = hard + rise * Math.max(0, t - buildUpS) + ripple * Math.sin(12 * t + phase) * grip;
            v -= (now * grip - drift * (1 - grip)) * STEP_S;
            speeds.add(Math.max(0, v));
        }
        rest = speeds.size() - 1;
        return hold(0, restsForS);
    }

    private HardStops hold(double mps, double seconds) {
        for (int i = 0; i < seconds / STEP_S; i++) {
            speeds.add(mps);
        }
        return this;
    }

    double trueEntryMps() {
        return speeds.get(onset);
    }

    double onsetS() {
        return onset * STEP_S;
    }

    double trueDistanceM() {
        double way = 0;
        for (int i = onset; i < rest; i++) {
            way += (speeds.get(i) + speeds.get(i + 1)) / 2 * STEP_S;
        }
        return way;
    }

    /// What both would be from exactly 20 mph.
    static double atTwentyMph(double wayM, double entryMps) {
        return wayM * (8.9408 / entryMps) * (8.9408 / entryMps);
    }

    Channel receiver() {
        double delayS = 0.1 + 0.2 * random.nextDouble();
        double which = random.nextDouble();
        double averagesS = which < 0.3 ? 0 : which < 0.6 ? 0.2 : 0.4;
        lagS = delayS + averagesS / 2;
        var times = Simulated.times(0, speeds.size() * STEP_S, 0.1);
        double[] ahead = Simulated.wander(times.length, 0.05, StrictMath.exp(-0.1 / 0.4), random);
        double[] aside = Simulated.wander(times.length, 0.05, StrictMath.exp(-0.1 / 0.4), random);
        double[] values = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            double mean = 0;
            int over = Math.max(1, (int) (averagesS / STEP_S));
            for (int k = 0; k < over; k++) {
                mean += at(times[i] - delayS - k * STEP_S) / over;
            }
            double along = mean + ahead[i] + 0.07 * random.nextGaussian();
            double across = aside[i] + 0.07 * random.nextGaussian();
            values[i] = Math.sqrt(along * along + across * across);
        }
        return Simulated.channel(ChannelKind.SPEED, times, values);
    }

    private double at(double timeS) {
        return speeds.get(Math.clamp((int) Math.round(timeS / STEP_S), 0, speeds.size() - 1));
    }

    Accelerations accelerometer() {
        double[][] axes = turned();
        double[] bias = {0.15 * random.nextGaussian(), 0.15 * random.nextGaussian(), 0.15 * random.nextGaussian()};
        double scale = 1 + 0.01 * random.nextGaussian();
        double pitchPerMps2 = Math.toRadians(2) / 6 * random.nextDouble();
        var times = Simulated.times(0, speeds.size() * STEP_S - 0.02, 0.01);
        double[][] read = new double[3][times.length];
        double[] last = new double[3];
        double[] pitch = {0, 0};
        for (int i = 0; i < times.length; i++) {
            double a = (at(times[i] + 0.005) - at(times[i] - 0.005)) / 0.01;
            // The fork takes a tenth of a second or so to dive, and swings a little.
            pitch[1] += (-180 * (pitch[0] + pitchPerMps2 * a) - 14 * pitch[1]) * 0.01;
            pitch[0] += pitch[1] * 0.01;
            double[] body = {
                a * Math.cos(pitch[0]) + GRAVITY_MPS2 * Math.sin(-pitch[0]),
                0.2 * Math.sin(1.3 * times[i]) * Math.min(1, at(times[i])),
                GRAVITY_MPS2 * Math.cos(pitch[0])
            };
            double shakes = 0.03 + shakeMps2 * Math.min(1, at(times[i]) / 4);
            for (int axis = 0; axis < 3; axis++) {
                last[axis] = 0.5 * last[axis] + Math.sqrt(0.75) * shakes * random.nextGaussian();
                body[axis] += last[axis];
            }
            for (int axis = 0; axis < 3; axis++) {
                double along = 0;
                for (int k = 0; k < 3; k++) {
                    along += axes[axis][k] * body[k];
                }
                read[axis][i] = Math.clamp(Math.rint((scale * along + bias[axis]) * 100) / 100, -clipMps2, clipMps2);
            }
            if (turnHalfwayDegrees != 0 && i == times.length / 3) {
                double by = Math.toRadians(turnHalfwayDegrees);
                for (double[] axis : axes) {
                    double x = axis[0];
                    axis[0] = Math.cos(by) * x - Math.sin(by) * axis[2];
                    axis[2] = Math.sin(by) * x + Math.cos(by) * axis[2];
                }
            }
        }
        return new Accelerations(
                Simulated.channel(ChannelKind.ACCELERATION_X, times, read[0]),
                Simulated.channel(ChannelKind.ACCELERATION_Y, times, read[1]),
                Simulated.channel(ChannelKind.ACCELERATION_Z, times, read[2]));
    }

    /// Three axes at right angles, any way round.
    private double[][] turned() {
        double[] a = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
        double[] b = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
        double[] first = unit(a);
        double along = first[0] * b[0] + first[1] * b[1] + first[2] * b[2];
        double[] second =
                unit(new double[] {b[0] - along * first[0], b[1] - along * first[1], b[2] - along * first[2]});
        double[] third = {
            first[1] * second[2] - first[2] * second[1],
            first[2] * second[0] - first[0] * second[2],
            first[0] * second[1] - first[1] * second[0]
        };
        return new double[][] {first, second, third};
    }

    private static double[] unit(double[] a) {
        double length = Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
        return new double[] {a[0] / length, a[1] / length, a[2] / length};
    }
}
