package org.measuredmile.trial.weighin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.trial.GivenDay.figure;

import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.GivenDay;

class WeighInTest {
    private static GivenDay calibrated() {
        return GivenDay.of(new WeighIn()).instrument(Instrument.Kind.SCALE, 0.1, 1.002, 0.0005);
    }

    private static GivenDay placements(GivenDay day, String battery, String... masses) {
        for (String mass : masses) {
            String id = battery + "-" + day.input().runs().size();
            day.run(id, "battery=" + battery, "").reading(id, "mass", mass);
        }
        return day;
    }

    /// Hand arithmetic: 1.002 · (27.4 + 27.5 + 27.4) / 3 = 27.4882.
    @Test
    void theHandbooksExampleHolds() {
        var outcome =
                placements(calibrated(), "in", "27.4 kg", "27.5 kg", "27.4 kg").reduced();
        var mass = figure(outcome, "weighin.mass battery=in");
        assertThat(mass.value()).isCloseTo(27.4882, within(1e-9));
        assertThat(new WeighIn().declaration().handbook().example()).contains("27.488 kg");
        assertThat(mass.counted()).isEqualTo(3);
        assertThat(mass.assumed()).isEmpty();
        assertThat(mass.anyDay().interval95().halfWidth())
                .isGreaterThan(mass.thisDay().interval95().halfWidth());
    }

    /// Hand arithmetic: 27.4 · 1.002 · 0.0005 = 0.01373 kg, not divided by √3. Three readings alike have averaged
    /// nothing
    /// of the step away: 0.1 / √12 = 0.02887 kg.
    @Test
    void calibrationIsCommonToAllPlacementsAndOfReadingsAlikeTheWholeStepStays() {
        var outcome =
                placements(calibrated(), "in", "27.4 kg", "27.4 kg", "27.4 kg").reduced();
        var budget = figure(outcome, "weighin.mass battery=in").budget();
        assertThat(budget).anySatisfy(part -> {
            assertThat(part.shared()).isEqualTo("calibration of scale-1");
            assertThat(part.standardUncertainty()).isCloseTo(0.01373, within(1e-5));
        });
        assertThat(budget).anySatisfy(part -> {
            assertThat(part.input()).startsWith("step");
            assertThat(part.standardUncertainty()).isCloseTo(0.02887, within(1e-5));
        });
    }

    /// Hand arithmetic: readings that scatter by more than the stated 0.03 kg are taken to scatter by that, so of
    /// 0.02887 kg the part exp(−2π²·0.3²) = 0.1692 stays: 0.02887 · √(0.0286 + 0.9714 / 3) = 0.01714 kg.
    @Test
    void theStepAveragesOutAsFarAsReadingsScatterAcrossIt() {
        var outcome =
                placements(calibrated(), "in", "27.4 kg", "27.5 kg", "27.4 kg").reduced();
        assertThat(figure(outcome, "weighin.mass battery=in").budget()).anySatisfy(part -> {
            assertThat(part.input()).startsWith("step");
            assertThat(part.standardUncertainty()).isCloseTo(0.01714, within(1e-4));
        });
    }

    @Test
    void aScaleWithoutCalibrationIsTakenWiderAndSaysSo() {
        var known = placements(calibrated(), "in", "27.4 kg", "27.4 kg").reduced();
        var bare = placements(GivenDay.of(new WeighIn()), "in", "27.4 kg", "27.4 kg")
                .reduced();
        var wide = figure(bare, "weighin.mass battery=in");
        assertThat(wide.assumed()).singleElement().asString().contains("0.3 %");
        assertThat(wide.thisDay().standard())
                .isGreaterThan(
                        figure(known, "weighin.mass battery=in").thisDay().standard());
    }

