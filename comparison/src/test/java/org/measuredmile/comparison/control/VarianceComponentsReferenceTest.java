package org.measuredmile.comparison.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.measuredmile.comparison.control.MixedModel.Factor;

class VarianceComponentsReferenceTest {
    private static double square(double one) {
        return one * one;
    }

    private static Offset<Double> relative(double value, double share) {
        return within(Math.abs(value) * share);
    }

    @Test
    void dyestuff_by_restricted_likelihood() {
        // The help page of lme4 for R gives variances 1764 and 2451, mean 1527.5, standard error 19.38, criterion
        // 319.6543.
        var found = RemlEstimate.of(Published.oneWay(Published.groups(Published.DYESTUFF)));
        assertThat(square(found.spreads().getFirst())).isEqualTo(1764.05, within(0.02));
        assertThat(square(found.runSpread())).isEqualTo(2451.25, within(0.02));
        assertThat(found.criterion()).isEqualTo(319.6543, within(1e-4));
        assertThat(found.fit().effects()[0]).isEqualTo(1527.5, within(1e-6));
        double standardError =
                Math.sqrt(found.fit().covariance()[0][0] * found.fit().runVariance());
        assertThat(standardError).isEqualTo(19.383412, within(1e-3));
    }

    @Test
    void dyestuff_by_sums_of_squares() {
        // Davies and Goldsmith (1972), table 6.2: mean squares 11271.5 and 2451.25.
        var squares = SequentialSquares.of(Published.oneWay(Published.groups(Published.DYESTUFF)));
        assertThat(squares.line("group").meanSquare()).isEqualTo(11271.5, within(1e-6));
        assertThat(squares.line("run").meanSquare()).isEqualTo(2451.25, within(1e-6));
        assertThat(squares.line("group").variance()).isEqualTo(1764.05, within(1e-6));
        assertThat(squares.line("group").degreesOfFreedom()).isEqualTo(5);
        assertThat(squares.line("run").degreesOfFreedom()).isEqualTo(24);
    }

    @Test
    void what_batches_are_predicted_to_add_is_drawn_towards_nothing() {
        // lme4 for R, ranef of the model above: computed for the references.
        var found = RemlEstimate.of(Published.oneWay(Published.groups(Published.DYESTUFF)));
        assertThat(found.fit().predicted())
                .containsExactly(
                        new double[] {-17.606851, 0.391263, 28.562226, -23.084538, 56.733188, -44.995287},
                        within(1e-3));
    }

    @Test
    void unequal_groups_make_the_two_methods_differ() {
        // Computed with lme4 for R and by the formula of the analysis of variance: lines 2, 3, 8, 15 and 30 left out.
        double[][] groups = without(Published.groups(Published.DYESTUFF), Set.of(2, 3, 8, 15, 30));
        assertThat(Arrays.stream(groups).mapToInt(group -> group.length)).containsExactly(3, 4, 4, 5, 5, 4);
        var model = Published.oneWay(groups);
        var found = RemlEstimate.of(model);
        assertThat(square(found.spreads().getFirst())).isEqualTo(1576.747, within(0.05));
        assertThat(square(found.runSpread())).isEqualTo(2203.869, within(0.02));
        assertThat(found.fit().effects()[0]).isEqualTo(1537.5794, within(1e-3));
        assertThat(found.criterion()).isEqualTo(262.93400, within(1e-4));
        var squares = SequentialSquares.of(model);
        assertThat(squares.line("group").variance()).isEqualTo(1670.8494, within(1e-3));
        assertThat(squares.line("run").variance()).isEqualTo(2217.9167, within(1e-3));
    }

    private static double[][] without(double[][] groups, Set<Integer> lines) {
        int line = 0;
        double[][] kept = new double[groups.length][];
        for (int group = 0; group < groups.length; group++) {
            List<Double> values = new ArrayList<>();
            for (double value : groups[group]) {
                if (!lines.contains(++line)) {
                    values.add(value);
                }
            }
            kept[group] = values.stream().mapToDouble(Double::doubleValue).toArray();
        }
        return kept;
    }

