package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

class SmootherTest {
    /// Position and speed, driven by white acceleration of density 0.5 m²/s³.
    private static final class ConstantSpeed implements Smoother.Process {
        @Override
        public RealMatrix transition(double stepS) {
            return new Array2DRowRealMatrix(new double[][] {{1, stepS}, {0, 1}});
        }

        @Override
        public RealMatrix noise(double t) {
            return MatrixUtils.createRealMatrix(new double[][] {{t * t * t / 3, t * t / 2}, {t * t / 2, t}})
                    .scalarMultiply(0.5);
        }

        @Override
        public double[] sampled() {
            return new double[] {1, 0};
        }
    }

    private static final double[] TIMES = {0, 1, 2, 3, 4.5, 5, 6};
    private static final double[] POSITIONS = {0.3, 5.1, 9.8, 15.6, 22.4, 24.9, 30.2};
    private static final double VARIANCE = 0.16;

    private static Smoother.Smoothed sevenEpochs() {
        return Smoother.smooth(
                new ConstantSpeed(),
                new Smoother.Prior(new double[] {0, 5}, new double[][] {{1, 0}, {0, 4}}),
                new Smoother.Samples(TIMES, POSITIONS, VARIANCE));
    }

    /// Expected values: own computation beside the batch solution, by another program in another language, rows
    /// P-18 to P-20 of its table; the next test repeats the batch solution here.
    @Test
    void smoothsSevenEpochsToTheValuesComputedElsewhere() {
        var smoothed = sevenEpochs().smoothed();
        assertThat(smoothed.get(0).getState().getEntry(0)).isCloseTo(0.220474388, within(1e-8));
        assertThat(smoothed.get(0).getState().getEntry(1)).isCloseTo(4.856480775, within(1e-8));
        assertThat(Math.sqrt(smoothed.get(0).getCovariance().getEntry(0, 0))).isCloseTo(0.342370, within(1e-6));
        assertThat(smoothed.get(3).getState().getEntry(0)).isCloseTo(15.219544384, within(1e-8));
        assertThat(smoothed.get(3).getState().getEntry(1)).isCloseTo(5.033159278, within(1e-8));
        assertThat(smoothed.get(6).getState().getEntry(0)).isCloseTo(30.112410562, within(1e-8));
        assertThat(Math.sqrt(smoothed.get(6).getCovariance().getEntry(1, 1))).isCloseTo(0.595276, within(1e-6));
    }

    /// A smoother is the least-squares solution of prior, dynamics and samples, all at once.
    @Test
    void agreesWithTheBatchLeastSquaresSolution() {
        var process = new ConstantSpeed();
        int states = 2 * TIMES.length;
        var rows = new Array2DRowRealMatrix(2 + 2 * (TIMES.length - 1) + TIMES.length, states);
        double[] right = new double[rows.getRowDimension()];
        rows.setEntry(0, 0, 1);
        rows.setEntry(1, 1, 0.5);
        right[1] = 2.5;
        int row = 2;
        for (int i = 1; i < TIMES.length; i++) {
            double step = TIMES[i] - TIMES[i - 1];
            var whitened =
                    MatrixUtils.inverse(new org.hipparchus.linear.CholeskyDecomposition(process.noise(step)).getL());
            var moved = whitened.multiply(process.transition(step)).scalarMultiply(-1);
            rows.setSubMatrix(moved.getData(), row, 2 * (i - 1));
            rows.setSubMatrix(whitened.getData(), row, 2 * i);
            row += 2;
        }
        for (int i = 0; i < TIMES.length; i++) {
            rows.setEntry(row, 2 * i, 1 / Math.sqrt(VARIANCE));
            right[row++] = POSITIONS[i] / Math.sqrt(VARIANCE);
        }
        double[] batch = new QRDecomposition(rows)
                .getSolver()
                .solve(MatrixUtils.createRealVector(right))
                .toArray();
        var smoothed = sevenEpochs().smoothed();
        for (int i = 0; i < TIMES.length; i++) {
            assertThat(smoothed.get(i).getState().getEntry(0)).isCloseTo(batch[2 * i], within(1e-10));
            assertThat(smoothed.get(i).getState().getEntry(1)).isCloseTo(batch[2 * i + 1], within(1e-10));
        }
    }

    @Test
    void isNeverLessSureThanTheFilterAndEndsWhereItEnds() {
        var both = sevenEpochs();
        for (int i = 0; i < TIMES.length; i++) {
            for (int k = 0; k < 2; k++) {
                assertThat(both.smoothed().get(i).getCovariance().getEntry(k, k))
                        .isLessThanOrEqualTo(
                                both.filtered().get(i).getCovariance().getEntry(k, k) + 1e-12);
            }
        }
        assertThat(both.smoothed().getLast().getState().toArray())
                .containsExactly(both.filtered().getLast().getState().toArray(), within(1e-12));
    }

    @Test
    void findsSpeedAndDistanceOfASteadyRideBetterThanItsSamples() {
        var random = new Random(7);
        double[] times = new double[200];
        double[] values = new double[200];
        for (int i = 0; i < times.length; i++) {
            times[i] = i * 0.1;
            values[i] = 6 + 0.05 * times[i] + 0.1 * random.nextGaussian();
        }
        var channel = new Channel(ChannelKind.SPEED, "v", "m/s", new Channel.Series(times, values));
        var states = Smoother.between(channel, 0.1, 0.001);
        double worst = 0;
        for (int i = 0; i < times.length; i++) {
            worst = Math.max(worst, Math.abs(states.get(i).speedMps() - (6 + 0.05 * times[i])));
        }
        double length = 6 * 19.9 + 0.025 * 19.9 * 19.9;
        assertThat(worst).isLessThan(0.15);
        assertThat(states.getLast().distanceM())
                .isCloseTo(length, within(4 * states.getLast().distanceSd()));
    }
}
