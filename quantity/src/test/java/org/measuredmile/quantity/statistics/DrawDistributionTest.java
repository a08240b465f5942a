package org.measuredmile.quantity.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import org.hipparchus.distribution.RealDistribution;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/// Draws against the distribution functions of the statistics library, over their whole width: the largest distance
/// between both stays below what chance exceeds once in a thousand, 1.95/√n (Smirnov's limit for many draws, Annals of
/// Mathematical Statistics 19 (1948) 279-281, from memory).
class DrawDistributionTest {
    private static final int DRAWS = 100_000;
    private static final double LIMIT = 1.95 / Math.sqrt(DRAWS);

    private static double distance(ToDoubleFunction<RandomGenerator> draw, DoubleUnaryOperator distribution) {
        var random = new Seed(20_310_514).stream(5);
        double[] drawn = new double[DRAWS];
        for (int i = 0; i < DRAWS; i++) {
            drawn[i] = draw.applyAsDouble(random);
        }
        Arrays.sort(drawn);
        double most = 0;
        for (int i = 0; i < DRAWS; i++) {
            double at = distribution.applyAsDouble(drawn[i]);
            most = Math.max(most, Math.max(at - (double) i / DRAWS, (i + 1.0) / DRAWS - at));
        }
        return most;
    }

    private static double distance(ToDoubleFunction<RandomGenerator> draw, RealDistribution distribution) {
        return distance(draw, distribution::cumulativeProbability);
    }

    @Test
    void normalDrawsAreNormal() {
        assertThat(distance(Draw::normal, new NormalDistribution())).isLessThan(LIMIT);
        assertThat(distance(random -> Draw.normal(random, -2, 0.3), new NormalDistribution(-2, 0.3)))
                .isLessThan(LIMIT);
    }

    /// Below two degrees of freedom another branch of the method is taken.
    @ParameterizedTest
    @ValueSource(doubles = {0.7, 1, 1.5, 2, 3, 7.5, 40})
    void chiSquaredDrawsAreChiSquared(double degreesOfFreedom) {
        assertThat(distance(
                        random -> Draw.chiSquared(random, degreesOfFreedom),
                        new ChiSquaredDistribution(degreesOfFreedom)))
                .isLessThan(LIMIT);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 2.5, 9})
    void studentDrawsAreStudents(double degreesOfFreedom) {
        assertThat(distance(random -> Draw.studentT(random, degreesOfFreedom), new TDistribution(degreesOfFreedom)))
                .isLessThan(LIMIT);
    }

    /// Distribution functions of JCGM 101:2008, 6.4.2 (rectangular), 6.4.5 (triangular), 6.4.6 (arcsine),
    /// integrated.
    @Test
    void boundedDrawsFollowTheirShapes() {
        assertThat(distance(random -> Draw.rectangular(random, 2, 6), x -> (x - 2) / 4))
                .isLessThan(LIMIT);
        assertThat(distance(
                        random -> Draw.triangular(random, 2, 6),
                        x -> x < 4 ? (x - 2) * (x - 2) / 8 : 1 - (6 - x) * (6 - x) / 8))
                .isLessThan(LIMIT);
        assertThat(distance(random -> Draw.arcsine(random, 2, 6), x -> 0.5 + Math.asin((x - 4) / 2) / Math.PI))
                .isLessThan(LIMIT);
    }

    @Test
    void noDegreesOfFreedomAreRefused() {
        var random = new Seed(1).stream(0);
        assertThatIllegalArgumentException().isThrownBy(() -> Draw.chiSquared(random, 0));
    }
}
