package org.measuredmile.comparison.standing;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Variant;

/// Expected ranks are counted by hand.
class StandingTest {
    private static final Population WITH_LEDGER =
            new Population("cargo", "", "", Optional.empty(), Optional.empty(), true);

    @Test
    void ranksCountAsInACompetitionAndEqualOnesAreJoint() {
        var standing = Entrants.standing(List.of(
                Entrants.exactly("a", 5),
                Entrants.exactly("b", 6),
                Entrants.exactly("c", 6),
                Entrants.exactly("d", 7)));
        assertThat(standing.rows()).extracting(StandingRow::rank).containsExactly(1, 2, 2, 4);
        assertThat(standing.rows()).extracting(StandingRow::joint).containsExactly(false, true, true, false);
        assertThat(standing.count()).isEqualTo(4);
    }

    /// Half-width 1.96 · 0.3 = 0.59 m, so the column prints to 0.01 m: 6.248 and 6.252 print alike, 6.24 does not.
    @Test
    void valuesThatPrintAlikeShareTheirRank() {
        var standing = Entrants.standing(
                List.of(Entrants.of("a", 6.24, 0.3), Entrants.of("b", 6.248, 0.3), Entrants.of("c", 6.252, 0.3)));
        assertThat(standing.rows()).extracting(StandingRow::rank).containsExactly(1, 2, 2);
    }

    @Test
    void moreComesFirstWhereMoreIsBetter() {
        var standing = Standing.of(
                Entrants.MORE_IS_BETTER,
                Variant.NONE,
                Population.EVERY_BIKE,
                List.of(Entrants.exactly("low", 1), Entrants.exactly("high", 2)));
        assertThat(standing.rows()).extracting(row -> row.entrant().bike()).containsExactly("high", "low");
    }

    /// Difference 1.0, standard uncertainty √2 · 0.2 = 0.283, times 1.96 = 0.55: told apart. 0.5 is not.
    @Test
    void anOrderThatTheUncertaintyDoesNotSupportIsMarked() {
        var standing = Entrants.standing(
                List.of(Entrants.of("a", 5, 0.2), Entrants.of("b", 5.5, 0.2), Entrants.of("c", 6.5, 0.2)));
        assertThat(standing.rows()).extracting(StandingRow::toldApartFromNext).containsExactly(false, true, true);
        assertThat(standing.rows()).extracting(StandingRow::groups).containsExactly(List.of(1), List.of(1), List.of());
    }

    @Test
    void aSharedCalibrationDoesNotHideAnOrder() {
        var tape = Contribution.typeB("calibration", 0.5);
        var own = Contribution.typeB("runs", 0.1);
        var shared = Entrants.standing(List.of(
                Entrants.of("a", 5, Budget.of(own, tape.sharedAs("tape"))),
                Entrants.of("b", 6, Budget.of(own, tape.sharedAs("tape")))));
        var apart = Entrants.standing(List.of(
                Entrants.of("a", 5, Budget.of(own, tape.sharedAs("tape 1"))),
                Entrants.of("b", 6, Budget.of(own, tape.sharedAs("tape 2")))));
        assertThat(shared.rows().getFirst().toldApartFromNext()).isTrue();
        assertThat(apart.rows().getFirst().toldApartFromNext()).isFalse();
    }

    @Test
    void theLedgerStandsApartUntilItIsAskedFor() {
        var entrants = List.of(Entrants.of("a", 5, 0.1), Entrants.fromLedger("old", 4, 0.5));
        var without = Entrants.standing(entrants);
        assertThat(without.count()).isEqualTo(1);
        assertThat(without.leftOut()).extracting(Standing.LeftOut::reason).containsExactly("a result of the ledger");
        var with = Standing.of(Entrants.LESS_IS_BETTER, Variant.NONE, WITH_LEDGER, entrants);
        assertThat(with.rows()).extracting(row -> row.entrant().bike()).containsExactly("old", "a");
    }

    @Test
    void ofABikesResultsTheLatestStandsAndTheCrewsOwnBeforeTheLedgers() {
        var entrants = List.of(
                Entrants.of("a", 5, 0.1),
                Entrants.onDay(Entrants.of("a", 4, 0.1), LocalDate.of(2031, 6, 1)),
                Entrants.fromLedger("a", 3, 0.5));
        var standing = Standing.of(Entrants.LESS_IS_BETTER, Variant.NONE, WITH_LEDGER, entrants);
        assertThat(standing.rows()).extracting(row -> row.entrant().value()).containsExactly(4.0);
        assertThat(standing.leftOut()).hasSize(2);
    }

    @Test
    void onlyEqualVariantsStandTogether() {
        var asked = Variant.of("method", "tape");
        var standing =
                Standing.of(Entrants.LESS_IS_BETTER, asked, Population.EVERY_BIKE, List.of(Entrants.exactly("a", 5)));
        assertThat(standing.rows()).isEmpty();
        assertThat(standing.leftOut()).hasSize(1);
    }

    @Test
    void theUnitsShownChangeNoRank() {
        double foot = Unit.FOOT.toSi(1);
        var standing =
                Entrants.standing(List.of(Entrants.of("a", 20.50 * foot, 0.3), Entrants.of("b", 20.51 * foot, 0.3)));
        assertThat(standing.rows()).extracting(StandingRow::rank).containsExactly(1, 1);
    }

    @Test
    void nobodyIsARankOfItself() {
        assertThat(Entrants.standing(List.of()).rows()).isEmpty();
        var alone = Entrants.standing(List.of(Entrants.of("a", 5, 0.1))).rows().getFirst();
        assertThat(alone.probabilityBest()).isEqualTo(1);
        assertThat(alone.probabilityTopThree()).isEqualTo(1);
        assertThat(alone.rankHigh()).isEqualTo(1);
    }
}
