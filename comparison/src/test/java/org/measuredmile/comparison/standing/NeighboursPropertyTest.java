package org.measuredmile.comparison.standing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;

class NeighboursPropertyTest {
    private static List<Entrant> ordered(long seed) {
        var random = new Seed(seed).stream(0);
        return IntStream.range(0, 60)
                .mapToObj(i -> Entrants.of(
                        "bike-" + i,
                        Draw.normal(random, 6, 0.6),
                        Budget.of(
                                Contribution.typeA(
                                        "runs", Draw.rectangular(random, 0, 0.3), 1 + 9 * random.nextDouble()),
                                Contribution.typeB("calibration", 0.1).sharedAs("tape " + random.nextInt(2)))))
                .sorted(Comparator.comparingDouble(Entrant::value))
                .toList();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void everyPairIsToldApartAsByItsOwnDifference(long seed) {
        var ordered = ordered(seed);
        var neighbours = new Neighbours(ordered);
        for (int one = 0; one < ordered.size(); one++) {
            for (int other = 0; other < ordered.size(); other++) {
                assertThat(neighbours.apart(one, other))
                        .as("%s and %s", ordered.get(one), ordered.get(other))
                        .isEqualTo(Contrast.between(ordered.get(one), ordered.get(other))
                                .tellsApart());
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {5, 6})
    void theEndsOfAGroupCannotBeToldApartAndNoGroupLiesInAnother(long seed) {
        var ordered = ordered(seed);
        var groups = new Neighbours(ordered).groups();
        int last = groups.stream().flatMap(List::stream).max(Integer::compare).orElse(0);
        assertThat(last).isPositive();
        int reached = -1;
        for (int group = 1; group <= last; group++) {
            int number = group;
            var places = IntStream.range(0, ordered.size())
                    .filter(place -> groups.get(place).contains(number))
                    .boxed()
                    .toList();
            assertThat(Contrast.between(ordered.get(places.getFirst()), ordered.get(places.getLast()))
                            .tellsApart())
                    .isFalse();
            assertThat(places.getLast()).isGreaterThan(reached);
            reached = places.getLast();
        }
    }
}
