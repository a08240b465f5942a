package org.measuredmile.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;

/// What a sum of stated scatters is given for tails.
class MatchedTailsTest {
    @Test
    void oneContributionKeepsItsOwnDistribution() {
        var budget = Budget.of(Contribution.typeA("scatter", 0.1, 12));
        assertThat(half(budget)).isCloseTo(budget.around(0).interval95().halfWidth(), within(1e-9));
    }

    /// Two equal ones of 12 degrees of freedom: variance 2 · 1.2, excess kurtosis 0.375, so 20 degrees of
    /// freedom and a scale of √(2.4 · 0.9); t = 2.08596 (JCGM 100:2008, table G.2, has 2.09).
    @Test
    void twoAlikeAreWiderThanWelchAndSatterthwaiteSay() {
        var budget = Budget.of(Contribution.typeA("scatter", 1, 12), Contribution.typeA("days", 1, 12));
        assertThat(half(budget)).isCloseTo(2.08596 * Math.sqrt(2.16), within(1e-4));
        assertThat(half(budget)).isGreaterThan(budget.around(0).interval95().halfWidth());
    }

    @Test
    void fewDegreesOfFreedomLeaveTheBudgetsOwnInterval() {
        var budget = Budget.of(Contribution.typeA("scatter", 1, 3), Contribution.typeB("scale", 1));
        assertThat(half(budget)).isEqualTo(budget.around(0).interval95().halfWidth());
    }

    private static double half(Budget budget) {
        return MatchedTails.around(budget, 0).interval95().halfWidth();
    }
}
