package org.measuredmile.trial.assistspeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.recording.motion.ChangePoints;
import org.measuredmile.recording.motion.RunningSums;
import org.measuredmile.recording.motion.SecondMeans.Span;
import org.measuredmile.recording.motion.WanderMixture;

/// Worked examples of the project's own study of assist levels (prototype in another language, double precision):
/// three plateaus in 29 s, the variance of a mean of correlated values, and the mixture over the wander's memory.
class AssistSpeedReferenceTest {
    private static final double[] THREE_LEVELS = {
        5.0, 5.1, 4.9, 5.0, 5.1, 5.0, 4.9, 5.0, 5.3, 5.7, 6.1, 6.2, 6.1, 6.2, 6.3, 6.2, 6.1, 6.2, 6.2, 6.5, 6.8, 7.0,
        7.1, 7.0, 6.9, 7.0, 7.1, 7.0, 7.0
    };
    private static final double[] WANDERING = {6.10, 6.18, 6.22, 6.15, 6.05, 5.98, 6.02, 6.11, 6.20, 6.26};
    private static final List<Span> WHOLE = List.of(new Span(0, THREE_LEVELS.length));

    private static WanderMixture.Stretch wandering() {
        return new WanderMixture.Stretch(IntStream.range(0, 10).asDoubleStream().toArray(), WANDERING);
    }

    /// Study, example C1: plateau ≥ 6 s, K = 3 and K = 2, γ = 0.05; costs to the last digit printed.
    @Test
    void threeAnnouncedLevelsAreFoundWhereTheStudyFindsThem() {
        var found = AnnouncedPlateaus.upTo(3, THREE_LEVELS, WHOLE, AssistSpeedRules.V1, 6);
        var three = found.get(2);
        assertThat(three.plateaus()).containsExactly(new Span(0, 8), new Span(10, 19), new Span(21, 29));
        assertThat(three.cost()).isCloseTo(0.30431, within(5e-6));
        var sums = new RunningSums(THREE_LEVELS);
        assertThat(sums.mean(0, 8)).isCloseTo(5.0000, within(5e-5));
        assertThat(sums.mean(10, 19)).isCloseTo(6.1778, within(5e-5));
        assertThat(sums.mean(21, 29)).isCloseTo(7.0125, within(5e-5));
        var two = found.get(1);
        assertThat(two.plateaus()).containsExactly(new Span(0, 9), new Span(19, 29));
        assertThat(two.cost()).isCloseTo(1.06618, within(5e-6));
    }

    /// Study, example C1, plain optimal partition with pieces of at least 5 s.
    @ParameterizedTest
    @CsvSource({"0.05, 9 14 20 29", "0.3, 9 20 29", "2, 9 20 29"})
    void theOptimalPartitionIsThatOfTheStudy(double penalty, String ends) {
        var pieces = ChangePoints.of(WHOLE.getFirst(), new RunningSums(THREE_LEVELS)::constantCost, penalty, 5);
        assertThat(pieces.stream().map(Span::to).map(String::valueOf).toList()).isEqualTo(List.of(ends.split(" ")));
    }

    /// Study, example C2: factor [1 + 2Σ(1 − k/L)φᵏ]/L for the plain mean of L values; tolerance 1e-5. The
    /// generalised mean is never worse, and equals it without correlation.
    @ParameterizedTest
    @CsvSource({"10, 0.8, 0.54295", "30, 0.88, 0.38935", "60, 0.88, 0.22718", "10, 0, 0.1"})
    void theVarianceOfAMeanOfCorrelatedValuesIsThatOfTheStudy(int count, double correlation, double factor) {
        double sum = 1;
        for (int k = 1; k < count; k++) {
            sum += 2 * (1 - (double) k / count) * StrictMath.pow(correlation, k);
        }
        assertThat(sum / count).isCloseTo(factor, within(1e-5));
        double memoryS = correlation == 0 ? 1e-3 : -1 / StrictMath.log(correlation);
        double[] times = IntStream.range(0, count).asDoubleStream().toArray();
        double generalised = WanderMixture.varianceFactor(times, memoryS, 0);
        assertThat(generalised).isLessThanOrEqualTo(factor + 1e-5).isGreaterThan(0.9 * factor);
    }

    /// Study, example C3: ρ 0.1; tolerance 2e-4 for the mixture, the last printed digit for the single memories.
    @ParameterizedTest
    @CsvSource({"2, 6.13908, 0.04840", "8, 6.15815, 0.10724", "22, 6.16462, 0.16857"})
    void theGeneralisedMeanAtOneMemoryIsThatOfTheStudy(double memoryS, double mean, double uncertainty) {
        var one = WanderMixture.single(wandering(), memoryS, 0.1);
        assertThat(one.meansMps()[0]).isCloseTo(mean, within(1e-5));
        assertThat(one.uncertaintiesMps()[0]).isCloseTo(uncertainty, within(1e-5));
    }

    @Test
    void theMixtureIsThatOfTheStudyAndOfTheHandbook() {
        var mean = WanderMixture.means(List.of(wandering())).getFirst();
        assertThat(mean.speedMps()).isCloseTo(6.15952, within(2e-4));
        assertThat(mean.halfWidthMps()).isCloseTo(0.32518, within(2e-4));
        assertThat(AssistSpeedHandbook.PAGE.example()).contains("6.160 m/s").contains("0.325 m/s");
    }
}
