package org.measuredmile.recording.spoken;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Mark;

/// Whatever number is spelled out, the same number is read.
class SpokenNumberPropertyTest {
    private static final String[] SMALL =
            ("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
                            + "seventeen eighteen nineteen")
                    .split(" ");
    private static final String[] TENS = "- - twenty thirty forty fifty sixty seventy eighty ninety".split(" ");

    private static String spelled(int number, String and, String hyphen) {
        if (number < 20) {
            return SMALL[number];
        }
        if (number < 100) {
            return TENS[number / 10] + (number % 10 == 0 ? "" : hyphen + SMALL[number % 10]);
        }
        String rest = number % 100 == 0 ? "" : and + spelled(number % 100, and, hyphen);
        return SMALL[number / 100] + " hundred" + rest;
    }

    private static SpokenReading only(String words) {
        List<SpokenReading> found = SpokenReadings.in(List.of(new Mark(Mark.Kind.CAPTION, 0, 3, words)));
        assertThat(found).as(words).hasSize(1);
        return found.getFirst();
    }

    static IntStream below1000() {
        return IntStream.range(0, 1000);
    }

    @ParameterizedTest
    @MethodSource("below1000")
    void everyNumberBelowAThousandIsReadBack(int number) {
        for (String and : new String[] {" and ", " "}) {
            for (String hyphen : new String[] {"-", " "}) {
                String words = spelled(number, and, hyphen);
                assertThat(only(words + " watts").value()).as(words).isEqualTo(number);
                assertThat(only("so " + words + " seconds there").written()).isEqualTo(number + " seconds");
            }
        }
        assertThat(only(number + " watts").value()).isEqualTo(number);
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void decimalsSaidDigitByDigitAreReadBack(long seed) {
        RandomGenerator random = new Seed(seed).stream(0);
        for (int i = 0; i < 500; i++) {
            int whole = random.nextInt(1000);
            var digits = new StringBuilder();
            var words = new StringBuilder(spelled(whole, random.nextBoolean() ? " and " : " ", " ")).append(" point");
            for (int j = 1 + random.nextInt(3); j > 0; j--) {
                int digit = random.nextInt(10);
                digits.append(digit);
                words.append(' ').append(digit == 0 && random.nextBoolean() ? "oh" : SMALL[digit]);
            }
            assertThat(only(words + " metres").written())
                    .as(words.toString())
                    .isEqualTo(whole + "." + digits + " metres");
            assertThat(only(words.toString()).value()).isEqualTo(Double.parseDouble(whole + "." + digits));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23})
    void thousandsAreReadBack(long seed) {
        RandomGenerator random = new Seed(seed).stream(0);
        for (int i = 0; i < 300; i++) {
            int thousands = 1 + random.nextInt(999);
            int rest = random.nextInt(1000);
            String words = spelled(thousands, " and ", "-") + " thousand"
                    + (rest == 0 ? "" : (rest < 100 ? " and " : " ") + spelled(rest, " and ", "-"));
            assertThat(only(words + " watts").value()).as(words).isEqualTo(thousands * 1000.0 + rest);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {31, 32, 33})
    void anyWordsInAnyOrderAreAnswered(long seed) {
        RandomGenerator random = new Seed(seed).stream(0);
        String[] words =
                ("a an and half quarter three point oh minus hundred thousand twenty two feet foot inches in of "
                                + "minute seconds second mph miles hour per , . "
                                + "19.4 1:08 12 ½ 1/2 to or about level $ % ' \"")
                        .split(" ");
        for (int i = 0; i < 2000; i++) {
            var text = new StringBuilder();
            for (int j = 1 + random.nextInt(14); j > 0; j--) {
                text.append(words[random.nextInt(words.length)]).append(' ');
            }
            var found = SpokenReadings.in(List.of(new Mark(Mark.Kind.CAPTION, 5, 8, text.toString())));
            assertThat(found).allSatisfy(one -> {
                assertThat(one.timeS()).isBetween(5.0, 8.0);
                assertThat(one.value()).isFinite();
                assertThat(one.text()).isNotBlank();
                assertThat(text).contains(one.text());
            });
        }
    }
}
