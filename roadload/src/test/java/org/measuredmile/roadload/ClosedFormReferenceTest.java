package org.measuredmile.roadload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNoException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/// The road load's parts where the answer is known in closed form, and the limits of each.
class ClosedFormReferenceTest {
    private static final Setting SETTING = new Setting(105, 2, 1.2, 9.80665);

    /// min(F₀, P/v)·c(v), the formula on [Thrust]: full force, full power, and half, a quarter and nothing of it on
    /// the line about the cut-off.
    @ParameterizedTest
    @CsvSource({
        "0, 200",
        "2.5, 200",
        "4, 125",
        "5, 100",
        "8.5, 58.823529",
        "9, 27.777778",
        "9.25, 13.513514",
        "9.5, 0",
        "12, 0"
    })
    void thrustIsForceThenPowerThenNothing(double speedMps, double forceN) {
        assertThat(new Thrust(200, 500, 9, 1).forceN(speedMps)).isCloseTo(forceN, within(1e-6));
    }

    /// Over a taper of 2 m/s help falls by a half in one: a quarter is left half a metre a second
    /// beyond the middle.
    @Test
    void aWiderTaperFallsMoreSlowly() {
        var thrust = new Thrust(200, 500, 9, 2);
        assertThat(thrust.help(9.5)).isCloseTo(0.25, within(1e-12));
        assertThat(thrust.help(8.5)).isCloseTo(0.75, within(1e-12));
        assertThat(thrust.help(8)).isEqualTo(1);
    }

    /// A steady force alone from rest: s = F·t²/2m, elementary calculus.
    @Test
    void aSteadyForceFromRestIsRiddenAsItsClosedForm() {
        var ride = Ride.along(Profile.even(50, 0), new Ride.Plan(new RoadLoad(0, 0), SETTING, _ -> 107, 0, 0), 1);
        assertThat(ride.timeS()).isCloseTo(Math.sqrt(2 * 50 * SETTING.effectiveKg() / 107), within(2e-3));
        assertThat(ride.workJ()).isCloseTo(107 * 50, within(1e-6));
        assertThat(ride.lowestMps()).isZero();
    }

    @Test
    void thrustWithoutCutOffNeverEnds() {
        var rider = Thrust.ofPower(300, 150);
        assertThat(rider.help(40)).isEqualTo(1);
        assertThat(rider.forceN(15)).isCloseTo(10, within(1e-12));
        assertThat(Thrust.NONE.forceN(3)).isZero();
    }

    /// With rolling resistance and slope at nought and a drive of b·v, m·v·dv/ds = b·v gives v = v₀ + b·s/m,
    /// t = m/b·ln(v/v₀) and W = b·(v₀·s + b·s²/2m): elementary calculus.
    @Test
    void aDriveThatGrowsWithSpeedIsRiddenAsItsClosedForm() {
        double b = 8;
        double perM = b / SETTING.effectiveKg();
        var ride = Ride.along(Profile.even(60, 0), new Ride.Plan(new RoadLoad(0, 0), SETTING, v -> b * v, 0, 3), 2);
        double last = 3 + perM * 60;
        assertThat(ride.speedsMps()[ride.speedsMps().length - 1]).isCloseTo(last, within(1e-6));
        assertThat(ride.timeS()).isCloseTo(StrictMath.log(last / 3) / perM, within(1e-5));
        assertThat(ride.workJ()).isCloseTo(b * (3 * 60 + perM * 60 * 60 / 2), within(1e-4));
        assertThat(ride.lowestMps()).isEqualTo(3);
        assertThat(ride.distanceM()).isCloseTo(60, within(1e-9));
    }

    /// Under drag alone, with steps of 10 m, v = v₀·exp(−k·s) with k = ρ·C_dA/2m, and t = (exp(k·s) −
    /// 1)/(k·v₀): elementary calculus.
    @Test
    void dragAloneIsRiddenAsItsClosedForm() {
        var load = new RoadLoad(0, 0.6);
        double k = 1.2 * 0.6 / 2 / SETTING.effectiveKg();
        var ride = Ride.along(Profile.even(60, 0), new Ride.Plan(load, SETTING, _ -> 0, 0, 9), 10);
        assertThat(ride.lowestMps()).isCloseTo(9 * StrictMath.exp(-k * 60), within(1e-6));
        assertThat(ride.timeS()).isCloseTo((StrictMath.exp(k * 60) - 1) / (k * 9), within(1e-6));
        assertThat(ride.workJ()).isZero();
    }

