package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.filtering.kalman.KalmanSmoother;
import org.hipparchus.filtering.kalman.Measurement;
import org.hipparchus.filtering.kalman.ProcessEstimate;
import org.hipparchus.filtering.kalman.linear.LinearEvolution;
import org.hipparchus.filtering.kalman.linear.LinearKalmanFilter;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposer;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.measuredmile.recording.Channel;

/// The fixed-interval smoother on distance, speed and acceleration, for stretches between events.
///
/// Shape: a linear process and scalar samples in; one state with covariance a sample out. [#between] is the one for
/// riding: speed samples in, [State] out, by [WhiteJerk]. Never run it across a brake application, a start or a
/// cut-off: those are
/// kinks, and a smoother rounds them.
/// Source: Rauch, Tung and Striebel (1965), AIAA Journal 3(8); for any process the recursion is the filtering
/// library's.
public final class Smoother {
    private Smoother() {}

    /// How a state moves from one sample to the next, and what of it is sampled.
    public interface Process {
        /// State transition over a step of `stepS` seconds.
        RealMatrix transition(double stepS);

        /// Covariance that a step adds.
        RealMatrix noise(double stepS);

        /// The row that makes a sample of a state.
        double[] sampled();
    }

    /// Scalar samples at increasing times, with the standard deviation squared of each.
    public record Samples(double[] timesS, double[] values, double variance) {}

    /// What is known before the first sample.
    public record Prior(double[] mean, double[][] covariance) {}

    /// Filtered and smoothed states, one a sample.
    public record Smoothed(List<ProcessEstimate> filtered, List<ProcessEstimate> smoothed) {}

    /// Distance, speed and acceleration at a time.
    ///
    /// Unit: s, m, m/s, m/s²; distance from the first sample; `speedSd` and `distanceSd` are
    /// standard uncertainties.
    public record State(
            double timeS,
            double distanceM,
            double speedMps,
            double accelerationMps2,
            double distanceSd,
            double speedSd) {}

    private record Sample(double getTime, RealVector getValue, RealMatrix getCovariance) implements Measurement {
        @Override
        public double getTime() {
            return getTime;
        }

        @Override
        public RealVector getValue() {
            return getValue;
        }

        @Override
        public RealMatrix getCovariance() {
            return getCovariance;
        }
    }

    /// Filters forwards, smooths backwards.
    public static Smoothed smooth(Process process, Prior prior, Samples samples) {
        var decomposer = new CholeskyDecomposer(1e-12, 1e-30);
        double[] before = {samples.timesS()[0]};
        var row = new Array2DRowRealMatrix(new double[][] {process.sampled()});
        var filter = new LinearKalmanFilter<Sample>(
                decomposer,
                sample -> {
                    double step = sample.getTime() - before[0];
                    before[0] = sample.getTime();
                    int size = process.sampled().length;
                    return new LinearEvolution(
                            process.transition(step),
                            new Array2DRowRealMatrix(size, 1),
                            new ArrayRealVector(1),
                            process.noise(step),
                            row);
                },
                new ProcessEstimate(
                        before[0], new ArrayRealVector(prior.mean()), new Array2DRowRealMatrix(prior.covariance())));
        var backwards = new KalmanSmoother(decomposer);
        filter.setObserver(backwards);
        var variance = new Array2DRowRealMatrix(new double[][] {{samples.variance()}});
        var filtered = new ArrayList<ProcessEstimate>();
        for (int i = 0; i < samples.timesS().length; i++) {
            filtered.add(filter.estimationStep(new Sample(
                    samples.timesS()[i], new ArrayRealVector(new double[] {samples.values()[i]}), variance)));
        }
        var smoothed = backwards.backwardsSmooth();
        int extra = smoothed.size() - filtered.size();
        return new Smoothed(List.copyOf(filtered), List.copyOf(smoothed.subList(extra, smoothed.size())));
    }

    /// Smooths a stretch of riding between events.
    ///
    /// @param jerkDensity power density of the white jerk, m²/s⁵; 1 leaves a hard stop a hard stop
    public static List<State> between(Channel speed, double sigmaMps, double jerkDensity) {
        if (speed.size() < 2) {
            return List.of();
        }
        var prior = new Prior(new double[] {0, speed.value(0), 0}, new double[][] {
            {1e-12, 0, 0}, {0, 4 * sigmaMps * sigmaMps + 1, 0}, {0, 0, 25}
        });
        return WhiteJerk.smoothed(speed, sigmaMps, jerkDensity, prior);
    }
}
