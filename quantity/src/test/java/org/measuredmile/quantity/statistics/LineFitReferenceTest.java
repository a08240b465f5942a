package org.measuredmile.quantity.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/// Straight lines against JCGM 100:2008, H.3, and the Norris set of the NIST Statistical Reference Datasets.
class LineFitReferenceTest {
    private static final double[] TEMPERATURE_C = {
        21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
    };
    private static final double[] CORRECTION_C = {
        -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160
    };

    @Test
    void calibrationLineOfAThermometer() {
        var above20 = new double[TEMPERATURE_C.length];
        for (int i = 0; i < above20.length; i++) {
            above20[i] = TEMPERATURE_C[i] - 20;
        }
        var line = LineFit.through(above20, CORRECTION_C);
        // JCGM 100:2008, H.3.3: −0.1712, 0.00218, 0.0029, 0.00067, −0.930, 0.0035 as printed; more digits
        // recomputed
        assertThat(line.intercept()).isCloseTo(-0.171204, within(1e-6));
        assertThat(line.slope()).isCloseTo(0.0021827, within(1e-7));
        assertThat(line.interceptUncertainty()).isCloseTo(0.0028776, within(1e-7));
        assertThat(line.slopeUncertainty()).isCloseTo(0.00066794, within(1e-8));
        assertThat(line.correlation()).isCloseTo(-0.930430, within(1e-6));
        assertThat(line.residualStandardDeviation()).isCloseTo(0.00349756, within(1e-8));
        assertThat(line.degreesOfFreedom()).isEqualTo(9);
        // JCGM 100:2008, H.3.4: at 30 °C −0.1494 with 0.0041 as printed; more digits recomputed
        assertThat(line.at(10)).isCloseTo(-0.149377, within(1e-6));
        assertThat(line.uncertaintyAt(10)).isCloseTo(0.00413860, within(1e-7));
    }

    @Test
    void norris() throws IOException {
        try (var stream = Objects.requireNonNull(getClass().getResourceAsStream("nist-strd-norris.csv"))) {
            double[][] rows = new String(stream.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(row -> !row.startsWith("#"))
                    .map(row -> {
                        int comma = row.indexOf(',');
                        return new double[] {
                            Double.parseDouble(row.substring(0, comma)), Double.parseDouble(row.substring(comma + 1))
                        };
                    })
                    .toArray(double[][]::new);
            var x = new double[rows.length];
            var y = new double[rows.length];
            for (int i = 0; i < rows.length; i++) {
                y[i] = rows[i][0];
                x[i] = rows[i][1];
            }
            var line = LineFit.through(x, y);
            // NIST StRD, Norris, certified values; eleven digits are asked for, as QR in doubles reaches
            // them
            var elevenDigits = Percentage.withPercentage(1e-9);
            assertThat(line.intercept()).isCloseTo(-0.262323073774029, elevenDigits);
            assertThat(line.slope()).isCloseTo(1.00211681802045, elevenDigits);
            assertThat(line.interceptUncertainty()).isCloseTo(0.232818234301152, elevenDigits);
            assertThat(line.slopeUncertainty()).isCloseTo(0.000429796848199937, elevenDigits);
            assertThat(line.residualStandardDeviation()).isCloseTo(0.884796396144373, elevenDigits);
            assertThat(line.degreesOfFreedom()).isEqualTo(34);
        }
    }

    @Test
    void refusesPointsThatNoLineGoesThrough() {
        assertThatThrownBy(() -> LineFit.through(new double[] {1, 1, 1}, new double[] {1, 2, 3}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("x = 1.0");
        assertThatThrownBy(() -> LineFit.through(new double[] {1, 2}, new double[] {1, 2}))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> LineFit.through(new double[] {1, 2, Double.NaN}, new double[] {1, 2, 3}))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
