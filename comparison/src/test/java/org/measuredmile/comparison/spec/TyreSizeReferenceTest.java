package org.measuredmile.comparison.spec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class TyreSizeReferenceTest {
    /// 28-622 and 57-559: published worked examples of the estimate π(bead seat + 2 · width); 23-622: the rule
    /// of ISO 5775-1 for widths below 28 mm, read in summary; the others computed from the same rule. Tolerance
    /// 0.1 mm.
    @ParameterizedTest(name = "{0}: {1} mm")
    @CsvSource({
        "28-622, 2130.0",
        "57-559, 2114.3",
        "50-406, 1589.6",
        "50-507, 1906.9",
        "50-559, 2070.3",
        "57-584, 2192.8",
        "40-622, 2205.4",
        "50-622, 2268.2",
        "26x4.0, 2394.5",
        "20 x 4.0, 1913.9",
        "23-622, 2114.3",
        "700 x 35C, 2174.0",
    })
    void circumferencesByTheRule(String words, double expectedMm) {
        var size = TyreSize.read(words).orElseThrow();
        assertThat(1000 * size.circumferenceM()).isCloseTo(expectedMm, within(0.1));
    }

    /// A bike computer's published list, in cm; the estimate may be 3.3 % off it, as the crew's reference says.
    @ParameterizedTest(name = "{0}: {1} cm")
    @CsvSource({
        "16x1.50, 119",
        "16x1.75, 120",
        "20x1.75, 152",
        "20x1 3/8, 162",
        "24x1.75, 189",
        "24x2.00, 192",
        "26x1.50, 201",
        "26x1.95, 205",
        "26x2.10, 207",
        "26x2.35, 208",
        "27x1 1/4, 216",
        "650x38B, 211",
        "700x23C, 210",
    })
    void circumferencesNearAPublishedList(String words, double listCm) {
        var size = TyreSize.read(words).orElseThrow();
        assertThat(100 * size.circumferenceM() / listCm).isCloseTo(1, within(0.04));
    }

    /// Bead seats by trade name: ISO 5775 as summarised in an encyclopaedia.
    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({
        "'16 x 1 3/8', 35-349",
        "'26 x 1 3/8', 35-590",
        "'28 x 1 1/2', 38-635",
        "'27.5 x 2.25', 57-584",
        "'29 x 2.25', 57-622",
        "'650B x 47', 47-584",
        "'57-584 (27.5 x 2.25), reflective', 57-584",
    })
    void namesTheRim(String words, String iso) {
        assertThat(TyreSize.read(words).orElseThrow().words()).isEqualTo(iso);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "26 in", "26\"", "fat", "99-999", "26 x 1 7/9", "13 x 2.0", "1-622"})
    void inchesAloneNameNoRim(String words) {
        assertThat(TyreSize.read(words)).isEmpty();
    }

    static IntStream seeds() {
        return IntStream.range(0, 50);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void anyWordsAreASizeOfATyreOrNone(int seed) {
        var random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            var words = new StringBuilder();
            for (int j = random.nextInt(14); j > 0; j--) {
                words.append("0123456789 x×-./BC\"".charAt(random.nextInt(19)));
            }
            TyreSize.read(words.toString())
                    .ifPresent(size -> assertThat(size.circumferenceM()).isBetween(0.5, 3.0));
        }
    }
}
