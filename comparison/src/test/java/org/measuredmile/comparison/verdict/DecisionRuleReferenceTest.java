package org.measuredmile.comparison.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.Unit;

/// Calls at the edges, computed by hand from the rule of JCGM 106:2012, 8.3, with a guard band of U.
class DecisionRuleReferenceTest {
    @ParameterizedTest
    @CsvSource({
        "24.3, MEETS",
        "24.9, CANNOT_TELL",
        "25.0, CANNOT_TELL",
        "25.2, CANNOT_TELL",
        "25.6, FALLS_SHORT",
        // In binary 24.6 + 0.4 need not be 25.0.
        "24.6, MEETS",
        "25.4, CANNOT_TELL"
    })
    void atMostTwentyFiveWithinFourTenths(String value, Verdict expected) {
        assertThat(DecisionRule.judge(Stated.plusMinus(value, "0.4"), new Limit.AtMost(new BigDecimal("25.0"))))
                .isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "82, MEETS",
        "80, MEETS",
        "78, CANNOT_TELL",
        "74, CANNOT_TELL",
        "70, CANNOT_TELL",
        "70.0, CANNOT_TELL",
        "66, FALLS_SHORT"
    })
    void atLeastSeventyFiveWithinFive(String value, Verdict expected) {
        assertThat(DecisionRule.judge(Stated.plusMinus(value, "5"), new Limit.AtLeast(new BigDecimal("75"))))
                .isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"25.0, MEETS", "22, MEETS", "21.9, CANNOT_TELL", "17.9, FALLS_SHORT", "18, CANNOT_TELL"})
    void betweenTwentyAndThirtyWithinTwo(String value, Verdict expected) {
        var limit = new Limit.Between(new BigDecimal("20"), new BigDecimal("30"));
        assertThat(DecisionRule.judge(Stated.plusMinus(value, "2"), limit)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"20.0, CANNOT_TELL", "20.3, CANNOT_TELL", "20.4, FALLS_SHORT", "19.6, FALLS_SHORT"})
    void anExactValueCanOnlyBeContradicted(String value, Verdict expected) {
        assertThat(DecisionRule.judge(Stated.plusMinus(value, "0.3"), new Limit.Exactly(new BigDecimal("20"))))
                .isEqualTo(expected);
    }

    @Test
    void aClaimInPoundsIsTheDecimalThatWasWritten() {
        // 1 lb = 0.45359237 kg (international pound, exact).
        assertThat(Stated.decimal(61.0 * 0.45359237, Unit.POUND)).isEqualByComparingTo("61");
        assertThat(Stated.decimal(26.3 * 0.45359237, Unit.POUND)).isEqualByComparingTo("26.3");
    }

    @Test
    void aMeasuredValueIsComparedAsItIsPrinted() {
        // 27.6691 kg are 61.0000 lb, ± 0.0907 kg are 0.19996 lb, printed 61.00 ± 0.20 lb.
        var stated = Stated.of(27.66913457, Interval.around(27.66913457, 0.0907), Unit.POUND);
        assertThat(stated).isEqualTo(Stated.plusMinus("61.00", "0.20"));
    }
}
