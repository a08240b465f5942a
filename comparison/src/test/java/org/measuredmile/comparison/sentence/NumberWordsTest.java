package org.measuredmile.comparison.sentence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/// British English number words: common practice, no source.
class NumberWordsTest {
    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({
        "0, nought",
        "7, seven",
        "13, thirteen",
        "20, twenty",
        "21, twenty-one",
        "100, one hundred",
        "105, one hundred and five",
        "999, nine hundred and ninety-nine",
        "1000, one thousand",
        "1001, one thousand and one",
        "2047, two thousand and forty-seven",
        "2147, two thousand one hundred and forty-seven",
        "9999, nine thousand nine hundred and ninety-nine",
        "3900000, three million nine hundred thousand",
        "20000001, twenty million and one",
        "-3, minus three",
    })
    void saysWholeNumbers(long number, String words) {
        assertThat(NumberWords.whole(number)).isEqualTo(words);
    }

    @Test
    void everyWholeNumberToNineThousandHasWordsOfItsOwn() {
        var words = new HashSet<String>();
        IntStream.rangeClosed(0, 9_999).mapToObj(NumberWords::whole).forEach(words::add);

        assertThat(words).hasSize(10_000).allMatch(one -> one.matches("[a-z -]+"));
    }

    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({
        "21.4, twenty-one point four",
        "6.5, six and a half",
        "6.50, six and a half",
        "6.25, six and a quarter",
        "6.75, six and three quarters",
        "0.5, nought point five",
        "0.06, nought point nought six",
        "12.0, twelve",
        "-0.31, minus nought point three one",
        "1.25, one and a quarter",
        "1.26, one point two six",
    })
    void saysDecimalsWithHalvesAndQuarters(BigDecimal number, String words) {
        assertThat(NumberWords.decimal(number)).isEqualTo(words);
    }

    @ParameterizedTest(name = "{0} is {1} and {2}")
    @CsvSource({
        "1, first, 1st",
        "3, third, 3rd",
        "12, twelfth, 12th",
        "13, thirteenth, 13th",
        "20, twentieth, 20th",
        "22, twenty-second, 22nd",
        "111, one hundred and eleventh, 111th",
        "101, one hundred and first, 101st",
    })
    void saysPlaces(int place, String words, String digits) {
        assertThat(NumberWords.ordinal(place)).isEqualTo(words);
        assertThat(NumberWords.shortOrdinal(place)).isEqualTo(digits);
    }

    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({
        "2031, twenty thirty-one",
        "2005, two thousand and five",
        "1905, nineteen oh five",
        "1900, nineteen hundred",
        "2010, twenty ten",
    })
    void saysYearsByTheirHalves(int year, String words) {
        assertThat(NumberWords.year(year)).isEqualTo(words);
    }

    @Test
    void refusesWhatItHasNoWordsFor() {
        assertThatThrownBy(() -> NumberWords.whole(1_000_000_000)).isInstanceOf(IllegalArgumentException.class);
    }
}
