package org.measuredmile.comparison.legal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.comparison.legal.LegalOutcome.CANNOT_TELL;
import static org.measuredmile.comparison.legal.LegalOutcome.OUTSIDE;
import static org.measuredmile.comparison.legal.LegalOutcome.WITHIN;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.comparison.legal.LegalRule.Operator;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.budget.Uncertainty;

class LegalLimitReferenceTest {
    /// Source: international mile of 1609.344 m, so 1 mph = 1.609344 km/h; the products by hand.
    @ParameterizedTest
    @CsvSource({"20, 32.18688", "28, 45.061632", "15.5, 24.944832", "3.7, 5.9545728", "19.95, 32.1064128"})
    void milesAnHourAreExactInKilometresAnHour(double mph, BigDecimal kmh) {
        var beside = Beside.exactly(Unit.MILE_PER_HOUR.toSi(mph), Unit.KILOMETRE_PER_HOUR);
        assertThat(beside.value()).isEqualByComparingTo(kmh);
    }

    /// Source: the same, divided, to five decimals.
    @ParameterizedTest
    @CsvSource({"25, 15.53428", "32, 19.88388", "45, 27.96170", "6, 3.72823", "27.5, 17.08770"})
    void kilometresAnHourAreNoRoundNumberOfMiles(double kmh, BigDecimal mph) {
        var beside = Beside.exactly(Unit.KILOMETRE_PER_HOUR.toSi(kmh), Unit.MILE_PER_HOUR);
        assertThat(beside.value()).isCloseTo(mph, within(new BigDecimal("0.00001")));
    }

    /// Source: avoirdupois pound of 0.45359237 kg; 16 CFR 1512.5 prints 150 lb as 68.1 kg, which is 150.1348 lb.
    @Test
    void theRiderOfTheUnitedStatesTextIsAnExactMass() {
        var rule = LegalRules.find("us-low-speed").orElseThrow().rules().getFirst();
        assertThat(rule.riderKg().getAsDouble()).isCloseTo(77.1107029, within(1e-12));
        assertThat(Unit.POUND.toSi(150)).isCloseTo(68.0388555, within(1e-12));
        assertThat(Unit.POUND.fromSi(68.1)).isCloseTo(150.1348, within(0.0001));
    }

    /// Source: mechanical horsepower of 550 ft·lbf/s, 745.69987158227022 W; 15 USC 2085(b) prints 1 h.p. for 750 W.
    @Test
    void sevenHundredAndFiftyWattsAreMoreThanOneHorsepower() {
        double horsepowerW = 550 * Unit.FOOT.toSi(1) * Unit.POUND_FORCE.toSi(1);
        assertThat(750 / horsepowerW).isCloseTo(1.00577, within(0.00001));
    }

    /// Source: JCGM 106:2012, 8.3.3.2, the example of the speed limit, for 100 km/h (it prints 107); 25 and 45 km/h
    /// and 95 % by the same formula, T / (1 − z·0.02).
    @ParameterizedTest
    @CsvSource({
        "100, 0.999, 106.58761",
        "25, 0.999, 26.64690",
        "25, 0.95, 25.85040",
        "45, 0.999, 47.96443",
        "45, 0.95, 46.53072"
    })
    void anAccusationWaitsUntilTheGuardBandIsPassed(BigDecimal limitKmh, double sure, double fromKmh) {
        var limit = new LegalLimit(limitKmh, Unit.KILOMETRE_PER_HOUR);
        assertThat(judged(limit, fromKmh - 0.02, sure)).isEqualTo(CANNOT_TELL);
        assertThat(judged(limit, fromKmh + 0.02, sure)).isEqualTo(OUTSIDE);
    }

    private static LegalOutcome judged(LegalLimit limit, double kmh, double sure) {
        double si = limit.unit().toSi(kmh);
        double standard = 0.02 * si;
        var known = new Uncertainty(standard, Double.POSITIVE_INFINITY, Interval.around(si, 1.959964 * standard));
        return limit.judge(Operator.AT_MOST, Beside.of(si, LegalLimit.guarded(si, known, sure), limit.unit()));
    }

