package org.measuredmile.comparison.sidebyside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class HolmReferenceTest {
    /// Source: Benjamini and Hochberg, Journal of the Royal Statistical Society B 57 (1995) 289-300, the fifteen
    /// probabilities of their worked example.
    private static final double[] FIFTEEN = {
        0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.3240, 0.4262, 0.5719, 0.6528, 0.7590,
        1.0
    };

    @Test
    void threeOfTheFifteenAreRejectedAtFivePerCent() {
        // Source: the same example as SciPy's documentation counts it: Bonferroni 3, Holm 3 (Benjamini-Hochberg 4).
        assertThat(Arrays.stream(Holm.adjusted(FIFTEEN)).filter(one -> one <= Holm.LEVEL))
                .hasSize(3);
    }

    @Test
    void theFirstFourAreAdjustedAsByHand() {
        // By hand from Holm's rule: 15 · 0.0001, 14 · 0.0004, 13 · 0.0019, 12 · 0.0095.
        double[] adjusted = Holm.adjusted(FIFTEEN);
        assertThat(Arrays.copyOf(adjusted, 4))
                .containsExactly(new double[] {0.0015, 0.0056, 0.0247, 0.114}, within(1e-9));
        assertThat(adjusted[14]).isEqualTo(1);
    }

    @Test
    void theOrderGivenIsKeptAndNoneFallsBelowTheOneBefore() {
        // By hand: 3 · 0.01 = 0.03; 2 · 0.04 = 0.08; 1 · 0.045 is raised to 0.08.
        assertThat(Holm.adjusted(0.045, 0.01, 0.04)).containsExactly(new double[] {0.08, 0.03, 0.08}, within(1e-12));
        assertThat(Holm.adjusted()).isEmpty();
    }

    @Test
    void whatIsNoProbabilityIsRefused() {
        assertThatThrownBy(() -> Holm.adjusted(0.5, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Holm.adjusted(1.1)).isInstanceOf(IllegalArgumentException.class);
    }
}
