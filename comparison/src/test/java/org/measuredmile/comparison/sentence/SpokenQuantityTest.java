package org.measuredmile.comparison.sentence;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitSystem;

/// Expected words follow from the rule for speech in docs/sentences.md, worked by hand; units converted by their exact
/// ratios (NIST Special Publication 811 (2008), appendix B).
class SpokenQuantityTest {
    @ParameterizedTest(name = "{0} ± {1} {2}")
    @CsvSource(delimiter = '|', textBlock = """
        6.52272 | 0.18288 | LENGTH | twenty-one point four feet, give or take six tenths of a foot
        6.52272 | 0.1524  | LENGTH | twenty-one point four feet, give or take half a foot
        8.10    | 0.61    | LENGTH | twenty-seven feet, give or take two
        44739.8 | 1931.2  | DISTANCE | twenty-eight miles, give or take one
        44739.8 | 2414    | DISTANCE | twenty-eight miles, give or take one and a half
        8.9408  | 0.13    | SPEED | twenty miles an hour, give or take three tenths of a mile an hour
        79.4    | 5.1     | TIME | one minute nineteen, give or take five seconds
        60.2    | 4       | TIME | one minute, give or take four seconds
        68.3    | 0.4     | TIME | one minute eight point three, give or take four tenths of a second
        0.54    | 0.11    | TIME | half a second, give or take a tenth of a second
        7135    | 1045    | TIME | two hours, give or take fifteen minutes
        16680   | 720     | TIME | four hours forty, give or take ten minutes
        0.438   | 0.005   | RATIO | forty-three point eight per cent, give or take half a per cent
        27.5    | 0       | MASS | sixty point six two seven one pounds
        """)
    void saysValuesWithTheirHalfWidths(double si, double halfWidthSi, QuantityKind kind, String words) {
        assertThat(SpokenQuantity.figure(si, halfWidthSi, kind, UnitSystem.IMPERIAL))
                .isEqualTo(words);
    }

    @ParameterizedTest(name = "{0} ± {1} {2}")
    @CsvSource(delimiter = '|', textBlock = """
        6.52272 | 0.18288 | LENGTH | about six and a half metres
        27.5    | 0.12    | MASS | about twenty-seven and a half kilograms
        76150   | 11800   | DISTANCE | about eighty kilometres
        8.49    | 0.41    | SPEED | about thirty-one kilometres an hour
        """)
    void saysAboutHowMuchItIsInTheOtherSystem(double si, double halfWidthSi, QuantityKind kind, String words) {
        assertThat(SpokenQuantity.about(si, halfWidthSi, kind, UnitSystem.METRIC))
                .isEqualTo(words);
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource(delimiter = '|', textBlock = """
        1    | FOOT | one foot
        0.5  | MILE | half a mile
        0.25 | HOUR | a quarter of an hour
        0.75 | INCH | three quarters of an inch
        2    | MILE_PER_HOUR | two miles an hour
        3.5  | METRE_PER_SECOND_SQUARED | three and a half metres per second squared
        1    | POUND_FORCE | one pound of force
        60   | SECOND | one minute
        """)
    void saysAmounts(BigDecimal number, Unit unit, String words) {
        assertThat(SpokenQuantity.amount(number, unit)).isEqualTo(words);
    }

    @ParameterizedTest
    @EnumSource(Unit.class)
    void everyUnitHasWordsWithoutSigns(Unit unit) {
        var words = UnitWords.of(unit);

        assertThat(words.one() + words.many() + words.half()).matches("[A-Za-z -]*");
    }

    @Test
    void roundsALowerBoundDown() {
        // 47.1495 km is 29.2974 mi; half-width 0.373 km is 0.232 mi, said to a tenth.
        assertThat(SpokenQuantity.atLeast(47_149.5, 373, QuantityKind.DISTANCE, UnitSystem.IMPERIAL))
                .isEqualTo("at least twenty-nine point two miles");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
        from 20 mph | from twenty miles an hour
        at 15 to 20 km/h (9 to 12 mph) | at fifteen to twenty kilometres an hour, nine to twelve miles an hour
        at level 5 (its highest) | at level five, its highest
        over 99 % | over ninety-nine per cent
        1,312 ft and −0.31 s | one thousand three hundred and twelve feet and minus nought point three one seconds
        on 6 May 2031 | on the sixth of May twenty thirty-one
        87 ± 3 | eighty-seven give or take three
        """)
    void turnsWrittenWordsIntoSpokenOnes(String written, String words) {
        assertThat(SpokenWords.of(written)).isEqualTo(words);
    }
}
