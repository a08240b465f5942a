package org.measuredmile.quantity.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.quantity.budget.Contribution.typeA;
import static org.measuredmile.quantity.budget.Contribution.typeB;

import java.util.Collections;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.statistics.StudentT;

/// Budgets against the worked examples of JCGM 100:2008; digits beyond the printed ones were recomputed.
class BudgetReferenceTest {
    /// JCGM 100:2008, H.1: calibration of an end gauge of 50 mm, in nanometres, from unrounded parts.
    private static Budget endGauge() {
        double lengthNm = 50_000_623;
        var difference = Budget.of(
                typeA("repeated readings", 13 / Math.sqrt(5), 24),
                new Contribution("comparator, random", Contribution.Evaluation.B, 10 / StudentT.twoSided95(5), 5, ""),
                new Contribution("comparator, systematic", Contribution.Evaluation.B, 20.0 / 3, 8, ""));
        double temperature = Math.sqrt(0.2 * 0.2 + 0.5 * 0.5 / 2);
        return Budget.of(
                new Contribution("standard", Contribution.Evaluation.B, 75.0 / 3, 18, ""),
                new Contribution(
                        "difference",
                        Contribution.Evaluation.A,
                        difference.standardUncertainty(),
                        difference.effectiveDegreesOfFreedom(),
                        ""),
                // sensitivities: −l·θ = 0.1·l for δα and −l·α for δθ; those of α and θ are zero at the
                // estimates
                typeB("expansion, difference", 1e-6 / Math.sqrt(3))
                        .reliableTo(0.1)
                        .through(lengthNm * 0.1),
                typeB("temperature, difference", 0.05 / Math.sqrt(3))
                        .reliableTo(0.5)
                        .through(lengthNm * 11.5e-6),
                typeB("expansion", 2e-6 / Math.sqrt(3)).through(0),
                typeB("temperature", temperature).through(0));
    }

    @Test
    void differenceOfEndGauges() {
        // H.1.3.2 and H.1.6: u(d) 9.7 nm with 25.6 degrees of freedom
        var difference = endGauge().contributions().get(1);
        assertThat(difference.standardUncertainty()).isCloseTo(9.66322, within(1e-4));
        assertThat(difference.degreesOfFreedom()).isCloseTo(25.6213, within(1e-4));
    }

    @Test
    void combinedUncertaintyOfTheEndGauge() {
        // H.1.4: 1002 nm², 32 nm; H.1.6: 16.7 degrees of freedom
        var budget = endGauge();
        assertThat(budget.standardUncertainty()).isCloseTo(31.65816, within(1e-3));
        assertThat(budget.effectiveDegreesOfFreedom()).isCloseTo(16.7411, within(1e-3));
    }

    @Test
    void expandedUncertaintyOfTheEndGauge() {
        // H.1.6: U99 = 2.92 · 32 = 93 nm from rounded values and ν cut to 16; 92.467 unrounded, 91.9284 with ν
        // whole
        double standard = endGauge().standardUncertainty();
        assertThat(StudentT.quantile(0.995, 16) * standard).isCloseTo(92.467, within(1e-2));
        assertThat(StudentT.quantile(0.995, endGauge().effectiveDegreesOfFreedom()) * standard)
                .isCloseTo(91.9284, within(1e-3));
    }

    @Test
    void boundsBecomeStandardUncertainties() {
        // JCGM 100:2008, 4.4.5: bounds 96 to 104, 2.3; 4.4.6: 1.6; F.2.2.1: step 1 g, 0.29 g; H.1.3.4: ±0.5 °C,
        // 0.35
        assertThat(Contribution.rectangular("temperature", 4).standardUncertainty())
                .isCloseTo(2.309401, within(1e-6));
        assertThat(Contribution.triangular("temperature", 4).standardUncertainty())
                .isCloseTo(1.632993, within(1e-6));
        assertThat(Contribution.resolution("scale", 1).standardUncertainty()).isCloseTo(0.288675, within(1e-6));
        assertThat(Contribution.arcsine("cycle", 0.5).standardUncertainty()).isCloseTo(0.353553, within(1e-6));
    }

