package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NumberTextPropertyTest {
    private static double parsed(String text) {
        char[] padded = ("x" + text + "y").toCharArray();
        return NumberText.parse(padded, 1, padded.length - 1, '.');
    }

    private static void isWhatTheLibraryReads(String text) {
        assertThat(Double.doubleToRawLongBits(parsed(text)))
                .as(text)
                .isEqualTo(Double.doubleToRawLongBits(Double.parseDouble(text)));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void numbersOfAnyLengthAreReadExactlyAsTheLibraryReadsThem(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 100_000; i++) {
            StringBuilder text = new StringBuilder(random.nextInt(4) == 0 ? "-" : "");
            int whole = 1 + random.nextInt(random.nextInt(8) == 0 ? 20 : 5);
            int decimals = random.nextInt(random.nextInt(8) == 0 ? 30 : 14);
            for (int digit = 0; digit < whole; digit++) {
                text.append((char) ('0' + random.nextInt(10)));
            }
            text.append('.');
            for (int digit = 0; digit < decimals; digit++) {
                text.append((char) ('0' + random.nextInt(10)));
            }
            isWhatTheLibraryReads(text.toString());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {5, 6, 7, 8})
    void shortestFormsOfDoublesComeBackAsTheyWere(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 100_000; i++) {
            double value = (random.nextDouble() - 0.5) * StrictMath.pow(10, random.nextInt(16) - 6);
            isWhatTheLibraryReads(new BigDecimal(Double.toString(value)).toPlainString());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {9, 10})
    void numbersHalfwayBetweenTwoDoublesAreRoundedAsTheLibraryRoundsThem(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 50_000; i++) {
            long odd = (1L << 53) + 2L * random.nextInt() + (1L << 40) + 1;
            isWhatTheLibraryReads(Long.toString(odd));
            isWhatTheLibraryReads(
                    new BigDecimal(odd).movePointLeft(random.nextInt(20)).toPlainString());
        }
    }

    @Test
    void whatIsNoNumberIsNotANumber() {
        for (String text : new String[] {
            "", "-", ".", "1.2.3", "NaN", "Infinity", "1f", "0x10", "1e", "1 2", "--1", "1,5", "1e999", "x", "1-"
        }) {
            assertThat(parsed(text)).as(text).isNaN();
        }
    }

    @Test
    void signsExponentsAndZerosAreKept() {
        for (String text : new String[] {
            "+1.5", "-0", "-0.0", "1e3", "1.25E-7", "000000000000000000000000012.5", "18446744073709551615", "5."
        }) {
            isWhatTheLibraryReads(text);
        }
    }

    @Test
    void aDecimalCommaIsOneAndAPointIsThenNone() {
        assertThat(NumberText.parse("75,21000000000001".toCharArray(), 0, 17, ','))
                .isEqualTo(75.21000000000001);
        assertThat(NumberText.parse("1,5e2".toCharArray(), 0, 5, ',')).isEqualTo(150);
        assertThat(NumberText.parse("75.2".toCharArray(), 0, 4, ',')).isNaN();
    }
}
