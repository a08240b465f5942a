package org.measuredmile.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.statistics.StudentT;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Figure.FigureRun;

/// The expected numbers are worked by hand in the comments.
class RunMeanTest {
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    @Test
    void theScatterIsModeratedAndTheCommonPartIsNotDivided() {
        // runs 7.70 7.95 7.86: mean 7.83667, sum of squares 0.032067, ν 2; stated s₀ 0.30, ν₀ 12
        // s² = (12 · 0.09 + 0.032067)/14 = 0.0794333; u_A = √(0.0794333/3) = 0.162720; with u_B 0.20: 0.257833
        var figure = mean(new Scatter(0.30, 12, 0, INFINITE, false), false, 7.70, 7.95, 7.86)
                .common(Contribution.typeB("build-up", 0.20))
                .figure();
        assertThat(figure.value()).isCloseTo(7.836667, within(1e-6));
        assertThat(figure.thisDay().standard()).isCloseTo(0.257833, within(1e-6));
        // ν = u⁴/(u_A⁴/14) = 14 · (0.257833/0.162720)⁴ = 88.25
        assertThat(figure.thisDay().degreesOfFreedom()).isCloseTo(88.25, within(0.01));
    }

    @Test
    void aKnownEffectIsTakenOffTheMeanAndTheRunsKeepTheirValues() {
        var figure = mean(new Scatter(0.30, 12, 0, INFINITE, false), false, 7.70, 7.90)
                .lessBy(0.05)
                .figure();
        assertThat(figure.value()).isCloseTo(7.75, within(1e-12));
        assertThat(figure.thisDay().interval95().contains(7.75)).isTrue();
        assertThat(figure.runs()).extracting(run -> run.value().orElseThrow()).containsExactly(7.70, 7.90);
    }

    @Test
    void matchedTailsAreWiderWhereBothScattersAreHardlyKnown() {
        var scatter = new Scatter(0.30, 8, 0.17, 8, false);
        var usual = mean(scatter, false, 7.70, 7.90).figure();
        var matched = mean(scatter, false, 7.70, 7.90).withMatchedTails().figure();
        assertThat(matched.anyDay().standard()).isCloseTo(usual.anyDay().standard(), within(1e-12));
        assertThat(matched.anyDay().interval95().halfWidth())
                .isGreaterThan(usual.anyDay().interval95().halfWidth());
    }

    @Test
    void oneRunStandsOnTheStatedScatterAlone() {
        var figure =
                mean(new Scatter(0.30, 12, 0, INFINITE, false), false, 7.70).figure();
        assertThat(figure.thisDay().standard()).isCloseTo(0.30, within(1e-12));
        assertThat(figure.thisDay().degreesOfFreedom()).isCloseTo(12, within(1e-9));
        assertThat(figure.findings()).anyMatch(finding -> finding.code().equals("few-runs"));
    }

    @Test
    void aRunThatDoesNotCountIsShownAndWidensTheInterval() {
        var scatter = new Scatter(0.04, 12, 0.02, 12, true);
        var three = mean(scatter, false, 6.27, 6.44, 6.41).figure();
        var two = mean(scatter, false, 6.27, 6.44)
                .run(new FigureRun("r3", Run.State.CONFIRMED, false, "too fast", OptionalDouble.of(6.41)), "")
                .figure();
        assertThat(two.runs()).hasSize(3);
        assertThat(two.counted()).isEqualTo(2);
        assertThat(two.thisDay().interval95().halfWidth())
                .isGreaterThan(three.thisDay().interval95().halfWidth());
        assertThat(two.anyDay().interval95().halfWidth())
                .isGreaterThan(two.thisDay().interval95().halfWidth());
    }

