package org.measuredmile.quantity.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/// Factors of JCGM 100:2008, table G.2, which prints two decimals; the further ones were recomputed from the
/// formula.
class StudentTReferenceTest {
    @ParameterizedTest
    @CsvSource({
        // degrees of freedom, 90 %, 95 %, 99 %: JCGM 100:2008, table G.2
        "1, 6.3138, 12.7062, 63.6567",
        "2, 2.9200, 4.3027, 9.9248",
        "3, 2.3534, 3.1824, 5.8409",
        "5, 2.0150, 2.5706, 4.0321",
        "10, 1.8125, 2.2281, 3.1693",
        "16, 1.7459, 2.1199, 2.9208",
        "50, 1.6759, 2.0086, 2.6778",
        "100, 1.6602, 1.9840, 2.6259",
        "Infinity, 1.6449, 1.9600, 2.5758",
    })
    void givesTheTabulatedFactors(double degrees, double at90, double at95, double at99) {
        double halfADigit = 5.1e-5;
        assertThat(StudentT.quantile(0.95, degrees)).isCloseTo(at90, within(halfADigit));
        assertThat(StudentT.twoSided95(degrees)).isCloseTo(at95, within(halfADigit));
        assertThat(StudentT.quantile(0.995, degrees)).isCloseTo(at99, within(halfADigit));
    }

    @Test
    void takesDegreesOfFreedomBetweenWholeNumbers() {
        // JCGM 100:2008, H.1.6 with untruncated degrees of freedom; recomputed: t99(16.7411) = 2.903782
        assertThat(StudentT.quantile(0.995, 16.7411)).isCloseTo(2.903782, within(5e-6));
    }

    @Test
    void joinsTheNormalDistributionWithoutAStep() {
        assertThat(StudentT.twoSided95(0.99e8)).isCloseTo(StudentT.twoSided95(1.01e8), within(1e-6));
    }

    @Test
    void refusesLessThanOneDegreeOfFreedom() {
        assertThatThrownBy(() -> StudentT.twoSided95(0.5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> StudentT.twoSided95(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }
}
