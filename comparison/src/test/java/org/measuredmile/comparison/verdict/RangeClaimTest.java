package org.measuredmile.comparison.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.measuredmile.comparison.TestFigures.DAY;
import static org.measuredmile.comparison.TestFigures.described;
import static org.measuredmile.comparison.TestFigures.figure;
import static org.measuredmile.comparison.TestFigures.tested;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.roadload.Air;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.UsedLoad;

class RangeClaimTest {
    private static final double MEAN_MPS = 7;

    private static SpecLine range(String claimed, String conditions) {
        return new SpecLine(
                "range",
                claimed,
                "km",
                conditions,
                "the maker's page (invented)",
                "2031-01-15",
                "",
                "",
                "",
                Place.NOWHERE);
    }

    /// A bike of 25 kg with a coast-down, that went 48 km at a level and 50 km at reference conditions.
    private static List<Figure> ridden(String level) {
        return List.of(
                figure("range.distance", level, 48_000, 1_000),
                figure("range.distance", level + " at=reference", 50_000, 1_500),
                figure("range.mean-speed", level, MEAN_MPS, 0.1),
                figure("weighin.mass", "battery=in", 25, 0.05),
                figure("coastdown.rolling-coefficient", "", 0.008, 0.0006),
                figure("coastdown.drag-area", "", 0.60, 0.03));
    }

    private static ClaimVerdict verdict(SpecLine line, List<Figure> figures) {
        return Claims.of(tested(described("Lantern", 1890, line), figures.toArray(new Figure[0])), Map.of())
                .getFirst();
    }

    private static double joulesPerMetre(double riderKg, double airK) {
        double air = new Air(airK, 100_000, 0.5).densityKgPerM3();
        return (25 + riderKg) * 9.80665 * 0.008 + air * 0.60 / 2 * 1.05 * MEAN_MPS * MEAN_MPS;
    }

    @ParameterizedTest
    @CsvSource({"60 kg, 60, 20 °C, 293.15", "75 kg, 75, 20 °C, 293.15", "100 kg, 100, 5 °C, 278.15"})
    void theRangeAtTheClaimsConditionsGoesByTheEnergyPerDistance(
            String rider, double riderKg, String temperature, double airK) {
        var verdict = verdict(
                range("45", "level=highest rider-mass=" + rider + " temperature=" + temperature),
                ridden("levelRole=highest"));

        // c = m·g·C_rr + ½·ρ·C_dA·v² − P/v at both (handbook of the range trial); 75 W from the rider.
        double reference = joulesPerMetre(80, 293.15) - 75 / MEAN_MPS;
        double wanted = joulesPerMetre(riderKg, airK) - 75 / MEAN_MPS;
        assertThat(verdict.atConditions().orElseThrow().value()).isCloseTo(50_000 * reference / wanted, within(1.0));
        assertThat(verdict.measured().orElseThrow().value()).isEqualTo(48_000);
    }

    /// A range elsewhere is a ratio of two forces: what scales rolling and drag alike leaves it as it is, what
    /// trades them does not (JCGM 100:2008, 5.2.2, equation (13)).
    @Test
    void theRangeElsewhereIsAsUncertainAsTheCoastDownsNumbersLeanOnEachOther() {
        double opposite = halfWidth(-0.95);
        double alone = halfWidth(0);
        double same = halfWidth(0.95);

        assertThat(same).isLessThan(0.99 * alone);
        assertThat(opposite).isGreaterThan(1.01 * alone);
        // Variances lie on one line over the correlation; nearly so, as the ratio is drawn and bends.
        assertThat(same * same + opposite * opposite).isCloseTo(2 * alone * alone, withinPercentage(4));
        assertThat(halfWidth(Double.NaN)).isCloseTo(halfWidth(UsedLoad.USUAL_LEANING), withinPercentage(0.01));
    }

    private static double halfWidth(double leaning) {
        var results = new ArrayList<TestedBike.Result>();
        var figures = new ArrayList<>(ridden("levelRole=throttle"));
        figures.replaceAll(one -> switch (one.key().figure()) {
            case "coastdown.rolling-coefficient" -> figure(one.key().figure(), "", 0.008, 0.0020);
            case "coastdown.drag-area" -> figure(one.key().figure(), "", 0.60, 0.15);
            default -> one;
        });
        for (var one : figures) {
            var kept = one.key().figure().startsWith("coastdown") && !Double.isNaN(leaning)
                    ? List.of(
                            new Correlation(figures.get(4).key(), figures.get(5).key(), leaning))
                    : List.<Correlation>of();
            results.add(new TestedBike.Result(one, DAY, "day-1", "", true, kept));
        }
        var line = range("45", "drive=throttle rider-mass=100 kg temperature=5 °C wind=5 m/s");
        return Claims.of(new TestedBike(described("Lantern", 1890, line), results), Map.of())
                .getFirst()
                .atConditions()
                .orElseThrow()
                .known()
                .interval95()
                .halfWidth();
    }

