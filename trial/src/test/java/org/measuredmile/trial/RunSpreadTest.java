package org.measuredmile.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/// The expected numbers are worked by hand in the comments.
class RunSpreadTest {
    private static final Scatter STATED = new Scatter(0.3, 8, 0, Double.POSITIVE_INFINITY, false);

    @Test
    void oneRunIsExpectedToScatterByScatterAndBlurTogether() {
        // √(0.3² + 0.4²) = 0.5; of it the scatter's variance, 0.36 of the whole, has 8 degrees of freedom: 8/0.36² =
        // 61.7
        var typeA = RunSpread.of(List.of(List.of(7.0))).typeA(STATED, 0.4, 0, "run");
        assertThat(typeA.standardUncertainty()).isCloseTo(0.5, within(1e-12));
        assertThat(typeA.degreesOfFreedom()).isCloseTo(8 / (0.36 * 0.36), within(1e-9));
        assertThat(typeA.input()).isEqualTo("scatter of 1 run");
    }

    @Test
    void whatTheRunsShowIsNotCountedTwice() {
        // Runs that scatter by just what is expected, √0.25 about their mean, leave it as it was: 0.5/√3.
        var spread = RunSpread.of(List.of(List.of(6.5, 7.0, 7.5)));
        assertThat(spread.sumOfSquares()).isCloseTo(0.5, within(1e-12));
        var typeA = spread.typeA(STATED, 0.4, 0, "run");
        assertThat(typeA.standardUncertainty()).isCloseTo(0.5 / Math.sqrt(3), within(1e-12));
        assertThat(typeA.degreesOfFreedom()).isCloseTo(8 / (0.36 * 0.36) + 2, within(1e-9));
    }

    @Test
    void blurAloneIsKnownExactly() {
        var none = new Scatter(0, 8, 0, Double.POSITIVE_INFINITY, false);
        var typeA = RunSpread.of(List.of(List.of(6.0, 8.0))).typeA(none, 0.4, 0, "run");
        assertThat(typeA.standardUncertainty()).isCloseTo(0.4 / Math.sqrt(2), within(1e-12));
        assertThat(typeA.degreesOfFreedom()).isInfinite();
    }

    @Test
    void withoutBlurTheModeratedVarianceIsThatOfTheScatterAlone() {
        // (8 · 0.09 + 0.5)/(8 + 2) = 0.122; over 3 runs.
        var typeA = RunSpread.of(List.of(List.of(6.5, 7.0, 7.5))).typeA(STATED, 0, 0, "run");
        assertThat(typeA.standardUncertainty()).isCloseTo(Math.sqrt(0.122 / 3), within(1e-12));
        assertThat(typeA.degreesOfFreedom()).isCloseTo(10, within(1e-12));
    }
}
