package org.measuredmile.quantity.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatNoException;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.budget.MonteCarlo;

/// The ends of what is valid, each from both sides, and vectors worked by hand.
class LimitsReferenceTest {
    /// 3, 4 and 0 beside 1, 0 and 0; and beside the direction of all ones, whose mean of 7/3 goes: by hand.
    @Test
    void whatIsLeftBesideADirectionIsAtRightAnglesToIt() {
        assertThat(Projection.constant(4)).containsExactly(0.5, 0.5, 0.5, 0.5);
        assertThat(Projection.constant(0)).isEmpty();
        assertThat(Projection.without(new double[] {3, 4, 0}, new double[] {1, 0, 0}))
                .containsExactly(0, 4, 0);
        assertThat(Projection.without(new double[] {3, 4, 0}, Projection.constant(3)))
                .containsExactly(new double[] {2.0 / 3, 5.0 / 3, -7.0 / 3}, within(1e-12));
        assertThat(Projection.unit(new double[] {3, 4, 0})).containsExactly(new double[] {0.6, 0.8, 0}, within(1e-15));
        assertThat(Projection.unit(new double[] {0, 0})).containsExactly(0, 0);
        assertThat(Projection.dot(new double[] {1, 2, 3}, new double[] {4, -5, 6}))
                .isEqualTo(12);
    }

    /// JCGM 100:2008, table G.2: 12.71 at one degree of freedom, the fewest that have a factor.
    @Test
    void oneDegreeOfFreedomHasAFactorAndLessHasNone() {
        assertThat(StudentT.twoSided95(1)).isCloseTo(12.71, within(0.005));
        assertThatIllegalArgumentException().isThrownBy(() -> StudentT.twoSided95(0.999));
    }

    /// (ν₀s₀² + νs²)/(ν₀ + ν) of JCGM 100:2008, 4.2.4: √((2·4 + 1·25)/3) with s = 5 from 10 and 10 + 5√2, by hand.
    @Test
    void twoRunsAddTheirOneDegreeOfFreedomToThePriorAndOneAddsNothing() {
        var both = ModeratedScatter.of(2, 2, Sample.of(10, 10 + 5 * Math.sqrt(2)));
        assertThat(both.standardDeviation()).isCloseTo(Math.sqrt(11), within(1e-12));
        assertThat(both.degreesOfFreedom()).isEqualTo(3);
        assertThat(ModeratedScatter.of(2, 2, Sample.of(10))).isEqualTo(new ModeratedScatter(2, 2));
        assertThat(both.ofMean(1)).isEqualTo(both.standardDeviation());
        assertThatIllegalArgumentException().isThrownBy(() -> both.ofMean(0));
    }

    @Test
    void aPriorMayBeNoughtButNotLessAndNeedsOneDegreeOfFreedom() {
        assertThatNoException().isThrownBy(() -> new ModeratedScatter(0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new ModeratedScatter(-1e-9, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new ModeratedScatter(Double.POSITIVE_INFINITY, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new ModeratedScatter(1, 0.999));
        assertThatIllegalArgumentException().isThrownBy(() -> new ModeratedScatter(1, Double.POSITIVE_INFINITY));
    }

    @Test
    void aContributionMayBeNoughtButNotLessAndNeedsOneDegreeOfFreedom() {
        assertThatNoException().isThrownBy(() -> Contribution.typeA("scatter", 0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> Contribution.typeA("scatter", -1e-9, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> Contribution.typeB("x", Double.POSITIVE_INFINITY));
        assertThatIllegalArgumentException().isThrownBy(() -> Contribution.typeA("scatter", 1, 0.999));
    }

    /// s of two values is their distance over √2: JCGM 100:2008, 4.2.2, by hand.
    @Test
    void twoValuesHaveAScatterAndOneHasNone() {
        var two = Sample.of(3, 5);
        assertThat(two.standardDeviation()).isCloseTo(Math.sqrt(2), within(1e-15));
        assertThat(two.smallest()).isEqualTo(3);
        assertThat(two.largest()).isEqualTo(5);
        assertThatIllegalStateException().isThrownBy(() -> Sample.of(3).standardDeviation());
    }

    /// The finaliser spreads consecutive numbers as Steele, Lea and Flood have it: their generator, begun at
    /// 1234567, gives 6457827717110365317 first (the reference implementation's own test value, from memory),
    /// which is what makes the stream of index 0 the same on every machine and in every version.
    @Test
    void streamsAreBegunByThePublishedFinaliser() {
        var expected =
                java.util.random.RandomGeneratorFactory.of("L64X128MixRandom").create(6457827717110365317L);
        assertThat(new Seed(1234567).stream(0).nextLong()).isEqualTo(expected.nextLong());
    }

    /// q = pM rounded, JCGM 101:2008, 7.7.2: of a hundred draws 0.999 is a hundred, too many, and 0.004 none.
    @Test
    void coveragesThatTheDrawsCannotCarryAreRefused() {
        var even = MonteCarlo.ofValues(squares(1));
        assertThat(even.draws()).isEqualTo(100);
        assertThat(even.symmetric(0.99)).isEqualTo(new Interval(1, 10_000));
        assertThat(even.shortest(0.005)).isEqualTo(new Interval(1, 4));
        assertThatIllegalArgumentException().isThrownBy(() -> even.symmetric(0.999));
        assertThatIllegalArgumentException().isThrownBy(() -> even.symmetric(0.004));
        assertThatIllegalArgumentException().isThrownBy(() -> even.symmetric(0));
        assertThatIllegalArgumentException().isThrownBy(() -> even.symmetric(1));
    }

    /// Half of the squares of 1 to 100 lie closest at the low end, of their negatives at the high end: JCGM
    /// 101:2008, 7.7.4, by hand.
    @Test
    void theShortestIntervalReachesEitherEnd() {
        assertThat(MonteCarlo.ofValues(squares(1)).shortest(0.5)).isEqualTo(new Interval(1, 51 * 51));
        assertThat(MonteCarlo.ofValues(squares(-1)).shortest(0.5)).isEqualTo(new Interval(-51 * 51, -1));
    }

    private static double[] squares(int sign) {
        return IntStream.rangeClosed(1, 100).mapToDouble(i -> sign * i * i).toArray();
    }
}