    @Test
    void directionsWeighTheSameHoweverManyRunsEachHas() {
        var declaration = declaration(new Scatter(0.1, INFINITE, 0, INFINITE, false), true);
        var figure = RunMean.of(declaration, "t.figure", Variant.NONE, ScatterRecord.DECLARED_PRIORS)
                .run(run("r1", 5.0), "out")
                .run(run("r2", 5.2), "out")
                .run(run("r3", 6.1), "back")
                .figure();
        // (5.1 + 6.1)/2 = 5.6; u_A = 0.1 · √(1/2 + 1/1)/2 = 0.061237
        assertThat(figure.value()).isCloseTo(5.6, within(1e-12));
        assertThat(figure.thisDay().standard()).isCloseTo(0.061237, within(1e-6));
    }

    @Test
    void whatWouldNarrowItIsListedWithTheNarrowestFirst() {
        var figure = mean(new Scatter(0.30, 12, 0.20, 12, false), false, 7.70, 7.95, 7.86)
                .common(Contribution.typeB("calibration", 0.20))
                .figure();
        var widths = figure.narrows().stream()
                .map(one -> one.intervalThen().halfWidth())
                .toList();
        assertThat(widths)
                .isSorted()
                .hasSize(3)
                .allMatch(width -> width < figure.anyDay().interval95().halfWidth());
    }

    /// Two-sided binomial bound of a true 95 % at 4,000 days: 0.95 ± 3 · 0.00345.
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void bothIntervalsHoldTheTruthAsOftenAsTheySay(long seed) {
        var random = new SplittableRandom(seed);
        int days = 4000;
        int thisDay = 0;
        int anyDay = 0;
        var scatter = new Scatter(0.30, 12, 0.20, INFINITE, false);
        for (int day = 0; day < days; day++) {
            // The stated scatter is itself known from 12 degrees of freedom, so the truth behind it differs
            // by day.
            double runSd = 0.30 / Math.sqrt(chiSquare(random, 12) / 12);
            double today = 7.8 + 0.20 * random.nextGaussian();
            var mean = mean(scatter, false, draw(random, today, runSd), draw(random, today, runSd));
            var figure = mean.figure();
            thisDay += figure.thisDay().interval95().contains(today) ? 1 : 0;
            anyDay += figure.anyDay().interval95().contains(7.8) ? 1 : 0;
        }
        assertThat(thisDay / (double) days).as("this day, seed " + seed).isBetween(0.9396, 0.9604);
        assertThat(anyDay / (double) days).as("any day, seed " + seed).isBetween(0.9396, 0.9604);
    }

    @Test
    void tIsOneForInfiniteKnowledge() {
        assertThat(StudentT.twoSided95(INFINITE)).isCloseTo(1.959964, within(1e-6));
    }

    private static double draw(SplittableRandom random, double mean, double sd) {
        return mean + sd * random.nextGaussian();
    }

    private static double chiSquare(SplittableRandom random, int degrees) {
        double sum = 0;
        for (int i = 0; i < degrees; i++) {
            double z = random.nextGaussian();
            sum += z * z;
        }
        return sum;
    }

    private static FigureRun run(String id, double value) {
        return new FigureRun(id, Run.State.CONFIRMED, true, "", OptionalDouble.of(value));
    }

    private static RunMean mean(Scatter scatter, boolean bothDirections, double... values) {
        var mean = RunMean.of(
                declaration(scatter, bothDirections), "t.figure", Variant.NONE, ScatterRecord.DECLARED_PRIORS);
        for (int i = 0; i < values.length; i++) {
            mean.run(run("r" + (i + 1), values[i]), "");
        }
        return mean;
    }

    private static Declaration declaration(Scatter scatter, boolean bothDirections) {
        return Declaration.of("t", 1, "A trial")
                .runs(6, 1, bothDirections)
                .figure(FigureSpec.of("t.figure", "A figure", QuantityKind.LENGTH, Better.LESS, Chapter.STOPPING)
                        .scatter(scatter))
                .handbook(new Handbook("", "", List.of(), List.of(), "", ""));
    }
}
