package org.measuredmile.quantity.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SeedPropertyTest {
    private static final int DRAWS = 200_000;

    @ParameterizedTest
    @ValueSource(longs = {0, 1, 20260412, Long.MIN_VALUE})
    void theSameSeedAndIndexGiveTheSameDraws(long value) {
        var seed = new Seed(value);
        assertThat(seed.stream(3).doubles(50).toArray())
                .isEqualTo(new Seed(value).stream(3).doubles(50).toArray());
        assertThat(Draw.normal(seed.stream(3))).isEqualTo(Draw.normal(seed.stream(3)));
    }

    @Test
    void streamsAndChildrenDiffer() {
        var seed = new Seed(7);
        long[] firsts = LongStream.range(0, 1000)
                .map(index -> seed.stream(index).nextLong())
                .distinct()
                .toArray();
        assertThat(firsts).hasSize(1000);
        assertThat(seed.child("wind")).isNotEqualTo(seed.child("rider")).isEqualTo(new Seed(7).child("wind"));
        assertThat(seed.child("ab")).isNotEqualTo(seed.child("ba"));
    }

    @Test
    void drawsHaveTheMomentsOfTheirDistributions() {
        // Standard deviations by JCGM 100:2008, 4.3: a/√3, a/√6, a/√2; of t with ν degrees of freedom √(ν/(ν −
        // 2)).
        assertMoments(random -> Draw.normal(random, 2, 3), 2, 3);
        assertMoments(random -> Draw.rectangular(random, -1, 3), 1, 2 / Math.sqrt(3));
        assertMoments(random -> Draw.triangular(random, -1, 3), 1, 2 / Math.sqrt(6));
        assertMoments(random -> Draw.arcsine(random, -1, 3), 1, 2 / Math.sqrt(2));
        assertMoments(random -> Draw.studentT(random, 12), 0, Math.sqrt(12.0 / 10));
        assertMoments(random -> Draw.studentT(random, Double.POSITIVE_INFINITY), 0, 1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 4.5, 30})
    void ninetyFivePerCentOfTDrawsLieWithinTheFactor(double degrees) {
        var random = new Seed(11).stream(1);
        double factor = StudentT.twoSided95(degrees);
        int inside = 0;
        for (int i = 0; i < DRAWS; i++) {
            inside += Math.abs(Draw.studentT(random, degrees)) <= factor ? 1 : 0;
        }
        // four standard errors of a share of 0.95 in 200 000
        assertThat((double) inside / DRAWS).isCloseTo(0.95, within(0.002));
    }

    private static void assertMoments(ToDoubleFunction<RandomGenerator> draw, double mean, double deviation) {
        var random = new Seed(42).stream(0);
        var values = new double[DRAWS];
        for (int i = 0; i < DRAWS; i++) {
            values[i] = draw.applyAsDouble(random);
        }
        var sample = Sample.of(values);
        // five standard errors
        assertThat(sample.mean()).isCloseTo(mean, within(5 * deviation / Math.sqrt(DRAWS)));
        assertThat(sample.standardDeviation()).isCloseTo(deviation, within(0.01 * deviation));
    }
}
