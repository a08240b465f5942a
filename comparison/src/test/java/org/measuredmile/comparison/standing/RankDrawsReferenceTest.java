package org.measuredmile.comparison.standing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;

/// Rank probabilities of independent normal results, lowest best. Source of the expected values: numerical integration
/// of the product of the normal densities and distribution functions, to 1e-5; computed for this project.
class RankDrawsReferenceTest {
    private static final int DRAWS = 100_000;
    // Three standard deviations of a share of this many draws, at a share of one half where it is widest.
    private static final double TOLERANCE = 3 * 0.5 / Math.sqrt(DRAWS);

    private static void assertRow(RankDraws draws, int bike, double... expected) {
        var found = draws.probabilities(bike);
        for (int rank = 0; rank < expected.length; rank++) {
            assertThat(found.get(rank))
                    .as("bike %d, rank %d", bike, rank + 1)
                    .isCloseTo(expected[rank], within(TOLERANCE));
        }
    }

    @Test
    void threeBikesTakeTheirRanksAsOftenAsIntegrationSays() {
        var draws = RankDraws.of(
                List.of(Entrants.of("a", 10, 1), Entrants.of("b", 11, 1), Entrants.of("c", 13, 2)), true, DRAWS);
        assertRow(draws, 0, 0.710216, 0.249963, 0.039822);
        assertRow(draws, 1, 0.218829, 0.616545, 0.164626);
        assertRow(draws, 2, 0.070955, 0.133492, 0.795553);
    }

    /// Mean ranks from the same integration: 1.329606, 1.945797, 2.724597, six in all.
    @Test
    void threeBikesHaveTheMeanRanksThatIntegrationSays() {
        var draws = RankDraws.of(
                List.of(Entrants.of("a", 10, 1), Entrants.of("b", 11, 1), Entrants.of("c", 13, 2)), true, DRAWS);
        double[] expected = {1.329606, 1.945797, 2.724597};
        double sum = 0;
        for (int bike = 0; bike < 3; bike++) {
            double mean = draws.probabilities(bike).mean();
            assertThat(mean).isCloseTo(expected[bike], within(2 * TOLERANCE));
            sum += mean;
        }
        assertThat(sum).isCloseTo(6, within(1e-9));
    }

    /// Two bikes: Φ(Δ/√(u₁² + u₂²)), in closed form.
    @ParameterizedTest
    @CsvSource({"1, 1, 1, 0.760250", "3, 1, 2, 0.910144", "2, 1, 2, 0.814453"})
    void ofTwoBikesTheBetterIsFirstAsOftenAsTheClosedFormSays(
            double difference, double first, double second, double expected) {
        var ordered = List.of(Entrants.of("a", 10, first), Entrants.of("b", 10 + difference, second));
        assertRow(RankDraws.of(ordered, true, DRAWS), 0, expected, 1 - expected);
        assertThat(Beating.chances(ordered, true, 1, DRAWS)[0]).isCloseTo(expected, within(TOLERANCE));
    }

    /// The same pair as below with few degrees of freedom each: 0.871 (20), 0.857 (8), 0.789 (2). Source: simulated
    /// for this project with another program, to three digits.
    @ParameterizedTest
    @CsvSource({"20, 0.871", "8, 0.857", "2, 0.789"})
    void fewRunsMakeTheOrderLessSure(double degreesOfFreedom, double expected) {
        var ordered = List.of(fewRuns("a", 6.0, degreesOfFreedom), fewRuns("b", 6.1, degreesOfFreedom));
        assertRow(RankDraws.of(ordered, true, DRAWS), 0, expected);
    }

    private static Entrant fewRuns(String bike, double value, double degreesOfFreedom) {
        return Entrants.of(bike, value, Budget.of(Contribution.typeA("runs", 0.06, degreesOfFreedom)));
    }

    @Test
    void fourBikesAreFirstAsOftenAsIntegrationSays() {
        var draws = RankDraws.of(
                List.of(
                        Entrants.of("a", 4.8, 0.1),
                        Entrants.of("b", 4.9, 0.15),
                        Entrants.of("c", 5.0, 0.1),
                        Entrants.of("d", 5.6, 0.2)),
                true,
                DRAWS);
        assertRow(draws, 0, 0.676976);
        assertRow(draws, 1, 0.277746);
        assertRow(draws, 2, 0.045210);
        assertRow(draws, 3, 0.000067);
    }

    /// The pair 6.0 and 6.1, each ± 0.06, with a calibration of 2 %: Φ(0.1 / u of the difference). The shared
    /// part is 0.120 and 0.122, so 0.002 of it stays in the difference.
    @Test
    void aSharedCalibrationCancelsAndAnOwnOneDoesNot() {
        var own = 0.06;
        var shared = List.of(pair("a", 6.0, own, "tape"), pair("b", 6.1, own, "tape"));
        var apart = List.of(pair("a", 6.0, own, "tape 1"), pair("b", 6.1, own, "tape 2"));
        assertRow(RankDraws.of(shared, true, DRAWS), 0, 0.880704);
        assertRow(RankDraws.of(apart, true, DRAWS), 0, 0.699700);
    }

    private static Entrant pair(String bike, double value, double own, String instrument) {
        return Entrants.of(
                bike,
                value,
                Budget.of(
                        Contribution.typeB("runs", own),
                        Contribution.typeB("calibration", 0.02 * value).sharedAs(instrument)));
    }
}
