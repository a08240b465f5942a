package org.measuredmile.trial.climb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Course.Surveyed;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Balance;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.Profile;
import org.measuredmile.roadload.Ride;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.roadload.Thrust;
import org.measuredmile.trial.RoadSetting;

/// Published and worked values. Those of the worked examples are the crew's own study of reduction algorithms,
/// climb, examples D4 and D5 and the table of other masses.
class ClimbReferenceTest {
    private static final double GRAVITY = 9.80665;

    private static ClimbPower example() {
        var setting = new Setting(105, 1.575, 1.19, GRAVITY);
        var load = new KnownLoad(
                new RoadLoad(0.009, 0.6), 0.003, 0.12, 0, Double.POSITIVE_INFINITY, true, "as in the example");
        var road = new RoadSetting(setting, 0.5, 0, 0, 0, List.of(), List.of());
        return new ClimbPower(
                road, load, new HillWind(0, 0.7, ""), new Surveyed(300, 0.3), new Surveyed(18, 0.1), 62, 5.6, 4.2);
    }

    /// The handbook page's worked example.
    @Test
    void theExampleOfTheHandbookIsRight() {
        var parts = example().parts();
        assertThat(parts.lifting()).isCloseTo(298.945, within(0.0005));
        assertThat(parts.speedingUp()).isCloseTo(-11.792, within(0.0005));
        assertThat(parts.rolling()).isCloseTo(44.842, within(0.0005));
        assertThat(parts.air()).isCloseTo(40.444, within(0.0005));
        assertThat(example().watts()).isCloseTo(372.439, within(0.0005));
        assertThat(Climb.DECLARATION.handbook().example()).contains("298.945", "372.439");
    }

    /// D4 with its uncertainties: m 1.58, h 1.66, L 0.17, T −2.56, v₁ −0.96, v₂ 0.72, C_rr 14.95, C_dA 8.09,
    /// w 11.70 W; the example keeps the mean speed when T changes.
    @Test
    void theBudgetOfThatExampleIsRight() {
        var power = example();
        assertThat(power.byMass().standardUncertainty()).isCloseTo(1.58, within(0.02));
        assertThat(power.byRise().standardUncertainty()).isCloseTo(1.66, within(0.02));
        assertThat(power.byLength().standardUncertainty()).isCloseTo(0.17, within(0.02));
        assertThat(power.perSecond() * 0.35).isCloseTo(-2.56, within(0.02));
        assertThat(power.perEntry() * 0.1).isCloseTo(-0.96, within(0.02));
        assertThat(power.perExit() * 0.1).isCloseTo(0.72, within(0.02));
        assertThat(power.byRoadLoad().standardUncertainty()).isCloseTo(StrictMath.hypot(14.95, 8.09), within(0.02));
        assertThat(power.byWind().standardUncertainty()).isCloseTo(11.70, within(0.02));
    }

    /// Table "truth, 300 m", power-limited row: 85, 95, 115 and 125 kg on 6 % take 50.1, 53.8, 61.5 and 65.6 s,
    /// each from its own steady speed.
    @ParameterizedTest
    @CsvSource({"95, 53.8", "115, 61.5", "125, 65.6"})
    void aBikeAtTheLimitOfItsPowerTakesTheTimesOfTheTable(double kg, double seconds) {
        var load = new RoadLoad(0.009, 0.6);
        var hill = Profile.even(300, 300 * StrictMath.sin(StrictMath.atan(0.06)));
        Ride.Drive power = Thrust.ofPower(0.5, 1)::forceN;
        var light = new ClimbModel(hill, load, setting(85), 0, 300 / 50.1, power);
        double watts = light.strength(50.1).orElseThrow();
        double start =
                Balance.speedMps(load, setting(kg), v -> watts / v, 0.06, 0).orElseThrow();
        var heavy = new ClimbModel(hill, load, setting(kg), 0, start, power);
        assertThat(heavy.ride(watts).timeS()).isCloseTo(seconds, within(0.1));
    }

    private static Setting setting(double kg) {
        return new Setting(kg, 0.015 * kg, 1.19, GRAVITY);
    }

    @Test
    void theRideThatTheStrengthWasFoundForTakesTheTimeMeasured() {
        for (double seconds : new double[] {25, 40, 62, 140, 400}) {
            var model = new ClimbModel(
                    Profile.even(300, 18),
                    new RoadLoad(0.009, 0.6),
                    setting(105),
                    0.5,
                    Math.min(6, 300 / seconds),
                    ClimbModel.falling(300 / seconds, 1));
            double strength = model.strength(seconds).orElseThrow();
            assertThat(model.ride(strength).timeS()).isCloseTo(seconds, within(1e-4 * seconds));
        }
    }

    @Test
    void inTheReferenceSettingTheReferenceTimeIsTheTimeMeasured() {
        var outcome = ClimbDays.onTheHill()
                .rider(80)
                .weighed(25)
                .run("c-1", "throttle")
                .reading("c-1", "climb-time", "62.0 s")
                .reduce();
        var measured = ClimbDays.figure(outcome, "climb.time course=hill drive=throttle");
        var reference = ClimbDays.figure(outcome, "climb.time at=reference course=hill drive=throttle");
        // 20 °C, 100 kPa and 50 % are the reference air, 80 kg the reference rider.
        assertThat(reference.value()).isCloseTo(measured.value(), within(1e-3));
    }

    @Test
    void standingStartsNarrowTheTimeOfALighterRider() {
        var without = heavy().reduce();
        var with = heavy().used(
                        "standingstart.launch-force", Variant.of("drive", "throttle"), QuantityKind.FORCE, 220, 6)
                .used("standingstart.power-limit", Variant.of("drive", "throttle"), QuantityKind.POWER, 400, 10)
                .reduce();
        String key = "climb.time at=reference course=hill drive=throttle";
        var wide = ClimbDays.figure(without, key);
        var narrow = ClimbDays.figure(with, key);
        assertThat(narrow.thisDay().standard()).isLessThan(0.8 * wide.thisDay().standard());
        // At the limit of its power at 4.8 m/s both say about the same time, well under that of the heavy rider.
        assertThat(narrow.value()).isCloseTo(wide.value(), within(1.0)).isBetween(48.0, 58.0);
        assertThat(wide.assumed()).anyMatch(words -> words.contains("no standing start"));
        assertThat(narrow.used())
                .extracting(one -> one.key().figure())
                .contains("standingstart.launch-force", "standingstart.power-limit", "weighin.mass");
        // 220 N on a bike and rider of 125 kg: sin θ = 220/(125·9.80665) − about 0.009, by arithmetic.
        assertThat(ClimbDays.figure(with, "climb.steepest-start drive=throttle").value())
                .isCloseTo(0.174, within(0.003));
    }

    private static ClimbDays heavy() {
        return ClimbDays.onTheHill()
                .rider(100)
                .weighed(25)
                .run("c-1", "throttle")
                .reading("c-1", "climb-time", "62.0 s");
    }
}