    /// Source: JCGM 106:2012, 8.3.3, the example with ten measurements: t = 1.833113 for 9 degrees of freedom,
    /// guard band 0.366623 for a standard deviation of 0.20.
    @Test
    void fewDegreesOfFreedomWidenTheGuardBand() {
        var known = new Uncertainty(0.20, 9, Interval.around(2, 0.20 * 2.262157));
        assertThat(2 - LegalLimit.guarded(2, known, 0.95).low()).isCloseTo(0.366623, within(1e-6));
        assertThat(2 - LegalLimit.guarded(2, known, LegalLimit.SURE).low()).isCloseTo(0.4524314, within(1e-6));
    }

    /// Source: the operators of 15 USC 2085(b), "less than", and of SI 1983/1168, "not exceeding", on the ends
    /// of an interval.
    @ParameterizedTest
    @CsvSource({
        "BELOW, 19.50, 19.99, WITHIN",
        "BELOW, 19.50, 20.00, CANNOT_TELL",
        "BELOW, 19.50, 20.01, CANNOT_TELL",
        "BELOW, 19.99, 20.50, CANNOT_TELL",
        "BELOW, 20.00, 20.50, OUTSIDE",
        "BELOW, 20.01, 20.50, OUTSIDE",
        "AT_MOST, 19.50, 19.99, WITHIN",
        "AT_MOST, 19.50, 20.00, WITHIN",
        "AT_MOST, 19.50, 20.01, CANNOT_TELL",
        "AT_MOST, 19.99, 20.50, CANNOT_TELL",
        "AT_MOST, 20.00, 20.50, CANNOT_TELL",
        "AT_MOST, 20.01, 20.50, OUTSIDE",
        "BELOW, 20.00, 20.00, OUTSIDE",
        "AT_MOST, 20.00, 20.00, WITHIN"
    })
    void atJustUnderAndJustOverTheOperatorDecides(
            Operator operator, BigDecimal low, BigDecimal high, LegalOutcome outcome) {
        var limit = new LegalLimit(new BigDecimal(20), Unit.MILE_PER_HOUR);
        var middle = low.add(high).divide(BigDecimal.TWO);
        assertThat(limit.judge(operator, new Beside(middle, low, high, Unit.MILE_PER_HOUR)))
                .isEqualTo(outcome);
    }

    /// Source: 24.6 + 0.4 is not 25 in binary numbers; computed.
    @Test
    void theNoiseOfBinaryNumbersMovesNoVerdict() {
        var limit = new LegalLimit(new BigDecimal(25), Unit.KILOMETRE_PER_HOUR);
        double high = Unit.KILOMETRE_PER_HOUR.toSi(24.6) + Unit.KILOMETRE_PER_HOUR.toSi(0.4);
        var interval = new Interval(Unit.KILOMETRE_PER_HOUR.toSi(24.2), high);
        var beside = Beside.of(Unit.KILOMETRE_PER_HOUR.toSi(24.6), interval, limit.unit());
        assertThat(limit.judge(Operator.AT_MOST, beside)).isEqualTo(WITHIN);
        assertThat(limit.judge(Operator.BELOW, beside)).isEqualTo(CANNOT_TELL);
    }

    /// Source: rounding 19.996 up would accuse; rounding 20.004 down would acquit. Worked by hand.
    @Test
    void roundingAloneNeitherAccusesNorAcquits() {
        var limit = new LegalLimit(new BigDecimal(20), Unit.MILE_PER_HOUR);
        assertThat(limit.judge(Operator.BELOW, ends(19.996, 20.6))).isEqualTo(CANNOT_TELL);
        assertThat(limit.judge(Operator.AT_MOST, ends(19.4, 20.004))).isEqualTo(CANNOT_TELL);
    }

    private static Beside ends(double low, double high) {
        var interval = new Interval(Unit.MILE_PER_HOUR.toSi(low), Unit.MILE_PER_HOUR.toSi(high));
        return Beside.of(Unit.MILE_PER_HOUR.toSi((low + high) / 2), interval, Unit.MILE_PER_HOUR);
    }
}
