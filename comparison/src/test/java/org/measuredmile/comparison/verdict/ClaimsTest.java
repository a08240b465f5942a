package org.measuredmile.comparison.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.comparison.TestFigures.described;
import static org.measuredmile.comparison.TestFigures.figure;
import static org.measuredmile.comparison.TestFigures.line;
import static org.measuredmile.comparison.TestFigures.tested;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.trial.Figure;

class ClaimsTest {
    private static final double POUND_KG = 0.45359237;

    private static SpecLine under(SpecLine line, String conditions) {
        return new SpecLine(
                line.item(),
                line.claimed(),
                line.unit(),
                conditions,
                line.source(),
                line.date(),
                line.seen(),
                line.photo(),
                line.note(),
                line.place());
    }

    private static ClaimVerdict verdict(SpecLine line, Figure... figures) {
        return Claims.of(tested(described("Lantern", 1890, line), figures), Map.of())
                .getFirst();
    }

    private static Figure mass(String battery, double pounds, double standardLb) {
        return figure("weighin.mass", "battery=" + battery, pounds * POUND_KG, standardLb * POUND_KG);
    }

    @Test
    void aClaimedMassThatFitsTheBikeWithoutItsBatteryFallsShortAsSoldAndAgreesWithTheOther() {
        var verdict = verdict(line("mass", "61.0", "lb"), mass("in", 68.3, 0.1), mass("out", 61.2, 0.11));

        assertThat(verdict.verdict()).isEqualTo(Verdict.FALLS_SHORT);
        assertThat(verdict.agreesWith())
                .extracting(one -> one.result().figure().key().text())
                .containsExactly("weighin.mass battery=out");
        assertThat(new Wording(UnitSystem.IMPERIAL)
                        .of("Brindle Lantern", verdict)
                        .replace('\u00a0', ' '))
                .isEqualTo(
                        "The Brindle Lantern falls short of its claimed mass of “61.0 lb”, by 7.1 to 7.5 lb (3.22 to "
                                + "3.40 kg): we weighed 68.3 ± 0.2 lb (30.98 ± 0.09 kg), with its "
                                + "battery, on 4 May 2031. The claimed value agrees with the mass without its "
                                + "battery, 61.2 ± 0.2 lb (27.76 ± 0.10 kg).");
    }

    @Test
    void aClaimedMassThatFitsNeitherAgreesWithNothing() {
        var verdict = verdict(line("mass", "64", "lb"), mass("in", 68.3, 0.1), mass("out", 61.2, 0.11));

        assertThat(verdict.verdict()).isEqualTo(Verdict.FALLS_SHORT);
        assertThat(verdict.agreesWith()).isEmpty();
    }

    @Test
    void aClaimMadeWithoutTheBatteryIsHeldAgainstTheBikeWithoutIt() {
        var claim = under(line("mass", "61.5", "lb"), "battery=removed");

        assertThat(verdict(claim, mass("in", 68.3, 0.1), mass("out", 61.2, 0.11))
                        .verdict())
                .isEqualTo(Verdict.MEETS);
    }

    @ParameterizedTest
    @CsvSource({"68.1, CANNOT_TELL", "68.5, MEETS", "68.05, FALLS_SHORT", "70, MEETS", "68.3, CANNOT_TELL"})
    void theCallTurnsWhereTheWholeIntervalLiesOnOneSide(String claimed, Verdict expected) {
        // Computed: 68.30 ± 0.20 lb, printed; ends of the interval included in what is met.
        assertThat(verdict(line("mass", claimed, "lb"), mass("in", 68.3, 0.102)).verdict())
                .isEqualTo(expected);
    }

    @Test
    void aClaimOfAnItemThatNobodyMeasuredCannotBeTold() {
        var verdict = verdict(line("mass", "61", "lb"));

        assertThat(verdict.verdict()).isEqualTo(Verdict.CANNOT_TELL);
        assertThat(verdict.measured()).isEmpty();
        assertThat(new Wording(UnitSystem.METRIC).of("Brindle Lantern", verdict))
                .isEqualTo("Whether the Brindle Lantern meets its claimed mass of “61 lb” we can’t tell: it was "
                        + "not measured (battery in). What would do: weigh-in, 3 runs.");
    }

    @Test
    void aConditionThatNobodyMeasuredUnderCannotBeTold() {
        var claim = under(line("mass", "61", "lb"), "lights=removed");
        var verdict = verdict(claim, mass("in", 68.3, 0.1));

        assertThat(verdict.verdict()).isEqualTo(Verdict.CANNOT_TELL);
        assertThat(verdict.measured()).isPresent();
        assertThat(verdict.reason()).contains("lights=removed");
    }

    @Test
    void aSingleSpeedCanBeContradictedButNotShownToHoldWithoutATolerance() {
        var figure = figure("assistspeed.cut-off", "drive=pedal", Unit.MILE_PER_HOUR.toSi(20.1), 0.05);

        assertThat(verdict(line("top-assisted-speed", "20", "mph"), figure).verdict())
                .isEqualTo(Verdict.CANNOT_TELL);
        assertThat(verdict(line("top-assisted-speed", "21", "mph"), figure).verdict())
                .isEqualTo(Verdict.FALLS_SHORT);
        var tolerant = under(line("top-assisted-speed", "20", "mph"), "tolerance=0.5 mph");
        assertThat(verdict(tolerant, figure).verdict()).isEqualTo(Verdict.MEETS);
    }

    @Test
    void moreRunsAreSaidWhereTheyWouldDecide() {
        var runs = java.util.stream.IntStream.rangeClosed(1, 3)
                .mapToObj(i -> new Figure.FigureRun(
                        "w-" + i,
                        org.measuredmile.recording.day.Run.State.CONFIRMED,
                        true,
                        "",
                        java.util.OptionalDouble.of(30)))
                .toList();
        var plain = figure("weighin.mass", "battery=in", 30, Contribution.typeA("scatter of 3 runs", 0.10, 14));
        var figure = new Figure(
                plain.key(),
                plain.kind(),
                plain.trial(),
                plain.version(),
                plain.value(),
                plain.thisDay(),
                plain.anyDay(),
                runs,
                plain.budget(),
                plain.narrows(),
                plain.assumed(),
                plain.used(),
                plain.findings(),
                plain.inputs());
        var verdict = verdict(line("mass", "30.15", "kg"), figure);

        // Computed: t(15)·0.10·√(3/4) = 0.1846 and t(16)·0.10·√(3/5) = 0.1642, t(17)·0.10·√(3/6) = 0.1492 < 0.15.
        assertThat(verdict.moreRuns()).contains(new MoreRuns(3, 0));
        assertThat(verdict.probability().orElseThrow()).isCloseTo(0.9221, within(1e-3));
        assertThat(new Wording(UnitSystem.METRIC).of("Brindle Lantern", verdict))
                .contains("3 more runs would decide it, should the value stay what it is.");
    }

    @Test
    void linesOfWordsAndItemsThatNoFigureAnswersHaveNoVerdict() {
        TestedBike bike = tested(
                described("Lantern", 1890, line("brakes", "hydraulic discs", ""), line("motor-power", "500", "W")),
                mass("in", 68, 0.1));

        assertThat(Claims.of(bike, Map.of())).isEmpty();
    }
}
