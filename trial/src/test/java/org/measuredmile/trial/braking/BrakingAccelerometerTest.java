package org.measuredmile.trial.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.trial.Outcome;

/// Stops that an accelerometer saw beside the receiver, in one recording or in two: built without any formula of the
/// reduction.
class BrakingAccelerometerTest {
    private static final double STEP_S = 0.001;

    /// 4 s of rest, up to 20 mph, 5 s steady, a stop of 5.5 m/s² after 0.2 s of build-up, and 3 s of rest.
    private static double[] speeds() {
        var all = new ArrayList<Double>();
        for (int i = 0; i < 4000; i++) {
            all.add(0.0);
        }
        for (double v = 0; v < 8.94; v += 1.3 * STEP_S) {
            all.add(v);
        }
        for (int i = 0; i < 5000; i++) {
            all.add(8.94);
        }
        double v = 8.94;
        for (int i = 0; v > 0; i++) {
            v -= 5.5 * Math.min(1, (i + 0.5) * STEP_S / 0.2) * STEP_S;
            all.add(Math.max(0, v));
        }
        for (int i = 0; i < 3000; i++) {
            all.add(0.0);
        }
        return all.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double truthM() {
        double way = 0;
        double[] all = speeds();
        int last = all.length - 1;
        while (all[last] < 8.94 - 1e-12) {
            way += all[last--] * STEP_S;
        }
        return way;
    }

    private static Channel speed(double[] truth) {
        var random = new Random(4);
        double[] times = times(truth, 0.1);
        double[] values = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            values[i] = Math.abs(at(truth, times[i] - 0.2) + 0.06 * random.nextGaussian());
        }
        return new Channel(ChannelKind.SPEED, "speed", "m/s", new Channel.Series(times, values));
    }

    private static List<Channel> accelerations(double[] truth, double limitMps2) {
        var random = new Random(5);
        double[] times = times(truth, 0.01);
        double[][] values = new double[3][times.length];
        for (int i = 0; i < times.length; i++) {
            double ahead = (at(truth, times[i] + 0.005) - at(truth, times[i] - 0.005)) / 0.01;
            double shakes = at(truth, times[i]) > 0.1 ? 0.4 : 0.02;
            values[0][i] = Math.clamp(-ahead + 0.1 + shakes * random.nextGaussian(), -limitMps2, limitMps2);
            values[1][i] = shakes * random.nextGaussian();
            values[2][i] = 9.8 + shakes * random.nextGaussian();
        }
        ChannelKind[] kinds = {ChannelKind.ACCELERATION_X, ChannelKind.ACCELERATION_Y, ChannelKind.ACCELERATION_Z};
        var all = new ArrayList<Channel>();
        for (int axis = 0; axis < 3; axis++) {
            all.add(new Channel(kinds[axis], kinds[axis].id(), "m/s²", new Channel.Series(times, values[axis])));
        }
        return all;
    }

    private static double at(double[] truth, double timeS) {
        return truth[Math.clamp(Math.round(timeS / STEP_S), 0, truth.length - 1)];
    }

    private static double[] times(double[] truth, double stepS) {
        double[] times = new double[(int) ((truth.length - 30) * STEP_S / stepS)];
        Arrays.setAll(times, i -> i * stepS);
        return times;
    }

    private static Recording recording(String name, Instant start, List<Channel> channels) {
        double[] all = channels.stream()
                .flatMapToDouble(one -> Arrays.stream(one.timesS()))
                .sorted()
                .distinct()
                .toArray();
        return new Recording(
                name,
                Format.DELIMITED,
                "",
                Optional.of(start),
                true,
                all.length,
                all,
                List.of(new Segment(all[0], all[all.length - 1])),
                channels,
                new TreeMap<>(),
                List.of());
    }

    private static Outcome together(double limitMps2) {
        double[] truth = speeds();
        var channels = new ArrayList<Channel>();
        channels.add(speed(truth));
        channels.addAll(accelerations(truth, limitMps2));
        return BrakingDays.day()
                .recording(recording("both.csv", Instant.EPOCH, channels))
                .reduce();
    }

    private static double widthM(Outcome outcome) {
        return outcome.runs()
                .getFirst()
                .value("braking.braking-distance")
                .orElseThrow()
                .standardUncertainty();
    }

    @Test
    void bothInOneRecordingAreSharperThanSatelliteSpeedAloneAndNamed() {
        double[] truth = speeds();
        var alone = BrakingDays.day()
                .recording(recording("alone.csv", Instant.EPOCH, List.of(speed(truth))))
                .reduce();
        var both = together(40);
        var way = both.runs().getFirst().value("braking.braking-distance").orElseThrow();
        assertThat(way.value()).isCloseTo(truthM(), within(3 * way.standardUncertainty()));
        assertThat(widthM(both)).isLessThan(0.75 * widthM(alone));
        var figure = both.figures().getFirst();
        assertThat(figure.findings())
                .anyMatch(one -> one.code().equals("speed-source")
                        && one.message().contains("satellite speed and accelerometer"));
        assertThat(figure.budget())
                .anyMatch(one -> one.input().equals("accelerometer's scale and pitch"))
                .noneMatch(one -> one.input().contains("build-up"));
        assertThat(both.runs().getFirst().trace().orElseThrow().lines())
                .anyMatch(line -> line.title().equals("satellite speed and accelerometer"));
    }

    @Test
    void anAccelerometerInARecordingOfItsOwnIsLaidBesideByTheClock() {
        double[] truth = speeds();
        var outcome = BrakingDays.day()
                .recording(recording("speed.csv", Instant.EPOCH, List.of(speed(truth))))
                .recording(recording("shakes.csv", Instant.EPOCH.plusMillis(60), accelerations(truth, 40)))
                .reduce();
        var way = outcome.runs().getFirst().value("braking.braking-distance").orElseThrow();
        assertThat(way.value()).isCloseTo(truthM(), within(3 * way.standardUncertainty()));
        assertThat(outcome.figures().getFirst().findings())
                .anyMatch(one -> one.code().equals("speed-source"));
    }

    @Test
    void oneThatIsSaturatedIsNotUsedAndSaysWhy() {
        var outcome = together(4);
        assertThat(outcome.findings())
                .anySatisfy(one -> assertThat(one.message()).contains("satellite speed alone", "saturated", "4.00"));
        assertThat(outcome.figures()).isNotEmpty();
    }
}
