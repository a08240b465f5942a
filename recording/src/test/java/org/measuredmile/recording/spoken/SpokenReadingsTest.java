package org.measuredmile.recording.spoken;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.spoken.SpokenReading.Confidence;

class SpokenReadingsTest {
    private static Mark said(double fromS, double toS, String text) {
        return new Mark(Mark.Kind.CAPTION, fromS, toS, text);
    }

    private static List<SpokenReading> in(String... captions) {
        var marks = new java.util.ArrayList<Mark>();
        for (int i = 0; i < captions.length; i++) {
            marks.add(said(2 * i, 2 * i + 2, captions[i]));
        }
        return SpokenReadings.in(marks);
    }

    private static SpokenReading only(String... captions) {
        List<SpokenReading> found = in(captions);
        assertThat(found).as(Arrays.toString(captions)).hasSize(1);
        return found.getFirst();
    }

    // Values: NIST SP 811, appendix B (mile 1609.344 m, foot 0.3048 m, inch 0.0254 m).
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            nineteen point four miles an hour       | SPEED    | 8.672576
            Nineteen point four mph                 | SPEED    | 8.672576
            it says 19.4 mph now                    | SPEED    | 8.672576
            we see 19 point 4 miles per hour        | SPEED    | 8.672576
            19.4mph                                 | SPEED    | 8.672576
            fifteen and a half miles an hour        | SPEED    | 6.92912
            15 1/2 mph                              | SPEED    | 6.92912
            15½ mph                                 | SPEED    | 6.92912
            one mile an hour                        | SPEED    | 0.44704
            thirty two kilometers an hour           | SPEED    | 8.888888888888889
            twenty-five kilometres per hour         | SPEED    | 6.944444444444445
            twenty two feet four inches             | LENGTH   | 6.8072
            twenty-two feet, four inches            | LENGTH   | 6.8072
            22 ft. 4 in.                            | LENGTH   | 6.8072
            22'4"                                   | LENGTH   | 6.8072
            six foot two                            | LENGTH   | 1.8796
            twenty two and a half feet              | LENGTH   | 6.858
            six point eight one metres              | LENGTH   | 6.81
            a minute eight                          | TIME     | 68
            a minute and eight seconds              | TIME     | 68
            one minute eight point three            | TIME     | 68.3
            1:08.3                                  | TIME     | 68.3
            sixty eight seconds                     | TIME     | 68
            six point four one seconds              | TIME     | 6.41
            half a second                           | TIME     | 0.5
            point four of a second                  | TIME     | 0.4
            half a mile                             | DISTANCE | 804.672
            a mile and a half                       | DISTANCE | 2414.016
            a quarter of a mile                     | DISTANCE | 402.336
            three quarters of a mile                | DISTANCE | 1207.008
            two miles and a half                    | DISTANCE | 4023.36
            one hundred and five watts              | POWER    | 105
            a hundred and five watts                | POWER    | 105
            seven hundred watts                     | POWER    | 700
            fourteen hundred watts                  | POWER    | 1400
            1,200 watts                             | POWER    | 1200
            two fifty watts                         | POWER    | 250
            one oh five watts                       | POWER    | 105
            two thousand three hundred and ten watts| POWER    | 2310
            five hundred and four watt hours        | ENERGY   | 1814400
            sixty one point five pounds             | MASS     | 27.895930755
            twenty psi                              | PRESSURE | 137895.14586336
            eighty two percent                      | RATIO    | 0.82
            minus two degrees celsius               | TEMPERATURE | 271.15
            """)
    void aNumberWithItsUnitIsRead(String words, QuantityKind kind, double si) {
        SpokenReading reading = only(words);
        assertThat(reading.kind()).as(reading.toString()).contains(kind);
        assertThat(reading.value()).isCloseTo(si, within(1e-9 * Math.abs(si)));
    }

    @Test
    void theWordsAreKeptAsTheyWereSaid() {
        SpokenReading reading = only("Right, that is Nineteen point four miles an hour, I think");
        assertThat(reading.text()).isEqualTo("Nineteen point four miles an hour");
        assertThat(reading.written()).isEqualTo("19.4 miles per hour");
        assertThat(reading.confidence()).isEqualTo(Confidence.CLEAR);
    }

    @Test
    void theTimeOfTheWordsIsTheirShareOfTheCue() {
        // 30 of 60 signs stand before the number.
        SpokenReading reading = SpokenReadings.in(
                        List.of(said(10, 14, "so now we are up to a speed of 20 miles an hour on this road")))
                .getFirst();
        assertThat(reading.timeS()).isCloseTo(10 + 4 * 31.0 / 60, within(1e-9));
    }

    @Test
    void aNumberMayReachOverTwoCaptions() {
        SpokenReading reading = only("we have nineteen point", "four miles an hour");
        assertThat(reading.value()).isCloseTo(8.672576, within(1e-9));
        assertThat(reading.text()).isEqualTo("nineteen point four miles an hour");
        assertThat(reading.timeS()).isBetween(0.7, 0.9);
    }

    @Test
    void silenceAndTheEndOfASentenceDivideNumbers() {
        assertThat(SpokenReadings.in(List.of(said(0, 1, "twenty"), said(9, 10, "two watts"))))
                .extracting(SpokenReading::value)
                .containsExactly(20.0, 2.0);
        assertThat(in("that is twenty. two watts more"))
                .extracting(SpokenReading::value)
                .containsExactly(20.0, 2.0);
        assertThat(in("fifteen, sixteen, seventeen miles an hour"))
                .extracting(SpokenReading::written)
                .containsExactly("15", "16", "17 miles per hour");
    }

    @Test
    void aNumberWithoutAUnitIsSaidToHaveNone() {
        SpokenReading reading = only("nineteen point four");
        assertThat(reading.kind()).isEmpty();
        assertThat(reading.unit()).isEmpty();
        assertThat(reading.value()).isEqualTo(19.4);
        assertThat(reading.confidence()).isEqualTo(Confidence.BARE);
    }

    @Test
    void aboutSoMuchIsSaidToBeSo() {
        assertThat(only("about fifteen miles an hour").confidence()).isEqualTo(Confidence.HEDGED);
        assertThat(only("fifteen miles an hour or so").confidence()).isEqualTo(Confidence.HEDGED);
        assertThat(only("two fifty watts").confidence()).isEqualTo(Confidence.IN_PIECES);
        assertThat(in("fifteen to sixteen miles an hour"))
                .extracting(SpokenReading::written, SpokenReading::confidence)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("15 miles per hour", Confidence.HEDGED),
                        org.assertj.core.groups.Tuple.tuple("16 miles per hour", Confidence.HEDGED));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "one of those things",
                "level five again",
                "take 12",
                "give me a minute",
                "just a second",
                "the twenty second run",
                "the 21st of them",
                "it costs $1,999",
                "two thousand dollars",
                "ten o'clock",
                "oh well",
                "the point is",
                "half of us",
                "and a half",
                "a hill",
                "no numbers at all"
            })
    void whatOnlyCountsOrNamesIsNoCandidate(String words) {
        assertThat(in(words)).isEmpty();
    }

    @Test
    void twoQuantitiesInOneSentenceAreTwo() {
        assertThat(in("two minutes, nineteen miles an hour and a hundred and five watts"))
                .extracting(SpokenReading::written)
                .containsExactly("2 minutes", "19 miles per hour", "105 watts");
        assertThat(in("six feet fourteen inches"))
                .extracting(SpokenReading::written)
                .containsExactly("6 feet", "14 inches");
    }

    @Test
    void behindANumberTheWordInIsNoUnit() {
        assertThat(in("fifteen in the wind")).extracting(SpokenReading::written).containsExactly("15");
    }
}
