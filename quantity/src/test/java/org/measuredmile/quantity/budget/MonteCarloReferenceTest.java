package org.measuredmile.quantity.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;

/// Propagation of distributions against the examples of JCGM 101:2008, clause 9, with a million draws.
class MonteCarloReferenceTest {
    private static final int MILLION = 1_000_000;
    private static final Seed SEED = new Seed(20260412);
    private static final double ROOT_3 = Math.sqrt(3);

    @Test
    void fourNormals() {
        // JCGM 101:2008, table 2: 0, u 2.0, ±3.92
        var sum = MonteCarlo.of(
                random -> Draw.normal(random) + Draw.normal(random) + Draw.normal(random) + Draw.normal(random),
                SEED,
                MILLION);
        assertThat(sum.mean()).isCloseTo(0, within(0.01));
        assertThat(sum.standardUncertainty()).isCloseTo(2, within(0.01));
        assertThat(sum.symmetric95().low()).isCloseTo(-3.92, within(0.02));
        assertThat(sum.symmetric95().high()).isCloseTo(3.92, within(0.02));
    }

    @Test
    void fourRectangulars() {
        // JCGM 101:2008, table 3 and annex E: ±3.88
        var sum = MonteCarlo.of(
                random -> {
                    double total = 0;
                    for (int i = 0; i < 4; i++) {
                        total += Draw.rectangular(random, -ROOT_3, ROOT_3);
                    }
                    return total;
                },
                SEED,
                MILLION);
        assertThat(sum.symmetric95().high()).isCloseTo(3.8794067, within(0.02));
    }

    @Test
    void oneRectangularThatOutweighsThree() {
        // JCGM 101:2008, table 4: u 10.1, ±17.0, where the law of propagation gives ±19.9
        var sum = MonteCarlo.of(
                random -> {
                    double total = Draw.rectangular(random, -10 * ROOT_3, 10 * ROOT_3);
                    for (int i = 0; i < 3; i++) {
                        total += Draw.rectangular(random, -ROOT_3, ROOT_3);
                    }
                    return total;
                },
                SEED,
                MILLION);
        assertThat(sum.standardUncertainty()).isCloseTo(10.148892, within(0.05));
        assertThat(sum.symmetric95().high()).isCloseTo(17.015814, within(0.05));
    }

    @Test
    void calibrationOfAMass() {
        // JCGM 101:2008, 9.3 and table 6, in milligrams: 1.2341, u 0.0754, shortest 95 % from 1.0834 to 1.3825
        var mass = MonteCarlo.of(
                random -> {
                    double reference = Draw.normal(random, 100_000, 0.050);
                    double added = Draw.normal(random, 1.234, 0.020);
                    double air = Draw.rectangular(random, 1.1, 1.3);
                    double weight = Draw.rectangular(random, 7000, 9000);
                    double standard = Draw.rectangular(random, 7950, 8050);
                    return (reference + added) * (1 + (air - 1.2) * (1 / weight - 1 / standard)) - 100_000;
                },
                SEED,
                MILLION);
        assertThat(mass.mean()).isCloseTo(1.2341, within(0.001));
        assertThat(mass.standardUncertainty()).isCloseTo(0.0754, within(0.001));
        assertThat(mass.shortest95().low()).isCloseTo(1.0834, within(0.003));
        assertThat(mass.shortest95().high()).isCloseTo(1.3825, within(0.003));
    }

    @Test
    void sumOfSquaresLiesAgainstZero() {
        // JCGM 101:2008, 9.4 and table 8, in units of 10⁻⁶: mean 50, u 50, shortest 95 % from 0 to 150
        var squares = MonteCarlo.of(
                random -> {
                    double first = Draw.normal(random, 0, 5e-3);
                    double second = Draw.normal(random, 0, 5e-3);
                    return 1e6 * (first * first + second * second);
                },
                SEED,
                MILLION);
        assertThat(squares.mean()).isCloseTo(50, within(0.5));
        assertThat(squares.standardUncertainty()).isCloseTo(50, within(0.5));
        assertThat(squares.shortest95().low()).isCloseTo(0, within(0.01));
        // −50 ln 0.05
        assertThat(squares.shortest95().high()).isCloseTo(149.787, within(1.0));
    }

    @Test
    void endsAreTheCountedDraws() {
        // JCGM 101:2008, 7.7.2: M = 10⁵, p = 0.95 gives q = 95 000 and r = 2500, counted from 1
        double[] counted = IntStream.rangeClosed(1, 100_000).asDoubleStream().toArray();
        var interval = MonteCarlo.ofValues(counted).symmetric95();
        assertThat(interval.low()).isEqualTo(2500);
        assertThat(interval.high()).isEqualTo(97_500);
        assertThat(MonteCarlo.ofValues(counted).shareUpTo(2500)).isEqualTo(0.025);
    }

    @Test
    void theSameSeedGivesTheSameBits() {
        var first = MonteCarlo.of(Draw::normal, SEED, 1000);
        var second = MonteCarlo.of(Draw::normal, SEED, 1000);
        assertThat(second.mean()).isEqualTo(first.mean());
        assertThat(second.shortest95()).isEqualTo(first.shortest95());
        assertThat(MonteCarlo.of(Draw::normal, new Seed(1), 1000).mean()).isNotEqualTo(first.mean());
    }

    @Test
    void refusesTooFewDrawsAndValuesThatAreNone() {
        assertThatThrownBy(() -> MonteCarlo.of(Draw::normal, SEED, 10)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> MonteCarlo.of(_ -> Double.NaN, SEED, 1000))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