    @Test
    void penicillin_is_crossed_and_balanced() {
        // Analysis of variance by formula, and lme4 for R by restricted likelihood (0.716905, 3.731132, 0.302415).
        double[][] plates = Published.groups(Published.PENICILLIN);
        List<Integer> plate = new ArrayList<>();
        List<Integer> sample = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (int i = 0; i < plates.length; i++) {
            for (int j = 0; j < plates[i].length; j++) {
                plate.add(i);
                sample.add(j);
                values.add(plates[i][j]);
            }
        }
        double[] y = values.stream().mapToDouble(Double::doubleValue).toArray();
        var model = MixedModel.of(y, Factor.common(y.length), Factor.of("plate", plate), Factor.of("sample", sample));
        var squares = SequentialSquares.of(model);
        assertThat(squares.line("plate").variance()).isEqualTo(0.716908, within(1e-5));
        assertThat(squares.line("sample").variance()).isEqualTo(3.730918, within(1e-5));
        assertThat(squares.line("run").variance()).isEqualTo(0.302415, within(1e-5));
        var found = RemlEstimate.of(model);
        assertThat(square(found.spreads().get(0))).isEqualTo(0.716905, within(2e-4));
        assertThat(square(found.spreads().get(1))).isEqualTo(3.731132, within(1e-3));
        assertThat(square(found.runSpread())).isEqualTo(0.302415, within(2e-5));
        assertThat(found.fit().effects()[0]).isEqualTo(22.972222, within(1e-5));
        assertThat(found.intervals95().get(0).contains(found.spreads().get(0))).isTrue();
    }

    @Test
    void hemmerle_and_hartleys_data_are_crossed_and_unbalanced() {
        // Type I: the example of the documentation of SAS VARCOMP; restricted likelihood: computed for the references.
        List<Integer> a = new ArrayList<>();
        List<Integer> b = new ArrayList<>();
        List<String> cell = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (double[] line : Published.groups(Published.HEMMERLE_HARTLEY)) {
            for (int i = 2; i < line.length; i++) {
                a.add((int) line[0]);
                b.add((int) line[1]);
                cell.add(line[0] + " " + line[1]);
                values.add(line[i]);
            }
        }
        var model = MixedModel.of(
                values.stream().mapToDouble(Double::doubleValue).toArray(),
                Factor.of("a", a),
                Factor.of("b", b),
                Factor.of("a×b", cell));
        var squares = SequentialSquares.of(model);
        assertThat(squares.line("b").variance()).isEqualTo(1448.4, within(0.05));
        assertThat(squares.line("a×b").variance()).isEqualTo(27.42659, within(1e-4));
        assertThat(squares.line("run").variance()).isEqualTo(78.63333, within(1e-4));
        var found = RemlEstimate.of(model);
        assertThat(square(found.spreads().get(0))).isEqualTo(1464.367, within(0.5));
        assertThat(square(found.spreads().get(1))).isEqualTo(26.9589, within(0.01));
        assertThat(square(found.runSpread())).isEqualTo(78.8424, within(0.01));
    }

    @Test
    void a_variance_of_zero_is_an_answer() {
        // Box and Tiao (1973); the help page of lme4 for R: batch 0, residual standard deviation 3.7157, mean 5.6656.
        var model = Published.oneWay(Published.groups(Published.DYESTUFF_2));
        var squares = SequentialSquares.of(model);
        assertThat(squares.line("group").meanSquare()).isEqualTo(8.336326, within(1e-5));
        assertThat(squares.line("run").meanSquare()).isEqualTo(14.945890, within(1e-5));
        assertThat(squares.line("group").variance()).isNegative();
        assertThat(squares.line("group").reported()).isZero();
        var found = RemlEstimate.of(model);
        assertThat(found.spreads().getFirst()).isZero();
        assertThat(found.intervals95().getFirst().low()).isZero();
        assertThat(found.intervals95().getFirst().high()).isPositive();
        assertThat(found.runSpread()).isEqualTo(3.715684, within(1e-5));
        assertThat(found.fit().effects()[0]).isEqualTo(5.6656, within(1e-5));
    }

    @Test
    void nist_analyses_of_variance_come_out() {
        // NIST Statistical Reference Datasets, SiRstv and AtmWtAg: certified sums of squares.
        var resistivity = SequentialSquares.of(Published.oneWay(Published.groups(Published.SI_RSTV)));
        assertThat(resistivity.line("group").sumOfSquares())
                .isEqualTo(5.11462616000000E-2, relative(5.11462616000000E-2, 1e-10));
        assertThat(resistivity.line("run").sumOfSquares())
                .isEqualTo(2.16636560000000E-1, relative(2.16636560000000E-1, 1e-10));
        assertThat(resistivity.line("group").degreesOfFreedom()).isEqualTo(4);
        var silver = SequentialSquares.of(Published.oneWay(Published.groups(Published.ATM_WT_AG)));
        assertThat(silver.line("group").sumOfSquares())
                .isEqualTo(3.63834187500000E-9, relative(3.63834187500000E-9, 1e-7));
        assertThat(silver.line("run").sumOfSquares())
                .isEqualTo(1.04951729166667E-8, relative(1.04951729166667E-8, 1e-7));
        assertThat(silver.line("run").degreesOfFreedom()).isEqualTo(46);
    }
}
