package org.measuredmile.quantity.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/// The nine types of Hyndman and Fan, The American Statistician 50 (1996) 361–365. Source of the expected values:
/// computed with R 4.2.2, `quantile(x, p, type = …)`, for the project's check values.
class QuantileReferenceTest {
    private static final Sample TEN = Sample.of(2.1, 3.4, 1.7, 5.0, 4.2, 2.8, 3.9, 7.5, 6.1, 3.3);
    private static final Sample FOUR = Sample.of(10, 20, 30, 40);
    private static final double[] SHARES = {0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95};

    @ParameterizedTest
    @CsvSource({
        "TYPE_1, 1.7, 1.7, 2.8, 3.4, 5, 6.1, 7.5",
        "TYPE_2, 1.7, 1.9, 2.8, 3.65, 5, 6.8, 7.5",
        "TYPE_3, 1.7, 1.7, 2.1, 3.4, 5, 6.1, 7.5",
        "TYPE_4, 1.7, 1.7, 2.45, 3.4, 4.6, 6.1, 6.8",
        "TYPE_5, 1.7, 1.9, 2.8, 3.65, 5, 6.8, 7.5",
        "TYPE_6, 1.7, 1.74, 2.625, 3.65, 5.275, 7.36, 7.5",
        "TYPE_7, 1.88, 2.06, 2.925, 3.65, 4.8, 6.24, 6.87",
        "TYPE_8, 1.7, 1.8466667, 2.7416667, 3.65, 5.0916667, 6.9866667, 7.5",
        "TYPE_9, 1.7, 1.86, 2.75625, 3.65, 5.06875, 6.94, 7.5"
    })
    void tenValuesHaveTheQuantilesThatTheReferenceProgramGives(
            Quantile type, double q05, double q10, double q25, double q50, double q75, double q90, double q95) {
        double[] expected = {q05, q10, q25, q50, q75, q90, q95};
        for (int i = 0; i < SHARES.length; i++) {
            assertThat(type.at(SHARES[i], TEN)).as("%s at %s", type, SHARES[i]).isCloseTo(expected[i], within(1e-7));
        }
    }

    @Test
    void theLowerQuarterOfFourValuesDiffersByType() {
        double[] expected = {10, 15, 10, 10, 15, 12.5, 17.5, 14.1666667, 14.375};
        for (var type : Quantile.values()) {
            assertThat(type.at(0.25, FOUR)).as("%s", type).isCloseTo(expected[type.ordinal()], within(1e-7));
        }
    }
}
