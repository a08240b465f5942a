package org.measuredmile.trial.assistspeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.trial.GivenDay.figure;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.GivenDay;

class LevelsAtReferenceTest {
    private static final RoadLoad LOAD = new RoadLoad(0.0080, 0.6044);
    private static final Setting HEAVY = new Setting(110, 0, 1.225, 9.80665);

    /// Source: the power equation of Martin et al. (1998) at 351.69 W with 110 kg, C_dA 0.60 m²,
    /// C_rr 0.0080 and 1.225 kg/m³, which is 20 mph: 120 kg ride 8.8690 m/s, 100 kg 9.0127 m/s, air
    /// of 1.0466 kg/m³ 9.3763 m/s; bearings, which this load leaves out, move each by under 0.002 m/s.
    @ParameterizedTest
    @CsvSource({"120, 1.225, 8.8690", "100, 1.225, 9.0127", "110, 1.0466, 9.3763"})
    void aPowerLimitedSpeedMovesWithMassAndAir(double kg, double kgPerM3, double mps) {
        var there = HEAVY.withMass(kg).inAir(kgPerM3);
        double ratio = new SteadyPower(LOAD, HEAVY, there, new double[] {0}).ratio(8.9408);
        assertThat(8.9408 * ratio).isCloseTo(mps, within(0.002));
    }

    @ParameterizedTest
    @CsvSource({"2, -2", "2.5, 2.5", "-1.5, -1.5", "3, 1"})
    void theWindOfEachWayIsTakenOut(double out, double back) {
        var model = new SteadyPower(LOAD, HEAVY, HEAVY, new double[] {out, back});
        double measured = model.meanSpeedMps(250).orElseThrow();
        double calm = model.speedMps(HEAVY, 250, 0).orElseThrow();
        assertThat(measured * model.ratio(measured)).isCloseTo(calm, within(1e-6));
    }

    @Test
    void aSpeedAtTheCutOffIsTheControllersAndNothingIsCorrected() {
        var outcome = bothWays("8.75 m/s").reading("out", "cut-off", "8.9 m/s").reduced();
        var asRidden = figure(outcome, "assistspeed.speed drive=throttle level=throttle levelRole=throttle");
        var reference = atReference(outcome.figures());
        assertThat(reference.value()).isEqualTo(asRidden.value());
        assertThat(reference.findings()).anyMatch(one -> one.code().equals(LevelsAtReference.GOVERNED));
    }

    @Test
    void aSpeedFarFromTheCutOffIsBroughtToTheReferenceRiderAndAir() {
        var outcome = bothWays("7.0 m/s").reading("out", "cut-off", "8.9 m/s").reduced();
        var reference = atReference(outcome.figures());
        assertThat(reference.findings()).noneMatch(one -> one.code().equals(LevelsAtReference.GOVERNED));
        assertThat(reference.budget().stream().map(Contribution::input))
                .contains("mass of the rider", "mass of the bike", "density of the air", "road load, of the correction")
                .noneMatch(input -> input.contains("controller"));
        assertThat(reference.assumed()).anyMatch(one -> one.contains("no coast-down"));
        // 85 kg taken for the rider at 100 kPa and 15 °C: a lighter one in thinner air is a little faster.
        assertThat(reference.value()).isBetween(7.0, 7.2);
    }

    @Test
    void withoutACutOffHalfTheCorrectionStaysOpen() {
        var reference = atReference(bothWays("7.0 m/s").reduced().figures());
        double half = Math.abs(reference.value() - 7.0) / 2;
        assertThat(reference.budget()).anySatisfy(part -> {
            assertThat(part.input()).isEqualTo("whether a controller holds it");
            assertThat(part.standardUncertainty()).isCloseTo(half, within(1e-9));
        });
        assertThat(reference.assumed()).anyMatch(one -> one.contains("no cut-off was noted"));
    }

    private static GivenDay bothWays(String speed) {
        var day = GivenDay.of(new AssistSpeed())
                .instrument(Instrument.Kind.RECEIVER, 0.01, 1, 0.002)
                .wind(0);
        for (String way : new String[] {"out", "back"}) {
            day = day.run(way, "drive=throttle", way).reading(way, "speed", speed, "receiver-1");
        }
        return day;
    }

    private static Figure atReference(java.util.List<Figure> figures) {
        return figures.stream()
                .filter(one -> one.key().figure().equals("assistspeed.speed"))
                .filter(one -> one.key().variant().has("at", "reference"))
                .findFirst()
                .orElseThrow();
    }
}