    @ParameterizedTest
    @CsvSource({"40, MEETS", "50, CANNOT_TELL", "60, FALLS_SHORT"})
    void aRangeIsCalledAtTheClaimsOwnConditions(String claimed, Verdict expected) {
        var verdict = verdict(range(claimed, "drive=throttle rider-mass=75 kg"), ridden("levelRole=throttle"));

        assertThat(verdict.verdict()).isEqualTo(expected);
    }

    @Test
    void upToFallsShortOnlyWhenTheBestAdmissibleConditionsDoNotReachIt() {
        var ridden = ridden("levelRole=throttle");
        // 50 km with 80 kg at 20 °C are 55.1 km with 60 kg at 30 °C, by the formula above without a rider's power.
        double best = 50 * joulesPerMetre(80, 293.15) / joulesPerMetre(60, 303.15);
        assertThat(best).isCloseTo(54.7, within(0.2));

        assertThat(verdict(range("54", "drive=throttle"), ridden).verdict()).isEqualTo(Verdict.FALLS_SHORT);
        assertThat(verdict(range("up to 54", "drive=throttle"), ridden).verdict())
                .isEqualTo(Verdict.CANNOT_TELL);
        assertThat(verdict(range("up to 48", "drive=throttle"), ridden).verdict())
                .isEqualTo(Verdict.MEETS);
        var verdict = verdict(range("up to 70", "drive=throttle"), ridden);
        assertThat(verdict.verdict()).isEqualTo(Verdict.FALLS_SHORT);
        assertThat(new Wording(UnitSystem.METRIC).of("Brindle Lantern", verdict).replace('\u00a0', ' '))
                .startsWith("The Brindle Lantern falls short of its claimed range of “up to 70 km” (by throttle alone) "
                        + "even at its best, by ")
                .contains("it went 48 ± 2 km (29.8 ± 1.2 mi), at full throttle, on 4 May 2031; at the best conditions "
                        + "that the claim admits, a rider of 60 kg (132 lb) with gear, 30 °C (86 °F), no wind and a "
                        + "level road, that is ");
    }

    @Test
    void aLevelThatNobodyRodeCannotBeTold() {
        var verdict = verdict(range("65", "level=lowest rider-mass=75 kg"), ridden("levelRole=highest"));

        assertThat(verdict.verdict()).isEqualTo(Verdict.CANNOT_TELL);
        assertThat(verdict.measured()).isEmpty();
        assertThat(verdict.reason()).isEqualTo("no range was ridden to its end at the lowest level");
        assertThat(verdict.remedy()).isEqualTo("a range ride at the lowest level");
    }

    @Test
    void aClaimWithoutALevelIsNotShortOfWhatTheLowestMayReach() {
        assertThat(verdict(range("70", ""), ridden("levelRole=highest")).verdict())
                .isEqualTo(Verdict.CANNOT_TELL);
        assertThat(verdict(range("70", ""), ridden("levelRole=lowest")).verdict())
                .isEqualTo(Verdict.FALLS_SHORT);
        assertThat(verdict(range("30", ""), ridden("levelRole=highest")).verdict())
                .isEqualTo(Verdict.MEETS);
    }

    @Test
    void aRideThatCannotBeBroughtElsewhereIsNoVerdict() {
        var ridden = new ArrayList<>(ridden("levelRole=highest"));
        ridden.removeIf(one -> one.key().variant().get("at").isPresent());
        var verdict = verdict(range("60", "level=highest rider-mass=75 kg"), ridden);

        assertThat(verdict.verdict()).isEqualTo(Verdict.CANNOT_TELL);
        assertThat(verdict.measured()).isPresent();
        assertThat(verdict.reason()).contains("could not be brought");
    }

    @Test
    void aRideStoppedEarlyCanOnlyShowThatAClaimIsMet() {
        var stopped = List.of(figure("range.at-least", "levelRole=highest", 40_000, 200));

        assertThat(verdict(range("39", "level=highest"), stopped).verdict()).isEqualTo(Verdict.MEETS);
        assertThat(verdict(range("60", "level=highest"), stopped).verdict()).isEqualTo(Verdict.CANNOT_TELL);
    }

    @Test
    void aClaimedBandOfRidersIsTakenAtTheEndThatTheClaimIsHeldTo() {
        var ridden = ridden("levelRole=throttle");
        var upTo = verdict(range("up to 70", "drive=throttle rider-mass=50-90 kg"), ridden);
        var always = verdict(range("40", "drive=throttle rider-mass=50-90 kg"), ridden);

        assertThat(upTo.atConditions().orElseThrow().under().orElseThrow().riderKg())
                .isEqualTo(50);
        assertThat(always.atConditions().orElseThrow().under().orElseThrow().riderKg())
                .isEqualTo(90);
    }
}
