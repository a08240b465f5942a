package org.measuredmile.comparison.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RandomEffectsReferenceTest {
    @Test
    void eight_schools_need_not_differ() {
        // Rubin, Journal of Educational Statistics 6 (1981) 377–401, table 1; computed with the package metafor for R.
        double[] effects = {28, 8, -3, 7, -1, 1, 18, 12};
        double[] standards = {15, 10, 16, 11, 9, 11, 10, 18};
        var found = RandomEffects.of(effects, standards);
        assertThat(found.heterogeneity()).isEqualTo(4.707079, within(1e-6));
        assertThat(found.between()).isZero();
        assertThat(found.mean()).isEqualTo(7.685617, within(1e-6));
        assertThat(found.standardUncertainty()).isEqualTo(4.071919, within(1e-6));
        assertThat(found.shrunk()).allMatch(one -> Math.abs(one - found.mean()) < 1e-12);
    }

    @Test
    void four_values_that_differ_are_drawn_towards_their_mean() {
        // Computed by the formula for the references.
        var found = RandomEffects.of(new double[] {6.1, 6.6, 7.3, 5.9}, new double[] {0.2, 0.3, 0.5, 0.25});
        assertThat(found.heterogeneity()).isEqualTo(8.265267, within(1e-6));
        assertThat(found.between() * found.between()).isEqualTo(0.1388346, within(1e-6));
        assertThat(found.mean()).isEqualTo(6.344438, within(1e-6));
        assertThat(found.standardUncertainty()).isEqualTo(0.239043, within(1e-6));
        double[] shrunk =
                found.shrunk().stream().mapToDouble(Double::doubleValue).toArray();
        assertThat(shrunk).containsExactly(new double[] {6.154674, 6.499488, 6.685624, 6.037966}, within(1e-6));
    }

    @Test
    void thirteen_vaccine_trials() {
        // Colditz and others, JAMA 271 (1994) 698–702: cases and others, vaccinated and not; the package metafor for R
        // gives
        // 0.3088, −0.7141 and 0.1787 for the logarithm of the ratio of risks.
        double[][] trials = {
            {4, 119, 11, 128},
            {6, 300, 29, 274},
            {3, 228, 11, 209},
            {62, 13536, 248, 12619},
            {33, 5036, 47, 5761},
            {180, 1361, 372, 1079},
            {8, 2537, 10, 619},
            {505, 87886, 499, 87892},
            {29, 7470, 45, 7232},
            {17, 1699, 65, 1600},
            {186, 50448, 141, 27197},
            {5, 2493, 3, 2338},
            {27, 16886, 29, 17825}
        };
        double[] ratios = new double[trials.length];
        double[] standards = new double[trials.length];
        for (int i = 0; i < trials.length; i++) {
            double[] one = trials[i];
            double treated = one[0] + one[1];
            double others = one[2] + one[3];
            ratios[i] = StrictMath.log(one[0] / treated) - StrictMath.log(one[2] / others);
            standards[i] = Math.sqrt(1 / one[0] - 1 / treated + 1 / one[2] - 1 / others);
        }
        var found = RandomEffects.of(ratios, standards);
        assertThat(found.between() * found.between()).isEqualTo(0.308760, within(1e-5));
        assertThat(found.mean()).isEqualTo(-0.714117, within(1e-5));
        assertThat(found.standardUncertainty()).isEqualTo(0.178742, within(1e-5));
    }
}
