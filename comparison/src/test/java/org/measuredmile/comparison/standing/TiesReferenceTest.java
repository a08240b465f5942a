package org.measuredmile.comparison.standing;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/// Ranks with ties and percentile ranks of published small examples.
class TiesReferenceTest {
    private static Ties ties(String... bestFirst) {
        return Ties.of(Stream.of(bestFirst).map(BigDecimal::new).toList());
    }

    private static List<Integer> ranks(Ties ties) {
        return IntStream.range(0, ties.first().length).mapToObj(ties::rank).toList();
    }

    /// What a fractional rank (1, 2.5, 2.5, 4) says, from the percentile of the same place.
    private static List<Double> fractional(Ties ties) {
        int n = ties.first().length;
        return IntStream.range(0, n)
                .mapToObj(place -> n + 0.5 - ties.percentile(place).mean() * n / 100)
                .toList();
    }

    /// Standard competition ranking 1 2 2 4 and fractional ranking 1 2.5 2.5 4 of 50, 40, 40, 30, high being best:
    /// the encyclopaedias' pages on ranking.
    @Test
    void equalValuesShareTheRankOfTheFirst() {
        var ties = ties("50", "40", "40", "30");
        assertThat(ranks(ties)).containsExactly(1, 2, 2, 4);
        assertThat(fractional(ties)).containsExactly(1.0, 2.5, 2.5, 4.0);
    }

    /// 7.1 6.8 7.1 6.8 6.8 5.0, low being best: 5 2 5 2 2 1 and 5.5 3 5.5 3 3 1, counted by hand.
    @Test
    void threeAndTwoEqualOnesAreCounted() {
        var ties = ties("5.0", "6.8", "6.8", "6.8", "7.1", "7.10");
        assertThat(ranks(ties)).containsExactly(1, 2, 2, 2, 5, 5);
        assertThat(fractional(ties)).containsExactly(1.0, 3.0, 3.0, 3.0, 5.5, 5.5);
    }

    /// 13.4 among 12.1 13.4 11.7 15.0 14.2 12.8 13.9 17.5 16.1 13.3, high being best: strict 40 %, weak 50 %, mean
    /// 45 %: the kinds of SciPy's `stats.percentileofscore`, computed with it.
    @Test
    void theShareThatABikeIsBetterThanCountsEqualOnesHalf() {
        var ties = ties("17.5", "16.1", "15.0", "14.2", "13.9", "13.4", "13.3", "12.8", "12.1", "11.7");
        var percentile = ties.percentile(5);
        assertThat(percentile.strict()).isEqualTo(40);
        assertThat(percentile.weak()).isEqualTo(50);
        assertThat(percentile.mean()).isEqualTo(45);
    }

    @Test
    void firstAndLastAreHalfABikeFromTheEnds() {
        var ties = ties("1", "2", "3", "4");
        assertThat(ties.percentile(0).mean()).isEqualTo(87.5);
        assertThat(ties.percentile(3).mean()).isEqualTo(12.5);
    }
}
