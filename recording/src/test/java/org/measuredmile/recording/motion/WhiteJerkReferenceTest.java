package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

/// The written-out smoother against the filtering library's recursion by Rauch, Tung and Striebel on the same process,
/// with matrices: the truth of every value here.
class WhiteJerkReferenceTest {
    private record Riding(double density) implements Smoother.Process {
        @Override
        public RealMatrix transition(double t) {
            return new Array2DRowRealMatrix(new double[][] {{1, t, t * t / 2}, {0, 1, t}, {0, 0, 1}});
        }

        @Override
        public RealMatrix noise(double t) {
            double[][] shape = {
                {Math.pow(t, 5) / 20, Math.pow(t, 4) / 8, Math.pow(t, 3) / 6},
                {Math.pow(t, 4) / 8, Math.pow(t, 3) / 3, t * t / 2},
                {Math.pow(t, 3) / 6, t * t / 2, t}
            };
            return MatrixUtils.createRealMatrix(shape).scalarMultiply(density);
        }

        @Override
        public double[] sampled() {
            return new double[] {0, 1, 0};
        }
    }

    @ParameterizedTest
    @CsvSource({"1, 2, 0.1, 1", "2, 40, 0.1, 1", "3, 40, 1, 0.05", "4, 300, 0.04, 1", "5, 300, 0.2, 20"})
    void givesTheStatesOfTheLibrarysRecursion(long seed, int count, double stepS, double density) {
        var random = new Random(seed);
        double[] times = new double[count];
        double[] values = new double[count];
        double sigma = 0.05 + 0.1 * random.nextDouble();
        for (int i = 0; i < count; i++) {
            // Uneven steps, and gaps of up to five of them.
            double step = stepS * (random.nextInt(10) == 0 ? 1 + 4 * random.nextDouble() : 0.7 + random.nextDouble());
            times[i] = i == 0 ? 12.5 : times[i - 1] + step;
            values[i] = 6 + 3 * Math.sin(times[i] / 4) + sigma * random.nextGaussian();
        }
        var channel = new Channel(ChannelKind.SPEED, "v", "m/s", new Channel.Series(times, values));
        var prior = new Smoother.Prior(
                new double[] {0, values[0], 0.3}, new double[][] {{1e-4, 0, 0}, {0, 1.04, 0.1}, {0, 0.1, 25}});
        var library = Smoother.smooth(new Riding(density), prior, new Smoother.Samples(times, values, sigma * sigma))
                .smoothed();
        var ours = WhiteJerk.smoothed(channel, sigma, density, prior);
        assertThat(ours).hasSize(count);
        for (int i = 0; i < count; i++) {
            var truth = library.get(i);
            assertThat(ours.get(i).timeS()).isEqualTo(times[i]);
            assertThat(ours.get(i).distanceM()).isCloseTo(truth.getState().getEntry(0), within(1e-7));
            assertThat(ours.get(i).speedMps()).isCloseTo(truth.getState().getEntry(1), within(1e-8));
            assertThat(ours.get(i).accelerationMps2())
                    .isCloseTo(truth.getState().getEntry(2), within(1e-7));
            assertThat(ours.get(i).distanceSd())
                    .isCloseTo(Math.sqrt(truth.getCovariance().getEntry(0, 0)), within(1e-7));
            assertThat(ours.get(i).speedSd())
                    .isCloseTo(Math.sqrt(truth.getCovariance().getEntry(1, 1)), within(1e-8));
        }
    }
}
