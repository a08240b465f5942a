package org.measuredmile.comparison.standing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;

/// What holds for any population, over invented ones.
class RankDrawsPropertyTest {
    private static final int DRAWS = 2_000;
    private static final NormalDistribution NORMAL = new NormalDistribution();

    /// Work shared out among threads of its own.
    private record Threads(int count) implements Workers {
        @Override
        public <T> List<T> all(List<Supplier<T>> parts) {
            try (var pool = Executors.newFixedThreadPool(count)) {
                var waiting = new ArrayList<Future<T>>();
                parts.forEach(part -> waiting.add(pool.submit(part::get)));
                var done = new ArrayList<T>();
                for (var one : waiting) {
                    done.add(one.get());
                }
                return done;
            } catch (ExecutionException | InterruptedException failure) {
                throw new IllegalStateException(failure);
            }
        }
    }

    private static List<Entrant> invented(RandomGenerator random, int bikes) {
        return IntStream.range(0, bikes)
                .mapToObj(i -> invented("bike-" + i, random))
                .sorted(Comparator.comparingDouble(Entrant::value))
                .toList();
    }

    private static Entrant invented(String id, RandomGenerator random) {
        double value = Draw.normal(random, 6, 0.6);
        var runs = Contribution.typeA("runs", Draw.rectangular(random, 0.02, 0.4), 1 + random.nextInt(12));
        var method = Contribution.typeB("calibration", 0.02 * value).sharedAs("instrument " + random.nextInt(3));
        // One in seven is exact, as a count is.
        return random.nextInt(7) == 0 ? Entrants.exactly(id, value) : Entrants.of(id, value, Budget.of(runs, method));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 17, 130})
    void everyRankIsTakenByOneBikeInEveryDraw(int bikes) {
        var draws = RankDraws.of(invented(new Seed(bikes).stream(0), bikes), true, DRAWS);
        double[] columns = new double[bikes];
        for (int bike = 0; bike < bikes; bike++) {
            var chances = draws.probabilities(bike);
            double row = 0;
            for (int rank = 0; rank < bikes; rank++) {
                row += chances.get(rank);
                columns[rank] += chances.get(rank);
            }
            assertThat(row).isCloseTo(1, within(1e-12));
        }
        for (double column : columns) {
            assertThat(column).isCloseTo(1, within(1e-12));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theNumberOfThreadsChangesNothing(long seed) {
        var entrants = invented(new Seed(seed).stream(1), 40);
        var one = RankDraws.of(entrants, true, DRAWS, Workers.ONE);
        var eight = RankDraws.of(entrants, true, DRAWS, new Threads(8));
        for (int bike = 0; bike < entrants.size(); bike++) {
            assertThat(eight.probabilities(bike)).isEqualTo(one.probabilities(bike));
        }
    }

    /// The ranks counted in the plainest way: draw by draw, every bike against every other.
    @ParameterizedTest
    @ValueSource(ints = {2, 9, 60})
    void theOrderIsThatOfTheDrawnValues(int bikes) {
        var entrants = invented(new Seed(bikes).stream(2), bikes);
        var columns = new DrawColumns(entrants, false);
        int blocks = 4;
        var values = columns.room();
        double[] meanRank = new double[bikes];
        for (int block = 0; block < blocks; block++) {
            columns.fill(block, values);
            for (int draw = 0; draw < DrawColumns.BLOCK; draw++) {
                for (int bike = 0; bike < bikes; bike++) {
                    double mine = values[bike * DrawColumns.STRIDE + draw];
                    int rank = 1;
                    for (int other = 0; other < bikes; other++) {
                        rank += values[other * DrawColumns.STRIDE + draw] < mine ? 1 : 0;
                    }
                    meanRank[bike] += (double) rank / (blocks * DrawColumns.BLOCK);
                }
            }
        }
        var draws = RankDraws.of(entrants, false, blocks * DrawColumns.BLOCK);
        for (int bike = 0; bike < bikes; bike++) {
            assertThat(draws.probabilities(bike).mean()).isCloseTo(meanRank[bike], within(1e-9));
        }
    }

    /// A bike's own draws follow from its id: another bike that never comes near changes no one's chances.
    @Test
    void aBikeFarBehindChangesNothingForTheOthers() {
        var few = List.of(Entrants.of("a", 10, 1), Entrants.of("b", 11, 1), Entrants.of("c", 13, 2));
        var more = new ArrayList<>(few);
        more.add(Entrants.of("far", 1000, 1));
        for (int bike = 0; bike < few.size(); bike++) {
            assertThat(RankDraws.of(more, true, DRAWS).probabilities(bike).subList(0, 3))
                    .isEqualTo(RankDraws.of(few, true, DRAWS).probabilities(bike));
        }
    }

    /// What a reader can do with the printed table: standard uncertainties from the half-widths over 1.96, then
    /// Φ of the difference over the root sum of squares. The printed digits leave 0.01; the draws three of
    /// their standard deviations, 0.011.
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void theChanceOfBeingBestFollowsFromThePrintedIntervals(long seed) {
        var random = new Seed(seed).stream(3);
        var standing = Entrants.standing(List.of(
                Entrants.of("a", Draw.rectangular(random, 5, 6), Draw.rectangular(random, 0.2, 0.5)),
                Entrants.of("b", Draw.rectangular(random, 5, 6), Draw.rectangular(random, 0.2, 0.5))));
        var first = standing.rows().getFirst();
        var second = standing.rows().getLast();
        double u = Math.sqrt(square(printedUncertainty(first)) + square(printedUncertainty(second)));
        double difference =
                printed(second.entrant().value()) - printed(first.entrant().value());
        double expected = NORMAL.cumulativeProbability(difference / u);
        assertThat(first.probabilityBest()).isCloseTo(expected, within(0.021));
        assertThat(standing.chancesOfBeating(second.entrant().bike()))
                .hasEntrySatisfying(
                        first.entrant().bike(), chance -> assertThat(chance).isCloseTo(expected, within(0.021)))
                .containsEntry(second.entrant().bike(), 0.5);
    }

    private static double printedUncertainty(StandingRow row) {
        return printed(row.entrant().anyDay().interval95().halfWidth()) / 1.96;
    }

    private static double printed(double value) {
        return Math.rint(value * 100) / 100;
    }

    private static double square(double value) {
        return value * value;
    }
}
