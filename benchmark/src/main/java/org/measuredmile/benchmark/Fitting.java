package org.measuredmile.benchmark;

import java.util.Arrays;
import java.util.List;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.motion.ChangePoints;
import org.measuredmile.recording.motion.RunningSums;
import org.measuredmile.recording.motion.SecondMeans.Span;
import org.measuredmile.recording.motion.Smoother;
import org.measuredmile.roadload.CoastDown;
import org.measuredmile.trial.braking.BrakedStop;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/// The smoother over three hours at 25 Hz, the fits of one stop and of one pair of coasts, and the division of three
/// hours into pieces of constant speed: what `peer_fits.py` does with numpy and scipy.
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(java.util.concurrent.TimeUnit.MILLISECONDS)
public class Fitting {
    private Channel ride = new Channel(ChannelKind.SPEED, "", "", new Channel.Series(new double[0], new double[0]));
    private List<CoastDown.Run> coasts = List.of();
    private double[] means = {};
    private double penalty;

    /// Filled by [#write] before anything is measured.
    private BrakedStop[] stops = {};

    @Setup
    public void write() {
        ride = FitInputs.ride();
        stops = new BrakedStop[] {BrakedStop.firstOf(ride)};
        coasts = FitInputs.coasts();
        means = FitInputs.means();
        penalty = FitInputs.penalty(means);
    }

    @Benchmark
    public List<Smoother.State> smooth(Cpu cpu) throws Exception {
        return cpu.of(() -> smoothed(ride));
    }

    @Benchmark
    public double[] stop(Cpu cpu) throws Exception {
        return cpu.of(stops[0]::fitted);
    }

    @Benchmark
    public double[] coast(Cpu cpu) throws Exception {
        return cpu.of(() -> coasted(coasts));
    }

    @Benchmark
    public double[] pieces(Cpu cpu) throws Exception {
        return cpu.of(() -> ends(means, penalty));
    }

    static List<Smoother.State> smoothed(Channel ride) {
        return Smoother.between(ride, FitInputs.RIDE_SIGMA_MPS, FitInputs.JERK_DENSITY);
    }

    /// The four common parameters, then their standard uncertainties.
    static double[] coasted(List<CoastDown.Run> coasts) {
        var outcome = CoastDown.fit(coasts, FitInputs.COASTING, FitInputs.BEFORE, FitInputs.COAST_SIGMA_MPS);
        if (!(outcome instanceof CoastDown.Outcome.Settled(CoastDown.Found found))) {
            throw new IllegalStateException("the coasts' fit did not settle");
        }
        double[] all = {
            found.load().rollingCoefficient(), found.load().dragAreaM2(), found.grade(), found.headWindMps(), 0, 0, 0, 0
        };
        for (int i = 0; i < 4; i++) {
            all[4 + i] = Math.sqrt(found.covariance()[i][i]);
        }
        return all;
    }

    /// Where each piece ends.
    static double[] ends(double[] means, double penalty) {
        var sums = new RunningSums(means);
        return Arrays.stream(ChangePoints.of(new Span(0, means.length), sums::constantCost, penalty, 1)
                        .toArray(Span[]::new))
                .mapToDouble(Span::to)
                .toArray();
    }
}
