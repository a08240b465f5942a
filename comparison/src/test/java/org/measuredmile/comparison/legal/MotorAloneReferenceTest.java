package org.measuredmile.comparison.legal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.measuredmile.quantity.Unit.METRE_PER_SECOND;

import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Air;

/// Speeds by the motor alone brought to another rider and air, in the two limits where the answer is known.
class MotorAloneReferenceTest {
    private static final double SPEED_MPS = 8;
    private static final double HALF_MPS = 0.2;
    private static final double BIKE_KG = 25;
    private static final double NORMAL_95 = 1.959964;

    /// A bike whose speed at reference conditions is known, with a coast-down's two numbers.
    private static Tested bike(double rolling, double rollingHalf, double area, double areaHalf, double massHalf) {
        return Tested.driven("both")
                .motorAlone(SPEED_MPS, HALF_MPS, METRE_PER_SECOND)
                .motorAloneAtReference(SPEED_MPS, HALF_MPS, METRE_PER_SECOND)
                .measured("coastdown.rolling-coefficient", Variant.NONE, rolling, rollingHalf, METRE_PER_SECOND)
                .measured("coastdown.drag-area", Variant.NONE, area, areaHalf, METRE_PER_SECOND)
                .measured("weighin.mass", Variant.of("battery", "in"), BIKE_KG, massHalf, METRE_PER_SECOND);
    }

    private static MotorAlone brought(Tested tested, double riderKg) {
        var evidence = new Evidence(tested.bike());
        return MotorAlone.of(evidence, evidence.motorAlone().getFirst(), riderKg)
                .orElseThrow();
    }

    /// Where air is all that holds it, power is ½·ρ·C_dA·v³: the speed goes with the cube root of the density.
    @Test
    void inAirAloneTheSpeedGoesWithTheCubeRootOfItsDensity() {
        var brought = brought(bike(1e-7, 0, 0.6, 0, 0), 60);
        double ratio = Math.cbrt(Air.REFERENCE.densityKgPerM3() / 1.225);

        assertThat(brought.speedMps()).isCloseTo(SPEED_MPS * ratio, within(1e-4));
        // Nothing else is unsure: the interval is the figure's own, in the same proportion.
        assertThat(brought.known().interval95().low()).isCloseTo((SPEED_MPS - HALF_MPS) * ratio, within(1e-4));
        assertThat(brought.known().interval95().high()).isCloseTo((SPEED_MPS + HALF_MPS) * ratio, within(1e-4));
        assertThat(brought.known().standard()).isCloseTo(HALF_MPS / NORMAL_95 * ratio, within(1e-4));
        assertThat(brought.isGoverned()).isFalse();
    }

    /// Where rolling is all, power is m·g·C_rr·v: the speed goes with the mass, 80 kg and the bike over the
    /// rider and the bike; what nobody knows of the bike's mass moves it by (R − 80)/(M + R)² for each
    /// kilogram.
    @Test
    void onRollingAloneTheSpeedGoesWithTheMassAndTheIntervalWithWhatIsKnownOfIt() {
        double massSd = 3;
        double riderKg = 120;
        var brought = brought(bike(0.01, 0, 1e-7, 0, massSd * NORMAL_95), riderKg);
        double ratio = (BIKE_KG + 80) / (BIKE_KG + riderKg);
        double sd = SPEED_MPS * massSd * (riderKg - 80) / Math.pow(BIKE_KG + riderKg, 2);

        assertThat(brought.speedMps()).isCloseTo(SPEED_MPS * ratio, within(1e-3));
        assertThat(brought.known().standard())
                .isCloseTo(Math.hypot(HALF_MPS / NORMAL_95 * ratio, sd), withinPercentage(1));
        double half = Math.hypot(HALF_MPS * ratio, NORMAL_95 * sd);
        assertThat(brought.known().interval95().low()).isCloseTo(brought.speedMps() - half, within(0.002));
        assertThat(brought.known().interval95().high()).isCloseTo(brought.speedMps() + half, within(0.002));
    }

    /// Twice the whole road load at the power that it took is the same speed: only the mix of rolling and drag
    /// tells.
    @Test
    void whatScalesBothNumbersOfTheRoadLoadLeavesTheSpeedAsItIs() {
        var certain = brought(bike(0.01, 0, 0.6, 0, 0), 120);
        var apart = brought(bike(0.01, 0.003, 0.6, 0.18, 0), 120);
        var alike = brought(bike(0.01, 0.003, 0.6, 0.18, 0).leaning(0.999), 120);
        var opposite = brought(bike(0.01, 0.003, 0.6, 0.18, 0).leaning(-0.999), 120);
        double own = certain.known().standard();

        assertThat(alike.known().standard() - own)
                .isLessThan(0.1 * (apart.known().standard() - own));
        assertThat(opposite.known().standard()).isGreaterThan(apart.known().standard());
    }

    @Test
    void aSpeedThatTheControllerHoldsStaysAsItWasMeasured() {
        var governed = Tested.driven("both")
                .motorAlone(SPEED_MPS, HALF_MPS, METRE_PER_SECOND)
                .motorAloneAtReference(
                        SPEED_MPS,
                        HALF_MPS,
                        METRE_PER_SECOND,
                        Finding.note(MotorAlone.GOVERNED, Place.NOWHERE, "held"));
        var brought = brought(governed, 120);

        assertThat(brought.speedMps()).isEqualTo(SPEED_MPS);
        assertThat(brought.known().interval95().low()).isEqualTo(SPEED_MPS - HALF_MPS);
        assertThat(brought.isGoverned()).isTrue();
    }
}
