package org.measuredmile.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/// Exact unit conversions: the definitions of NIST Special Publication 811 (2008), appendix B; the products and
/// quotients of them were recomputed.
class UnitReferenceTest {
    @ParameterizedTest(name = "1 {0} is {1} in SI")
    @CsvSource({
        "INCH, 0.0254",
        "FOOT, 0.3048",
        "YARD, 0.9144",
        "MILE, 1609.344",
        "NAUTICAL_MILE, 1852",
        "MILE_PER_HOUR, 0.44704",
        "POUND, 0.45359237",
        "OUNCE, 0.028349523125",
        "STONE, 6.35029318",
        "POUND_FORCE, 4.4482216152605",
        "POUND_PER_SQUARE_INCH, 6894.757293168361",
        "STANDARD_GRAVITY, 9.80665",
        "WATT_HOUR, 3600",
        "KILOWATT_HOUR, 3600000",
        "BAR, 100000",
        "SQUARE_FOOT, 0.09290304",
        "AMPERE_HOUR, 3600",
        "POUND_FORCE_FOOT, 1.3558179483314004",
        "WATT_HOUR_PER_KILOMETRE, 3.6",
    })
    void oneOfEach(Unit unit, double si) {
        assertThat(unit.differenceToSi(1)).isCloseTo(si, Percentage.withPercentage(1e-13));
    }

    @Test
    void conversionsBetweenBothSystems() {
        // recomputed from the definitions, to the digits shown
        assertThat(convert(26.2, Unit.MILE, Unit.KILOMETRE)).isCloseTo(42.1648128, within(1e-12));
        assertThat(convert(75.0, Unit.KILOGRAM, Unit.POUND)).isCloseTo(165.346697, within(1e-6));
        assertThat(convert(1, Unit.KILOGRAM, Unit.POUND)).isCloseTo(2.2046226218, within(1e-10));
        assertThat(convert(68, Unit.DEGREE_FAHRENHEIT, Unit.DEGREE_CELSIUS)).isCloseTo(20.0, within(1e-9));
        assertThat(Unit.DEGREE_FAHRENHEIT.toSi(100)).isCloseTo(310.927778, within(1e-6));
        assertThat(convert(1, Unit.KILOMETRE_PER_HOUR, Unit.MILE_PER_HOUR)).isCloseTo(0.6213711922, within(1e-10));
        assertThat(convert(35, Unit.POUND_PER_SQUARE_INCH, Unit.KILOPASCAL)).isCloseTo(241.31651, within(1e-5));
        assertThat(convert(2.5, Unit.BAR, Unit.POUND_PER_SQUARE_INCH)).isCloseTo(36.25943, within(1e-5));
        assertThat(Unit.FOOT.toSi(21) + Unit.INCH.toSi(4)).isCloseTo(6.5024, within(1e-12));
        assertThat(convert(6.50, Unit.METRE, Unit.FOOT)).isCloseTo(21.3255, within(1e-4));
        assertThat(convert(672, Unit.WATT_HOUR, Unit.KILOJOULE)).isEqualTo(2419.2);
        assertThat(convert(0.4, Unit.KILOMETRE, Unit.MILE)).isCloseTo(0.248548, within(1e-6));
    }

    @Test
    void legalSpeedsOfBothSystemsAreNotEqual() {
        // 20 mph is 32.187 km/h, 28 mph is 45.062 km/h: from the mile of 1609.344 m
        assertThat(convert(20, Unit.MILE_PER_HOUR, Unit.KILOMETRE_PER_HOUR)).isCloseTo(32.18688, within(1e-12));
        assertThat(convert(28, Unit.MILE_PER_HOUR, Unit.KILOMETRE_PER_HOUR)).isCloseTo(45.061632, within(1e-12));
    }

    private static double convert(double value, Unit from, Unit to) {
        return to.fromSi(from.toSi(value));
    }
}
