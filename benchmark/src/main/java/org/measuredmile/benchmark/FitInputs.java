package org.measuredmile.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.measuredmile.demo.ride.ReceiverModel.Epoch;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.motion.ChangePoints;
import org.measuredmile.recording.motion.ModelFit.Parameter;
import org.measuredmile.recording.motion.SecondMeans;
import org.measuredmile.roadload.CoastDown;
import org.measuredmile.roadload.Coasting;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.trial.braking.BrakedStop;

/// What is smoothed, fitted and divided here and elsewhere alike: invented, the same each time, and written to files.
///
/// Shape: three hours of speed at 25 Hz; the stop that the ride begins with; a coast-down out and back at 10 Hz that
/// ends well above rest; the
/// ride's means over seconds.
final class FitInputs {
    static final double RIDE_SIGMA_MPS = 0.08;
    static final double JERK_DENSITY = 1;
    static final double COAST_SIGMA_MPS = 0.07;
    static final CoastDown.Before BEFORE = CoastDown.Before.USUAL;
    static final Setting COASTING = new Setting(104, 1.8, 1.2, 9.81);

    private static final double HOURS = 3;
    private static final double RATE_HZ = 25;
    private static final RoadLoad LOAD = new RoadLoad(0.0085, 0.62);
    private static final Coasting.Along ROAD = new Coasting.Along(0.0008, 0.9);
    private static final double COAST_S = 38;
    private static final double COAST_STEP_S = 0.1;
    private static final long SEED = 20_310_515;

    private FitInputs() {}

    static Channel ride() {
        var epochs = Rides.epochs(HOURS, RATE_HZ).stream().filter(Epoch::hasFix).toList();
        double[] times = epochs.stream().mapToDouble(Epoch::timeS).toArray();
        double[] speeds = epochs.stream().mapToDouble(Epoch::speedMps).toArray();
        return new Channel(ChannelKind.SPEED, "speed", "m/s", new Channel.Series(times, speeds));
    }

    static List<CoastDown.Run> coasts() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(SEED);
        return List.of(coast(true, 9.9, random), coast(false, 10.2, random));
    }

    private static CoastDown.Run coast(boolean out, double fromMps, RandomGenerator random) {
        double[] times = new double[(int) Math.round(COAST_S / COAST_STEP_S)];
        for (int i = 0; i < times.length; i++) {
            times[i] = i * COAST_STEP_S;
        }
        double[] speeds = Coasting.speedsMps(LOAD, COASTING, out ? ROAD : ROAD.back(), fromMps, times, COAST_STEP_S);
        for (int i = 0; i < speeds.length; i++) {
            speeds[i] += COAST_SIGMA_MPS * random.nextGaussian();
        }
        return new CoastDown.Run(out, times, speeds);
    }

    /// The means of the ride's whole seconds.
    static double[] means() {
        return Arrays.stream(SecondMeans.of(ride()).speedMps())
                .limit(Math.round(HOURS * 3600))
                .toArray();
    }

    static double penalty(double[] means) {
        return new ChangePoints.Wander(0.15, 4).penalty(means.length, 1);
    }

    /// Writes everything as text, a row of numbers each line.
    static void write(Path folder) throws IOException {
        Files.createDirectories(folder);
        var ride = ride();
        rows(folder.resolve("ride.txt"), columns(ride));
        row(folder.resolve("ride-noise.txt"), RIDE_SIGMA_MPS, JERK_DENSITY);
        var stop = BrakedStop.firstOf(ride);
        rows(folder.resolve("stop.txt"), columns(stop.samples()));
        row(folder.resolve("stop-noise.txt"), stop.sigmaMps(), stop.restMps());
        rows(folder.resolve("stop-parameters.txt"), parameters(stop.parameters()));
        var coasts = new ArrayList<double[]>();
        for (var run : coasts()) {
            for (int i = 0; i < run.timesS().length; i++) {
                coasts.add(new double[] {run.out() ? 0 : 1, run.timesS()[i], run.speedsMps()[i]});
            }
        }
        rows(folder.resolve("coast.txt"), coasts);
        row(
                folder.resolve("coast-setting.txt"),
                COASTING.massKg(),
                COASTING.turningKg(),
                COASTING.airKgPerM3(),
                COASTING.gravityMps2());
        row(folder.resolve("coast-noise.txt"), COAST_SIGMA_MPS);
        rows(folder.resolve("coast-parameters.txt"), parameters(CoastDown.parameters(coasts(), BEFORE)));
        double[] means = means();
        var seconds = new ArrayList<double[]>();
        for (double mean : means) {
            seconds.add(new double[] {mean});
        }
        rows(folder.resolve("means.txt"), seconds);
        row(folder.resolve("means-penalty.txt"), penalty(means));
    }

    private static List<double[]> columns(Channel channel) {
        var rows = new ArrayList<double[]>();
        for (int i = 0; i < channel.size(); i++) {
            rows.add(new double[] {channel.timeS(i), channel.value(i)});
        }
        return rows;
    }

    private static List<double[]> parameters(List<Parameter> parameters) {
        return parameters.stream()
                .map(one -> new double[] {one.start(), one.priorMean(), one.priorSd(), one.low(), one.high()})
                .toList();
    }

    private static void row(Path to, double... values) throws IOException {
        rows(to, List.of(values));
    }

    private static void rows(Path to, List<double[]> rows) throws IOException {
        var text = new StringBuilder();
        for (double[] row : rows) {
            for (int i = 0; i < row.length; i++) {
                String value = Double.isInfinite(row[i]) ? "inf" : Double.toString(row[i]);
                text.append(i == 0 ? "" : " ").append(value);
            }
            text.append('\n');
        }
        Files.writeString(to, text);
    }
}