    /// A steady force over the drag alone is held where F = ½·ρ·C_dA·v²: v = √(2F/ρC_dA), by hand.
    @Test
    void balanceIsFoundOrSaidNotToBe() {
        var load = new RoadLoad(0, 0.6);
        assertThat(Balance.speedMps(load, SETTING, _ -> 36, 0, 0).orElseThrow()).isCloseTo(10, within(1e-8));
        // 20 % up: 201.9 N of slope against 36 N.
        assertThat(Balance.speedMps(load, SETTING, _ -> 36, 0.2, 0)).isEmpty();
        // More than the drag at 60 m/s, 1,296 N.
        assertThat(Balance.speedMps(load, SETTING, _ -> 1300, 0, 0)).isEmpty();
    }

    /// F = m·g·(sin θ + C_rr·cos θ) at rest with the sine of 0.6 and cosine of 0.8, by hand.
    @Test
    void steepestStartIsTheGradeThatTheForceJustHolds() {
        double force = 105 * 9.80665 * (0.6 + 0.05 * 0.8);
        assertThat(Balance.steepestStart(new RoadLoad(0.05, 0.6), SETTING, force))
                .isCloseTo(0.75, within(1e-12));
        // Without any force: downhill by the rolling coefficient itself.
        assertThat(Balance.steepestStart(new RoadLoad(0.05, 0.6), SETTING, 0)).isCloseTo(-0.05, within(1e-12));
    }

    @Test
    void profileKnowsItsLengthsAndHeights() {
        var profile = new Profile(new double[] {0, 100, 150, 250}, new double[] {20, 26, 23, 25});
        assertThat(profile.lengthM()).isEqualTo(250);
        assertThat(profile.fromM(2)).isEqualTo(150);
        assertThat(profile.cellM(1)).isEqualTo(50);
        assertThat(profile.ascentM()).isEqualTo(8);
        assertThat(profile.riseM()).isEqualTo(5);
        // Six up on a hundred along the road is 6/√(100² − 6²) over the ground.
        assertThat(profile.grade(0)).isCloseTo(0.0601083, within(1e-7));
    }

    @Test
    void impossibleProfilesAreRefused() {
        double[] flat = {0, 0};
        assertThatNoException().isThrownBy(() -> new Profile(new double[] {0, 1}, new double[] {0, 0.99}));
        assertThatIllegalArgumentException().isThrownBy(() -> new Profile(new double[] {0, 1}, new double[] {0, 1}));
        assertThatIllegalArgumentException().isThrownBy(() -> new Profile(new double[] {0, 1}, new double[] {0, -1}));
        assertThatIllegalArgumentException().isThrownBy(() -> new Profile(new double[] {0, 0}, flat));
        assertThatIllegalArgumentException().isThrownBy(() -> new Profile(new double[] {1, 2}, flat));
        assertThatIllegalArgumentException().isThrownBy(() -> new Profile(new double[] {0}, new double[] {0}));
        assertThatIllegalArgumentException().isThrownBy(() -> new Profile(new double[] {0, 1, 2}, flat));
    }

    @Test
    void impossibleSettingsAirsAndThrustsAreRefused() {
        assertThatNoException().isThrownBy(() -> new Setting(1, 0, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Setting(0, 0, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Setting(1, -1e-9, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Setting(1, 0, 0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Setting(1, 0, 1, 0));
        assertThatNoException().isThrownBy(() -> new Air(290, 100_000, 0));
        assertThatNoException().isThrownBy(() -> new Air(290, 100_000, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Air(0, 100_000, 0.5));
        assertThatIllegalArgumentException().isThrownBy(() -> new Air(290, 0, 0.5));
        assertThatIllegalArgumentException().isThrownBy(() -> new Air(290, 100_000, -1e-9));
        assertThatIllegalArgumentException().isThrownBy(() -> new Air(290, 100_000, 1.001));
        assertThatNoException().isThrownBy(() -> new Thrust(0, 0, 9, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Thrust(-1e-9, 0, 9, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Thrust(0, -1e-9, 9, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Thrust(0, 0, 9, 0));
    }

    /// The validity of CIPM-2007 ends at 15 and 27 °C and at 600 and 1100 hPa (Picard and others 2008): the
    /// ends belong to it, and what lies beyond is told by the ideal gases.
    @ParameterizedTest
    @CsvSource({
        "288.15, 100000, true", "300.15, 100000, true", "293.15, 60000, true", "293.15, 110000, true",
        "288.14, 100000, false", "300.16, 100000, false", "293.15, 59999, false", "293.15, 110001, false"
    })
    void theFormulaOfTheCipmIsUsedWhereItIsValid(double temperatureK, double pressurePa, boolean valid) {
        var air = new Air(temperatureK, pressurePa, 0.5);
        assertThat(air.densityByCipm()).isNotEqualTo(air.densityOfIdealGases());
        assertThat(air.densityKgPerM3()).isEqualTo(valid ? air.densityByCipm() : air.densityOfIdealGases());
    }
}
