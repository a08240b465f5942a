package org.measuredmile.quantity.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/// Worked by hand from (ν₀s₀² + νs²)/(ν₀ + ν).
class ModeratedScatterTest {
    @Test
    void weighsPriorAndRunsByTheirDegreesOfFreedom() {
        // runs 1, 2, 3: s² = 1, ν = 2; prior s₀² = 4, ν₀ = 6: (24 + 2)/8 = 3.25
        var moderated = ModeratedScatter.of(2, 6, Sample.of(1, 2, 3));
        assertThat(moderated.standardDeviation()).isCloseTo(Math.sqrt(3.25), within(1e-15));
        assertThat(moderated.degreesOfFreedom()).isEqualTo(8);
        assertThat(moderated.ofMean(3)).isCloseTo(Math.sqrt(3.25 / 3), within(1e-15));
    }

    @Test
    void aSingleRunLeavesThePriorAlone() {
        assertThat(ModeratedScatter.of(2, 6, Sample.of(17))).isEqualTo(new ModeratedScatter(2, 6));
    }

    @Test
    void equalRunsDoNotMakeTheScatterVanish() {
        var moderated = ModeratedScatter.of(2, 6, Sample.of(5, 5, 5));
        assertThat(moderated.standardDeviation()).isCloseTo(Math.sqrt(3), within(1e-15));
    }

    @Test
    void refusesAPriorOfNoSize() {
        assertThatThrownBy(() -> ModeratedScatter.of(Double.NaN, 6, Sample.of(1)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ModeratedScatter.of(1, 0, Sample.of(1))).isInstanceOf(IllegalArgumentException.class);
    }
}
