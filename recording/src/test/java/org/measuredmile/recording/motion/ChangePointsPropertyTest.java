package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.recording.motion.SecondMeans.Span;

/// The pruned programme against the plain one that looks at every beginning for every end.
class ChangePointsPropertyTest {
    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    /// Levels of random lengths and heights, correlated noise, some values missing.
    private static double[] series(int count, int every, Random random) {
        double[] noise = Simulated.wander(count, 0.3, 0.8, random);
        double[] values = new double[count];
        double level = 5;
        for (int i = 0; i < count; i++) {
            level = random.nextInt(every) == 0 ? 3 + 5 * random.nextDouble() : level;
            values[i] = random.nextInt(40) == 0 ? Double.NaN : level + noise[i];
        }
        return values;
    }

    private static double plainCost(int n, ChangePoints.Cost cost, double penalty, int least) {
        double[] best = new double[n + 1];
        Arrays.fill(best, Double.POSITIVE_INFINITY);
        best[0] = -penalty;
        for (int j = least; j <= n; j++) {
            for (int i = 0; i <= j - least; i++) {
                best[j] = Math.min(best[j], best[i] + cost.of(i, j) + penalty);
            }
        }
        return best[n];
    }

    private static double costOf(List<Span> pieces, ChangePoints.Cost cost, double penalty) {
        double sum = -penalty;
        for (var piece : pieces) {
            sum += cost.of(piece.from(), piece.to()) + penalty;
        }
        return sum;
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void pruningLosesNothingWhateverTheLeastLengthAndThePenalty(long seed) {
        var random = new Random(seed);
        int n = 30 + random.nextInt(170);
        var sums = new RunningSums(series(n, 25, random));
        int least = 1 + random.nextInt(9);
        double penalty = StrictMath.exp(4 * random.nextDouble() - 3);
        ChangePoints.Cost cost = seed % 2 == 0 ? sums::constantCost : sums::lineCost;
        var pieces = ChangePoints.of(new Span(0, n), cost, penalty, least);
        assertThat(costOf(pieces, cost, penalty)).isCloseTo(plainCost(n, cost, penalty, least), within(1e-9));
        assertThat(pieces).allSatisfy(piece -> assertThat(piece.lengthS()).isGreaterThanOrEqualTo(least));
        var ends = new ArrayList<Integer>();
        pieces.forEach(piece -> ends.add(piece.to()));
        assertThat(pieces.getFirst().from()).isZero();
        assertThat(ends.getLast()).isEqualTo(n);
        for (int k = 1; k < pieces.size(); k++) {
            assertThat(pieces.get(k).from()).isEqualTo(ends.get(k - 1));
        }
    }

    /// Killick, Fearnhead and Eckley (2012), theorem 3.2, from memory: with changes throughout, the expected
    /// work is linear. Ten times the length may cost 15 times the work here; the plain programme's costs a
    /// hundred times.
    @Test
    void theWorkGrowsAboutInProportionToTheLength() {
        long shorter = work(2_000);
        long longer = work(20_000);
        assertThat(longer).isLessThan(15 * shorter);
        assertThat(longer).isLessThan(20_000L * 20_000 / 2 / 20);
    }

    private static long work(int n) {
        var sums = new RunningSums(series(n, 60, new Random(1)));
        long[] count = {0};
        ChangePoints.of(
                new Span(0, n),
                (from, to) -> {
                    count[0]++;
                    return sums.constantCost(from, to);
                },
                20,
                1);
        return count[0];
    }

    @Test
    void aSeriesThatIsTooShortHasNoPieces() {
        assertThat(ChangePoints.of(new Span(0, 4), (_, _) -> 0, 1, 5)).isEmpty();
    }

    /// Six levels 1 m/s apart of 25 to 50 s, wander 0.15 m/s over 8 s and 0.05 m/s white: the study's table has
    /// 95 % found exactly with this penalty and none with 3·ln n times the white noise's variance.
    @Test
    void aPenaltyForCorrelatedNoiseFindsTheLevelsAndOneForIndependentNoiseDoesNot() {
        int exact = 0;
        int exactIndependent = 0;
        for (int seed = 0; seed < 60; seed++) {
            double[] ride = levels(new Random(seed));
            var whole = List.of(new Span(0, ride.length));
            double penalty = new ChangePoints.Wander(0.15, 8).penalty(ride.length, 1);
            double independent = new ChangePoints.Wander(0.05, 1.5).penalty(ride.length, 1);
            exact += SteadyPieces.of(ride, whole, penalty, 0.25).size() == 6 ? 1 : 0;
            exactIndependent += ChangePoints.of(whole.getFirst(), new RunningSums(ride)::constantCost, independent, 1)
                                    .size()
                            == 6
                    ? 1
                    : 0;
        }
        assertThat(exact).isGreaterThanOrEqualTo(51);
        assertThat(exactIndependent).isLessThanOrEqualTo(3);
    }

    private static double[] levels(Random random) {
        var ride = new ArrayList<Double>();
        for (int level = 0; level < 6; level++) {
            int held = 25 + random.nextInt(26);
            for (int i = 0; i < held; i++) {
                ride.add(4.0 + level);
            }
        }
        double[] values = Simulated.wander(ride.size(), 0.15, StrictMath.exp(-1.0 / 8), random);
        Arrays.setAll(values, i -> values[i] + ride.get(i) + 0.05 * random.nextGaussian());
        return values;
    }
}