    @Test
    void reliabilityBecomesDegreesOfFreedom() {
        // JCGM 100:2008, G.4.2 example: 25 % gives 8; H.1.6: 10 % gives 50, 50 % gives 2
        assertThat(typeB("a", 1).reliableTo(0.25).degreesOfFreedom()).isCloseTo(8, within(1e-9));
        assertThat(typeB("a", 1).reliableTo(0.10).degreesOfFreedom()).isCloseTo(50, within(1e-9));
        assertThat(typeB("a", 1).reliableTo(0.50).degreesOfFreedom()).isCloseTo(2, within(1e-9));
        assertThat(typeB("a", 1).reliableTo(0).degreesOfFreedom()).isInfinite();
    }

    @Test
    void voltmeter() {
        // JCGM 100:2008, 4.3.7 example 2 and 5.1.5 example: 8.7 µV and 15 µV
        double halfWidth = 14e-6 * 0.928571 + 2e-6 * 1;
        var budget = Budget.of(typeA("readings", 12e-6, 9), Contribution.rectangular("voltmeter", halfWidth));
        assertThat(budget.contributions().get(1).standardUncertainty()).isCloseTo(8.6603e-6, within(1e-9));
        assertThat(budget.standardUncertainty()).isCloseTo(14.7986e-6, within(1e-9));
    }

    @Test
    void effectiveDegreesOfFreedomOfEqualTerms() {
        // recomputed from equation (G.2b): four inputs of 1 with 10 degrees of freedom each
        var budget = new Budget(Collections.nCopies(4, typeA("input", 1, 10)));
        assertThat(budget.standardUncertainty()).isCloseTo(2, within(1e-12));
        assertThat(budget.effectiveDegreesOfFreedom()).isCloseTo(40, within(1e-9));
        // recomputed: 0.57 with 9 and 0.25 with infinite degrees of freedom
        var two = Budget.of(typeA("runs", 0.57, 9), typeB("scale", 0.25));
        assertThat(two.effectiveDegreesOfFreedom()).isCloseTo(12.8, within(0.1));
    }

    @Test
    void sharedInputsCancelInADifference() {
        // JCGM 100:2008, 5.2.2: fully correlated parts add with their signs; hand: √(3² + 4²) = 5, tape 2 − 2 =
        // 0
        var mine = Budget.of(typeA("runs", 3, 2), typeB("tape", 2).sharedAs("tape 1"));
        var other = Budget.of(typeA("runs", 4, 2), typeB("tape", 2).sharedAs("tape 1"));
        assertThat(mine.minus(other).standardUncertainty()).isCloseTo(5, within(1e-12));
        var otherTape = Budget.of(typeA("runs", 4, 2), typeB("tape", 2).sharedAs("tape 2"));
        assertThat(mine.minus(otherTape).standardUncertainty()).isCloseTo(Math.sqrt(33), within(1e-12));
    }

    @Test
    void interval95IsWiderForFewerRuns() {
        // t95(2) = 4.3027, JCGM 100:2008, table G.2
        var around = Budget.of(typeA("runs", 1, 2)).around(10);
        assertThat(around.interval95().halfWidth()).isCloseTo(4.3027, within(5e-5));
        assertThat(around.interval95().contains(10)).isTrue();
    }

    @Test
    void nothingKnownToVaryGivesNoWidth() {
        var exact = Budget.of().around(3);
        assertThat(exact.interval95().halfWidth()).isZero();
        assertThat(exact.degreesOfFreedom()).isInfinite();
    }

    @Test
    void sharesAddUpToOneAndTheLargestComesFirst() {
        var budget = Budget.of(typeA("runs", 3, 2), typeB("tape", 4));
        assertThat(budget.contributions().stream().mapToDouble(budget::share).sum())
                .isCloseTo(1, within(1e-12));
        assertThat(budget.byWeight().getFirst().input()).isEqualTo("tape");
    }

    @Test
    void refusesAnUncertaintyThatIsNone() {
        assertThatThrownBy(() -> typeB("tape", Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> typeB("tape", -1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> typeA("runs", 1, 0)).isInstanceOf(IllegalArgumentException.class);
    }
}
