package org.measuredmile.comparison.standing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

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

    /// The pair 6.0 and 6.1, each ± 0.06, with a calibration of 2 %: Φ(0.1 / u of the difference). The shared part
    /// is
    /// 0.120 and 0.122, so 0.002 of it stays in the difference.
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
                org.measuredmile.quantity.budget.Budget.of(
                        org.measuredmile.quantity.budget.Contribution.typeB("runs", own),
                        org.measuredmile.quantity.budget.Contribution.typeB("calibration", 0.02 * value)
                                .sharedAs(instrument)));
    }

    @Test
    void everyRankIsTakenByOneBikeInEveryDraw() {
        var draws = RankDraws.of(
                List.of(Entrants.of("a", 1, 0.5), Entrants.of("b", 1.2, 0.4), Entrants.of("c", 1.1, 0.6)), false, 1000);
        for (int rank = 0; rank < 3; rank++) {
            double column = 0;
            double row = 0;
            for (int other = 0; other < 3; other++) {
                column += draws.probabilities(other).get(rank);
                row += draws.probabilities(rank).get(other);
            }
            assertThat(column).isCloseTo(1, within(1e-12));
            assertThat(row).isCloseTo(1, within(1e-12));
        }
    }
}
