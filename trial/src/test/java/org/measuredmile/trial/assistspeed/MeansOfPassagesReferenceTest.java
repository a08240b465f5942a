package org.measuredmile.trial.assistspeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.recording.motion.SecondMeans.Span;
import org.measuredmile.recording.motion.WanderMixture.MeanSpeed;

/// Passages of one level put together, by hand.
class MeansOfPassagesReferenceTest {
    private static LevelPass pass(double speedMps, double wanderMps) {
        var run = new Run(
                "l-1",
                "assistspeed",
                Variant.NONE,
                "R1",
                Optional.empty(),
                "",
                "out",
                Run.State.CONFIRMED,
                "",
                "",
                Place.NOWHERE);
        var scale = new SpeedScale("", 1, 0, 0, "");
        return new LevelPass(run, Variant.NONE, speedMps, wanderMps, 20, scale, LevelPass.Heading.UNKNOWN, Double.NaN);
    }

    @Test
    void onePassageIsKnownAsItsWanderSays() {
        var mean = PassMean.of(List.of(pass(7, 0.1)));

        assertThat(mean.speedMps()).isEqualTo(7);
        assertThat(mean.standardUncertaintyMps()).isCloseTo(0.1, within(1e-12));
        assertThat(mean.degreesOfFreedom()).isCloseTo(20, within(1e-9));
        assertThat(mean.ratio()).isZero();
        assertThat(mean.disagreement("level 3")).isEmpty();
    }

    /// 6.9 and 7.1, each within 0.1: χ² = 1 + 1 for one degree of freedom, over 1.5, so that 0.1/√2 becomes 0.1.
    @Test
    void passagesThatDifferWidenTheirMeanByBirgesRatio() {
        var mean = PassMean.of(List.of(pass(6.9, 0.1), pass(7.1, 0.1)));

        assertThat(mean.speedMps()).isCloseTo(7.0, within(1e-12));
        assertThat(mean.ratio()).isCloseTo(Math.sqrt(2), within(1e-9));
        assertThat(mean.standardUncertaintyMps()).isCloseTo(0.1, within(1e-9));
        assertThat(mean.degreesOfFreedom()).isEqualTo(3);
        assertThat(mean.disagreement("level 3"))
                .hasValueSatisfying(finding -> assertThat(finding.message()).contains("level 3", "1.4 times"));
    }

    /// 6.92 and 7.08: χ² = 1.28, below 1.5, so that the mean is known as the wander says.
    @Test
    void passagesThatAgreeAreKnownAsTheirWanderSays() {
        var mean = PassMean.of(List.of(pass(6.92, 0.1), pass(7.08, 0.1)));

        assertThat(mean.ratio()).isCloseTo(Math.sqrt(1.28), within(1e-9));
        assertThat(mean.standardUncertaintyMps()).isCloseTo(0.1 / Math.sqrt(2), within(1e-9));
        // Two parts alike of 20 degrees of freedom each have 40 together (JCGM 100:2008, G.4.1).
        assertThat(mean.degreesOfFreedom()).isCloseTo(40, within(1e-6));
        assertThat(mean.disagreement("level 3")).isEmpty();
    }

    private static SteadyStretch held(int seconds) {
        return new SteadyStretch(new Span(0, seconds), new int[seconds], 7, "");
    }

    /// 60 s at 7.0 and 30 s at 7.3: 7.1 by the seconds. Each within 0.03: √(4/9 + 1/9)·0.03 = 0.0224 is less
    /// than what they differ by, √(2·((2/3·0.1)² + (1/3·0.2)²)) = 0.1333.
    @Test
    void stretchesCountByTheSecondsTheyHeldAndAsTheyAgree() {
        var apart = StretchMean.of(
                List.of(held(60), held(30)),
                List.of(new MeanSpeed(7.0, 0.03, 9, 0.5), new MeanSpeed(7.3, 0.03, 9, 0.5)));
        var alike = StretchMean.of(
                List.of(held(60), held(30)),
                List.of(new MeanSpeed(7.1, 0.03, 9, 0.5), new MeanSpeed(7.1, 0.03, 9, 0.5)));

        assertThat(apart.speedMps()).isCloseTo(7.1, within(1e-12));
        assertThat(apart.standardUncertaintyMps()).isCloseTo(0.4 / 3, within(1e-9));
        assertThat(apart.degreesOfFreedom()).isEqualTo(1);
        assertThat(alike.standardUncertaintyMps()).isCloseTo(0.03 * Math.sqrt(5) / 3, within(1e-12));
        assertThat(alike.degreesOfFreedom()).isEqualTo(9);
    }

    @Test
    void oneStretchIsKnownAsItIs() {
        var only = StretchMean.of(List.of(held(40)), List.of(new MeanSpeed(6.5, 0.04, 12, 0.5)));

        assertThat(only).isEqualTo(new StretchMean(6.5, 0.04, 12));
    }

    private static Instrument instrument(Instrument.Kind kind, boolean isCalibrated) {
        return new Instrument(
                "i-1",
                kind,
                OptionalDouble.empty(),
                isCalibrated
                        ? Optional.of(new Instrument.Calibration(1.02, 0.004, Optional.of(LocalDate.of(2031, 1, 2))))
                        : Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    /// 0.3 % for a receiver's own speed, 1 % for a wheel; a wheel's channel is a wheel's whoever wrote it.
    @ParameterizedTest
    @CsvSource({"RECEIVER, false, 0.003", "RECEIVER, true, 0.01", "WHEEL, false, 0.01", "WHEEL, true, 0.01"})
    void aScaleThatNobodyCalibratedIsItsKinds(Instrument.Kind kind, boolean isWheelChannel, double relative) {
        var scale = SpeedScale.of(Optional.of(instrument(kind, false)), isWheelChannel);

        assertThat(scale.relative()).isEqualTo(relative);
        assertThat(scale.factor()).isEqualTo(1);
        assertThat(scale.assumed()).contains("no calibration is written down");
        assertThat(scale.contributions(7)).singleElement().satisfies(one -> {
            assertThat(one.standardUncertainty()).isCloseTo(7 * relative, within(1e-12));
            assertThat(one.shared()).isEqualTo("calibration of i-1");
        });
    }

    @Test
    void aCalibratedScaleIsItsCalibrations() {
        var scale = SpeedScale.of(Optional.of(instrument(Instrument.Kind.WHEEL, true)), true);

        assertThat(scale.factor()).isEqualTo(1.02);
        assertThat(scale.relative()).isEqualTo(0.004);
        assertThat(scale.assumed()).isEmpty();
    }

    /// What a step of 0.1 hides is rectangular, half a step either way: 0.05/√3 (JCGM 100:2008, 4.3.7).
    @Test
    void aDisplaysStepIsRectangular() {
        var parts = new ArrayList<>(new SpeedScale("", 1, 0.02, 0.05, "").contributions(7));

        assertThat(parts)
                .extracting(Contribution::input)
                .containsExactly("calibration of the speed instrument", "step of the display");
        assertThat(parts.get(0).shared()).isEmpty();
        assertThat(parts.get(0).standardUncertainty()).isCloseTo(0.14, within(1e-12));
        assertThat(parts.get(1).standardUncertainty()).isCloseTo(0.05 / Math.sqrt(3), within(1e-12));
    }
}
