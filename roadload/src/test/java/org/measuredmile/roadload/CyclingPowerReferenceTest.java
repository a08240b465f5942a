package org.measuredmile.roadload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/// The published power equation of cycling: Martin, Milliken, Cobb, McFadden and Coggan, Journal of Applied
/// Biomechanics
/// 14 (1998) 276-291. Its validation: modelled against measured power R² = 0.97, standard error 2.7 W, no significant
/// difference. Values computed from the equation apart from this code.
class CyclingPowerReferenceTest {
    private static final Setting LOADED = new Setting(110, 1.4475, 1.225, 9.80665);
    private static final CyclingPower BIKE = new CyclingPower(new RoadLoad(0.0080, 0.60), 0.0044, 0.976);

    @Test
    void twentyMilesAnHourOnTheFlat() {
        var parts = BIKE.parts(LOADED, 8.9408, 0, 0);
        assertThat(parts.airW()).isCloseTo(264.58, within(0.01));
        assertThat(parts.rollingW()).isCloseTo(77.16, within(0.01));
        assertThat(parts.bearingsW()).isCloseTo(1.509, within(0.01));
        assertThat(BIKE.powerW(LOADED, 8.9408, 0, 0)).isCloseTo(351.69, within(0.01));
    }

    @Test
    void climbOfTwelvePerCent() {
        var parts = BIKE.parts(LOADED, 4.0, 0.12, 0);
        assertThat(parts.airW()).isCloseTo(23.692, within(0.01));
        assertThat(parts.rollingW()).isCloseTo(34.274, within(0.01));
        assertThat(parts.bearingsW()).isCloseTo(0.5032, within(0.001));
        assertThat(parts.slopeW()).isCloseTo(514.10, within(0.01));
        assertThat(BIKE.powerW(LOADED, 4.0, 0.12, 0)).isCloseTo(586.65, within(0.01));
    }

    @Test
    void windFromAheadAndFromBehind() {
        var air = LOADED.inAir(1.200);
        assertThat(BIKE.powerW(air, 5.0, 0, 3)).isCloseTo(163.80, within(0.01));
        assertThat(BIKE.parts(air, 5.0, 0, -6).airW()).isCloseTo(-1.8132, within(0.001));
        assertThat(BIKE.powerW(air, 5.0, 0, -6)).isCloseTo(43.042, within(0.001));
    }

    /// Inputs as a textbook of the Springer sports engineering series tabulates them from the paper.
    @Test
    void climbOfAPublishedParameterSet() {
        var bike = new CyclingPower(new RoadLoad(0.0032, 0.473), 0.0044, 0.98);
        assertThat(bike.powerW(new Setting(72, 1.4475, 1.225, 9.81), 6, 0.075, 0))
                .isCloseTo(402.55, within(0.01));
    }

    @Test
    void bearingsAtTenMetresASecond() {
        assertThat(BIKE.parts(LOADED, 10, 0, 0).bearingsW()).isCloseTo(1.780, within(0.001));
    }

    /// The same power with another mass and in thinner air: speeds solved from the equation.
    @Test
    void speedAtTheSamePower() {
        double power = BIKE.powerW(LOADED, 8.9408, 0, 0);
        assertThat(speed(power, LOADED.withMass(120))).isCloseTo(8.8690, within(1e-4));
        assertThat(speed(power, LOADED.withMass(100))).isCloseTo(9.0127, within(1e-4));
        assertThat(speed(power, LOADED.inAir(1.0466))).isCloseTo(9.3763, within(1e-4));
    }

    /// Balanced through the kernel, with the bearings and the chain taken from what drives.
    private static double speed(double power, Setting setting) {
        var load = new RoadLoad(BIKE.load().rollingCoefficient(), BIKE.load().dragAreaM2() + BIKE.wheelDragAreaM2());
        Ride.Drive drive = v -> power * BIKE.chainEfficiency() / v - (91 + 8.7 * v) / 1000;
        return Balance.speedMps(load, setting, drive, 0, 0).orElseThrow();
    }
}
