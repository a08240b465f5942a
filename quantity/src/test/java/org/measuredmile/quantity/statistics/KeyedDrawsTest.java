package org.measuredmile.quantity.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/// Draws held against the statistics library's distribution functions. Bounds: the Kolmogorov–Smirnov distance of n
/// draws exceeds 1.95/√n once in a thousand times (Massey, JASA 46 (1951) 68–78); the seed is fixed.
class KeyedDrawsTest {
    private static final int DRAWS = 200_000;
    private static final double BOUND = 1.95 / Math.sqrt(DRAWS);
    private static final Seed SEED = new Seed(31).child("draws");

    private interface Distribution {
        double below(double value);
    }

    private static double distance(double[] draws, Distribution distribution) {
        Arrays.sort(draws);
        double largest = 0;
        for (int i = 0; i < draws.length; i++) {
            double below = distribution.below(draws[i]);
            largest = Math.max(largest, Math.max(below - (double) i / draws.length, (i + 1.0) / draws.length - below));
        }
        return largest;
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 1, 77})
    void normalDrawsFollowTheNormalDistribution(long key) {
        var stream = new KeyedDraws(SEED, key);
        double[] draws = new double[DRAWS];
        Arrays.setAll(draws, i -> stream.normal());
        assertThat(distance(draws, new NormalDistribution()::cumulativeProbability))
                .isLessThan(BOUND);
    }

    /// Beyond 3.442620 the ziggurat draws by its tail: 2 (1 − Φ) = 0.000576 of all draws, within four of its
    /// standard deviations.
    @Test
    void theTailHoldsItsShare() {
        var stream = new KeyedDraws(SEED, 5);
        int draws = 2_000_000;
        int beyond = 0;
        for (int i = 0; i < draws; i++) {
            beyond += Math.abs(stream.normal()) > 3.442619855899 ? 1 : 0;
        }
        double share = 2 * (1 - new NormalDistribution().cumulativeProbability(3.442619855899));
        assertThat((double) beyond / draws).isCloseTo(share, within(4 * Math.sqrt(share / draws)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 1.5, 2, 4.7, 30})
    void scaledDrawsFollowStudentsDistribution(double degreesOfFreedom) {
        double[] draws = new double[DRAWS];
        new KeyedDraws(SEED, 9).studentT(draws, 0, DRAWS, new KeyedDraws.Scaled(6, 0.2, degreesOfFreedom));
        var t = new TDistribution(degreesOfFreedom);
        assertThat(distance(draws, value -> t.cumulativeProbability((value - 6) / 0.2)))
                .isLessThan(BOUND);
    }

    @Test
    void aKeyAloneDecidesItsStream() {
        var first = new KeyedDraws(SEED, 3);
        var again = new KeyedDraws(SEED, 3);
        var other = new KeyedDraws(SEED, 4);
        double product = 0;
        for (int i = 0; i < 10_000; i++) {
            double one = first.normal();
            assertThat(again.normal()).isEqualTo(one);
            product += one * other.normal();
        }
        // The mean product of 10,000 unrelated pairs is 0 with standard deviation 0.01.
        assertThat(product / 10_000).isCloseTo(0, within(0.04));
    }
}
