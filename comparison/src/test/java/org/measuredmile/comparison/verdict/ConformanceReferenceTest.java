package org.measuredmile.comparison.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.StudentT;

class ConformanceReferenceTest {
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    private static Uncertainty known(double value, double standard, double degrees) {
        return new Uncertainty(standard, degrees, Interval.around(value, StudentT.twoSided95(degrees) * standard));
    }

    @Test
    void probabilityBelowAnUpperLimit() {
        // JCGM 106:2012, 7.3.3, example 1 (printed 0.92).
        assertThat(Conformance.atMost(-5.47, known(-5.47, 0.05, INFINITE), -5.40))
                .isCloseTo(0.919243, within(1e-6));
    }

    @Test
    void probabilityAboveALowerLimit() {
        // JCGM 106:2012, 7.3.3, example 2 (printed 0.99).
        assertThat(Conformance.atLeast(509.7, known(509.7, 8.6, INFINITE), 490)).isCloseTo(0.989010, within(1e-6));
    }

    @Test
    void probabilityBetweenTwoLimits() {
        // JCGM 106:2012, 7.4, example (printed 0.66).
        assertThat(Conformance.between(13.6, known(13.6, 1.8, INFINITE), 12.5, 16.3))
                .isCloseTo(0.662630, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"0.80, 0.8416", "0.90, 1.2816", "0.95, 1.6449", "0.99, 2.3263", "0.999, 3.0902"})
    void guardBandOfOneStandardUncertainty(double confidence, double expected) {
        // JCGM 106:2012, table 1 (printed 0.84, 1.28, 1.64, 2.33, 3.09).
        assertThat(Conformance.guardBand(1, INFINITE, confidence)).isCloseTo(expected, within(1e-4));
    }

    @ParameterizedTest
    @CsvSource({
        // JCGM 106:2012, 8.3.3.2, example of the speed limit (printed about 107 km/h).
        "100, 0.999, 106.58761",
        // Computed with the same formula for the limits of electric bikes.
        "25, 0.999, 26.64690",
        "25, 0.95, 25.85040",
        "45, 0.999, 47.96443",
        "45, 0.95, 46.53072"
    })
    void readingFromWhichASpeedIsOverItsLimit(double limit, double confidence, double expected) {
        assertThat(Conformance.rejectedFrom(limit, 0.02, confidence)).isCloseTo(expected, within(1e-5));
    }

    @Test
    void guardBandFromTenRuns() {
        // JCGM 106:2012, 8.3.3, the second example (printed 0.37, limit 2.37).
        assertThat(StudentT.quantile(0.95, 9)).isCloseTo(1.833113, within(1e-6));
        double guard = Conformance.guardBand(0.20, 9, 0.95);
        assertThat(guard).isCloseTo(0.366623, within(1e-6));
        assertThat(2.00 + guard).isCloseTo(2.366623, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"0, 0.5", "0.5, 0.158655", "0.83, 0.048457", "1, 0.022750", "1.5, 0.0013499"})
    void greatestRiskOfAWrongPassByWidthOfTheGuardBand(double r, double expected) {
        // JCGM 106:2012, 8.3.2.3, w = r·U with U = 2u (printed 2.3 % at r = 1); the others by the same formula.
        double value = 10 - r * 2 * 0.3;
        assertThat(1 - Conformance.atMost(value, known(value, 0.3, INFINITE), 10))
                .isCloseTo(expected, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"0.5, 1, 0.954500", "0.9, 4, 0.945201", "1, 4, 0.5"})
    void probabilityByMeasurementCapability(double place, double capability, double expected) {
        // Computed by JCGM 106:2012, equation 14, C_m = T/(4u), for a tolerance from 0 to 1.
        double standard = 1 / (4 * capability);
        assertThat(Conformance.between(place, known(place, standard, INFINITE), 0, 1))
                .isCloseTo(expected, within(1e-6));
    }

    @Test
    void fewRunsAreLessSureThanTheNormalDistributionSays() {
        // Computed: t with 2 degrees of freedom at 2 has the closed form 0.5 + 2/(2·√(2 + 4)).
        assertThat(Conformance.atMost(24.6, known(24.6, 0.2, 2), 25.0)).isCloseTo(0.908248, within(1e-6));
        assertThat(Conformance.atMost(24.6, known(24.6, 0.2, INFINITE), 25.0)).isCloseTo(0.977250, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"24.3, 0.999767", "24.9, 0.691462", "25.0, 0.5", "25.2, 0.158655", "25.6, 0.0013499"})
    void probabilitiesBesideTheCallsAtMostTwentyFive(double value, double expected) {
        // Computed with the normal distribution, u = 0.2.
        assertThat(Conformance.atMost(value, known(value, 0.2, INFINITE), 25.0)).isCloseTo(expected, within(1e-6));
    }

    @Test
    void aLopsidedIntervalCountsByTheArmTowardsTheLimit() {
        var lopsided = new Uncertainty(2, INFINITE, new Interval(98, 106));
        // The arm of 2 below is 1.959964 standard uncertainties by definition of a 95 % interval.
        assertThat(Conformance.atLeast(100, lopsided, 98)).isCloseTo(0.975, within(1e-9));
        assertThat(Conformance.atMost(100, lopsided, 106)).isCloseTo(0.975, within(1e-9));
    }

    @Test
    void aValueWithoutAWidthIsSure() {
        var exact = new Uncertainty(0, INFINITE, new Interval(5, 5));
        assertThat(Conformance.atMost(5, exact, 6)).isEqualTo(1);
        assertThat(Conformance.atMost(5, exact, 4)).isZero();
    }
}
