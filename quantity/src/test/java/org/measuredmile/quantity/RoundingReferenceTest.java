package org.measuredmile.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/// Rounding against JCGM 100:2008, 7.2.6, and against decimals worked by hand.
class RoundingReferenceTest {
    @ParameterizedTest(name = "{0} ± {1} is {2} ± {3}")
    @CsvSource({
        // JCGM 100:2008, 7.2.6: 10.057 62 Ω with 27 mΩ is reported as 10.058 Ω
        "10.05762, 0.027, 10.058, 0.027",
        // by hand, the carry keeps two digits
        "24.9649, 0.0996, 24.96, 0.10",
        "21.4, 0.996, 21.4, 1.0",
        // by hand
        "1283.4, 47.3, 1283, 47",
        "551.28, 2.23, 551.3, 2.2",
        "1283.4, 473, 1280, 470",
        "-0.3149, 0.8351, -0.31, 0.84",
    })
    void deskRoundsTheHalfWidthToTwoDigits(double value, double halfWidth, String shown, String plusMinus) {
        var rounded = Rounding.forDesk(value, halfWidth);
        assertThat(rounded.value().toPlainString()).isEqualTo(shown);
        assertThat(rounded.plusMinus().toPlainString()).isEqualTo(plusMinus);
    }

    @ParameterizedTest(name = "{0} ± {1} is {2} ± {3}")
    @CsvSource({
        // house rule: one digit, two when it begins with 1; by hand
        "21.4, 0.61, 21.4, 0.6",
        "27.83, 1.29, 27.8, 1.3",
        "27.83, 0.96, 27.8, 1.0",
        "27.83, 0.996, 27.8, 1.0",
        "27.83, 0.94, 27.8, 0.9",
        "27.83, 1.96, 28, 2",
        "27.83, 0.104, 27.83, 0.10",
    })
    void proseRoundsTheHalfWidthToOneDigit(double value, double halfWidth, String shown, String plusMinus) {
        var rounded = Rounding.forProse(value, halfWidth);
        assertThat(rounded.value().toPlainString()).isEqualTo(shown);
        assertThat(rounded.plusMinus().toPlainString()).isEqualTo(plusMinus);
    }

    @ParameterizedTest(name = "{0} to {1} decimals is {2}")
    @CsvSource({
        // by hand, on the shortest decimal of the double; half goes away from zero
        "20.25, 1, 20.3",
        "-2.5, 0, -3",
        "2.675, 2, 2.68",
        "6.425, 2, 6.43",
        "9.96, 1, 10.0",
        "0.5, 0, 1",
        "-0.04, 1, 0.0",
        "1250, -2, 1300",
    })
    void halvesGoAwayFromZero(double value, int decimals, String expected) {
        assertThat(Rounding.toDecimals(value, decimals).toPlainString()).isEqualTo(expected);
    }

    @ParameterizedTest(name = "{0} to {1} digits is {2}")
    @CsvSource({"0.0996, 2, 0.10", "9.96, 2, 10", "9.96, 3, 9.96", "123456, 2, 120000", "2, 3, 2.00", "0, 2, 0.0"})
    void significantDigitsSurviveTheCarry(double value, int digits, String expected) {
        assertThat(Rounding.toSignificant(value, digits).toPlainString()).isEqualTo(expected);
    }

    @Test
    void noHalfWidthLeavesTheValueAlone() {
        assertThat(Rounding.forDesk(20.123456, 0).value().toPlainString()).isEqualTo("20.123456");
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void refusesWhatIsNoNumber(double value) {
        assertThatThrownBy(() -> Rounding.toDecimals(value, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Rounding.forDesk(value, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Rounding.forDesk(1, value)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void refusesANegativeHalfWidth() {
        assertThatThrownBy(() -> Rounding.forProse(1, -0.5)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void roundingTwiceChangesNothingAndKeepsTheOrder(long seed) {
        var random = new SplittableRandom(seed);
        for (int i = 0; i < 5000; i++) {
            double value = random.nextDouble(-1, 1) * Math.pow(10, random.nextInt(-6, 7));
            int decimals = random.nextInt(-2, 8);
            var once = Rounding.toDecimals(value, decimals);
            assertThat(Rounding.toDecimals(once.doubleValue(), decimals)).isEqualByComparingTo(once);
            double more = value + Math.abs(value) * random.nextDouble(0.2);
            assertThat(Rounding.toDecimals(more, decimals)).isGreaterThanOrEqualTo(once);

            double halfWidth = Math.pow(10, random.nextDouble(-5, 4));
            var desk = Rounding.forDesk(value, halfWidth);
            var again = Rounding.forDesk(
                    desk.value().doubleValue(), desk.plusMinus().doubleValue());
            assertThat(again.value()).isEqualByComparingTo(desk.value());
            assertThat(again.plusMinus()).isEqualByComparingTo(desk.plusMinus());
            assertThat(desk.plusMinus().precision()).isEqualTo(2);
            var prose = Rounding.forProse(value, halfWidth);
            assertThat(prose.plusMinus())
                    .isEqualByComparingTo(
                            Rounding.forProse(value, prose.plusMinus().doubleValue())
                                    .plusMinus());
        }
    }
}
