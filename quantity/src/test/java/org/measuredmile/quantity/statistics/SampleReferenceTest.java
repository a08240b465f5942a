package org.measuredmile.quantity.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/// Means and standard deviations against JCGM 100:2008 and the certified values of the NIST Statistical Reference
/// Datasets (univariate; work of a US government agency, public domain; the values stand in the data files).
class SampleReferenceTest {
    @Test
    void twentyTemperaturesOfTheGuide() {
        // JCGM 100:2008, 4.4.3: mean 100.145, s 1.489, s/√n 0.333 as printed; further digits recomputed
        var temperatures = Sample.of(
                96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95,
                101.11, 101.20, 101.57, 101.84, 102.36, 102.72);
        assertThat(temperatures.mean()).isCloseTo(100.145, within(1e-6));
        assertThat(temperatures.standardDeviation()).isCloseTo(1.488845, within(1e-6));
        assertThat(temperatures.standardUncertaintyOfMean()).isCloseTo(0.332916, within(1e-6));
    }

    @ParameterizedTest(name = "{0} to {1} digits of the mean, {2} of the standard deviation")
    @CsvSource({
        // digits: what a two-pass computation in doubles reaches, as measured for each set
        "numacc1, 14, 14",
        "numacc2, 14, 14",
        "numacc3, 14, 9",
        "numacc4, 14, 8",
        "michelso, 14, 12",
        "mavro, 14, 12",
        "lottery, 14, 14",
        "lew, 14, 14",
    })
    void agreesWithTheCertifiedValues(String set, int digitsOfMean, int digitsOfS) {
        List<String> lines = lines("nist-strd-" + set + ".txt");
        double mean = Double.parseDouble(lines.get(0).substring("mean ".length()));
        double s = Double.parseDouble(lines.get(1).substring("standard-deviation ".length()));
        var values = new ArrayList<Double>();
        lines.subList(2, lines.size()).forEach(line -> values.add(Double.parseDouble(line)));
        var sample = new Sample(values);
        assertThat(agreeingDigits(sample.mean(), mean)).isGreaterThanOrEqualTo(digitsOfMean);
        assertThat(agreeingDigits(sample.standardDeviation(), s)).isGreaterThanOrEqualTo(digitsOfS);
    }

    @Test
    void fiveStopsAndTheFirstThree() {
        // recomputed: mean 6.426, s 0.09071935, 95 % half-width of the mean 0.1126429; first three 0.1201388,
        // 0.2984413
        var five = Sample.of(6.42, 6.31, 6.55, 6.38, 6.47);
        var three = Sample.of(6.42, 6.31, 6.55);
        assertThat(five.mean()).isCloseTo(6.426, within(1e-7));
        assertThat(five.standardDeviation()).isCloseTo(0.09071935, within(1e-7));
        assertThat(halfWidth(five)).isCloseTo(0.1126429, within(1e-7));
        assertThat(three.standardDeviation()).isCloseTo(0.1201388, within(1e-7));
        assertThat(halfWidth(three)).isCloseTo(0.2984413, within(1e-7));
    }

    @Test
    void medianAndMedianDeviationOfFiveStops() {
        // recomputed from the definitions: median 6.42, 1.4826 · MAD = 0.07413
        var five = Sample.of(6.42, 6.31, 6.55, 6.38, 6.47);
        assertThat(Quantile.median(five)).isCloseTo(6.42, within(1e-12));
        assertThat(Quantile.NORMAL_CONSISTENCY * Quantile.medianAbsoluteDeviation(five))
                .isCloseTo(0.07413, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({
        // share, type 7, type 8: recomputed with R's quantile() after Hyndman and Fan (1996)
        "0.05, 1.88, 1.7",
        "0.10, 2.06, 1.8466667",
        "0.25, 2.925, 2.7416667",
        "0.50, 3.65, 3.65",
        "0.75, 4.8, 5.0916667",
        "0.90, 6.24, 6.9866667",
        "0.95, 6.87, 7.5",
    })
    void quantilesOfBothTypes(double share, double type7, double type8) {
        var ten = Sample.of(2.1, 3.4, 1.7, 5.0, 4.2, 2.8, 3.9, 7.5, 6.1, 3.3);
        assertThat(Quantile.TYPE_7.at(share, ten)).isCloseTo(type7, within(1e-7));
        assertThat(Quantile.TYPE_8.at(share, ten)).isCloseTo(type8, within(1e-7));
    }

    @Test
    void quantilesEndAtTheEndsOfTheSample() {
        var three = Sample.of(3, 1, 2);
        assertThat(Quantile.TYPE_7.at(0, three)).isEqualTo(1);
        assertThat(Quantile.TYPE_7.at(1, three)).isEqualTo(3);
    }

    @Test
    void aSingleValueHasNoScatter() {
        assertThatThrownBy(() -> Sample.of(3).standardDeviation()).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(Sample::of).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Sample.of(1, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }

    private static double halfWidth(Sample sample) {
        return StudentT.twoSided95(sample.degreesOfFreedom()) * sample.standardUncertaintyOfMean();
    }

    private static double agreeingDigits(double computed, double certified) {
        double relative = Math.abs(computed - certified) / Math.abs(certified);
        return relative == 0 ? 15 : -Math.log10(relative);
    }

    private static List<String> lines(String name) {
        try (var stream = Objects.requireNonNull(SampleReferenceTest.class.getResourceAsStream(name), name)) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(name, e);
        }
    }
}