    @Test
    void aDifferenceThatTheBatteryDoesNotExplainIsNamed() {
        var day = placements(calibrated(), "in", "27.4 kg", "27.4 kg", "27.4 kg");
        placements(day, "out", "24.0 kg", "24.0 kg", "24.0 kg");
        assertThat(placements(day, "alone", "3.4 kg", "3.4 kg", "3.4 kg")
                        .reduced()
                        .findings())
                .isEmpty();
        var other = placements(calibrated(), "in", "27.4 kg", "27.4 kg", "27.4 kg");
        placements(other, "out", "23.5 kg", "23.5 kg", "23.5 kg");
        var outcome = placements(other, "alone", "3.4 kg", "3.4 kg", "3.4 kg").reduced();
        assertThat(outcome.findings()).singleElement().satisfies(finding -> {
            assertThat(finding.level()).isEqualTo(Finding.Level.WARNING);
            assertThat(finding.message()).contains("0.50 kg");
        });
    }

    /// Hand arithmetic: 12.2 / (12.2 + 15.1) = 0.44689; 150 − 27.3 − 80 = 42.7 kg.
    @Test
    void axleLoadsGiveTheShareInFrontAndAPermittedTotalThePayload() {
        var outcome = GivenDay.of(new WeighIn())
                .claims("permitted-total", "150", "kg")
                .run("w1", "battery=in", "")
                .reading("w1", "mass", "27.3 kg")
                .reading("w1", "front-axle", "12.2 kg")
                .reading("w1", "rear-axle", "15.1 kg")
                .reduced();
        assertThat(figure(outcome, "weighin.front-share").value()).isCloseTo(0.44689, within(1e-5));
        assertThat(figure(outcome, "weighin.payload").value()).isCloseTo(42.7, within(1e-9));
    }

    /// A share p = x/(x + y) moves by p(1 − p) of either relative error, and by √((1 − p)² + p²) of a step's
    /// part of the whole: differentiated and worked out by hand.
    @Test
    void theShareAllowsForBothAxlesScalesAndSteps() {
        var outcome = GivenDay.of(new WeighIn())
                .run("w1", "battery=in", "")
                .reading("w1", "mass", "27.3 kg")
                .reading("w1", "front-axle", "12.2 kg")
                .reading("w1", "rear-axle", "15.1 kg")
                .reduced();
        var budget = figure(outcome, "weighin.front-share").budget();
        assertThat(budget.stream().filter(part -> part.input().startsWith("calibration")))
                .hasSize(2)
                .allSatisfy(part -> assertThat(part.standardUncertainty()).isCloseTo(0.00074154, within(1e-7)));
        assertThat(budget.stream().filter(part -> part.input().startsWith("step")))
                .singleElement()
                .satisfies(part -> assertThat(part.standardUncertainty()).isCloseTo(0.00075185, within(1e-7)));
        assertThat(figure(outcome, "weighin.front-share").assumed()).hasSize(1);
    }

    @Test
    void aVoidPlacementIsShownAndNotCounted() {
        var outcome = GivenDay.of(new WeighIn())
                .run("w1", "battery=in", "")
                .reading("w1", "mass", "60.2 lb")
                .run("w2", "battery=in", "", Run.State.VOID, "touched")
                .reading("w2", "mass", "66.0 lb")
                .reduced();
        var mass = figure(outcome, "weighin.mass battery=in");
        // 60.2 · 0.45359237, NIST SP 811 appendix B.
        assertThat(mass.value()).isCloseTo(27.306260674, within(1e-9));
        assertThat(mass.counted()).isEqualTo(1);
        assertThat(mass.runs()).hasSize(2);
    }

    @Test
    void aMassThatCannotBeIsRefusedWithItsPlace() {
        var outcome = GivenDay.of(new WeighIn())
                .run("w1", "battery=in", "")
                .reading("w1", "mass", "2730 kg")
                .reduced();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.findings())
                .anySatisfy(finding -> assertThat(finding.place().text()).contains("readings.csv: line 2"));
    }

    @Test
    void theOrderOfPlacementsDoesNotMatter() {
        var forth =
                placements(calibrated(), "in", "27.4 kg", "27.5 kg", "27.3 kg").reduced();
        var back =
                placements(calibrated(), "in", "27.3 kg", "27.5 kg", "27.4 kg").reduced();
        assertThat(figure(forth, "weighin.mass battery=in").value())
                .isCloseTo(figure(back, "weighin.mass battery=in").value(), within(1e-12));
    }
}
