package org.measuredmile.trial.coastdown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.coastdown.CoastDays.Coast;
import org.measuredmile.trial.coastdown.CoastDays.Ride;

/// The handbook's worked example, whole: five pairs of coasts from a recording to the figures. Coefficients of the
/// pairs are those of the crew's own study of reduction algorithms (worked example of means over pairs, computed
/// there with another program); forces, gusts and moderated scatter worked out apart from this code.
class CoastdownReferenceTest {
    private static final double[] ROLLING = {0.0081, 0.0076, 0.0085, 0.0079, 0.0083};
    private static final double[] AREA_M2 = {0.585, 0.630, 0.560, 0.605, 0.590};
    private static final double[] FORCE_N = {18.91326, 19.21170, 18.87332, 19.06878, 19.20957};

    private static Outcome fivePairs() {
        var ride = new Ride();
        var day = CoastDays.day();
        var ids = new String[10];
        for (int i = 0; i < 5; i++) {
            var coast = new Coast(ROLLING[i], AREA_M2[i], 0, 0);
            ride.coast(coast).coast(coast);
            ids[2 * i] = "c-0" + (2 * i + 1);
            ids[2 * i + 1] = "c-0" + (2 * i + 2);
            day.run(ids[2 * i], "out").run(ids[2 * i + 1], "back");
        }
        return day.recording(ride.seen("coasts.csv", 5, 0, 1), ids).reduce();
    }

    @Test
    void theWorkedExampleOfTheHandbook() {
        var outcome = fivePairs();
        assertThat(outcome.runs()).allMatch(run -> run.counted());
        for (int i = 0; i < 5; i++) {
            double forceN = outcome.runs()
                    .get(2 * i)
                    .value("force-at-20-kmh")
                    .orElseThrow()
                    .value();
            assertThat(forceN).isCloseTo(FORCE_N[i], within(0.01));
        }
        var force = CoastDays.figure(outcome, "force-at-20-kmh");
        assertThat(force.value()).isCloseTo(19.0553, within(0.01));
        assertThat(force.counted()).isEqualTo(10);
        // s² = (12·(0.062·19.06)² + Σ(F − mean)²)/16, over five pairs.
        assertThat(force.budget().stream()
                        .filter(one -> one.input().equals("scatter of 5 pairs"))
                        .findFirst()
                        .orElseThrow()
                        .standardUncertainty())
                .isCloseTo(0.4590, within(0.001));
        assertThat(CoastDays.figure(outcome, "rolling-coefficient").value()).isCloseTo(0.0079708, within(1e-5));
        assertThat(CoastDays.figure(outcome, "drag-area").value()).isCloseTo(0.594, within(5e-4));
    }

    @Test
    void atReferenceTheForceIsThatOfTheReferenceRider() {
        var outcome = fivePairs();
        double ridden = CoastDays.figure(outcome, "force-at-20-kmh").value();
        double reference =
                CoastDays.figure(outcome, "force-at-20-kmh at=reference").value();
        // 3 kg more at a rolling coefficient of 0.0079947 in the same air: 0.2352 N.
        assertThat(reference - ridden).isCloseTo(0.2352, within(0.003));
    }

    @Test
    void coefficientsComeWithTheirCorrelation() {
        var outcome = fivePairs();
        assertThat(outcome.correlations()).hasSize(1);
        assertThat(outcome.correlations().getFirst().coefficient()).isBetween(-0.5, -0.1);
    }

    private static double part(Figure figure, String input) {
        return figure.budget().stream()
                        .filter(one -> one.input().equals(input))
                        .findFirst()
                        .orElseThrow()
                        .standardUncertainty()
                / figure.value();
    }

    /// What is solved for is a deceleration: F = m_eff·a, C_dA goes with m_eff/ρ, C_rr with m_eff/m. So a
    /// relative error of one is that of the other (JCGM 100:2008, 5.1.6, note 1). Rider 77 ± 0.5 kg, bike 28 ±
    /// 0.03 kg, wheels 3 ± 1 kg, air of 20 ± 1 °C, 1000 ± 3 hPa and 50 ± 5 % (which is 0.044 % of its density):
    /// by hand.
    @Test
    void massWheelsAndAirReachTheFiguresInTheirShares() {
        var outcome = fivePairs();
        double mass = Math.hypot(0.5, 0.03) / 108;
        double wheels = 1.0 / 108;
        var force = CoastDays.figure(outcome, "force-at-20-kmh");
        assertThat(part(force, "mass of bike and rider")).isCloseTo(mass, within(1e-9));
        assertThat(part(force, "turning of the wheels (assumed)")).isCloseTo(wheels, within(1e-9));
        var area = CoastDays.figure(outcome, "drag-area");
        assertThat(part(area, "mass of bike and rider")).isCloseTo(mass, within(1e-9));
        assertThat(part(area, "turning of the wheels (assumed)")).isCloseTo(wheels, within(1e-9));
        double air = Math.sqrt(Math.pow(1 / 293.15, 2) + Math.pow(0.003, 2) + Math.pow(0.00044, 2));
        assertThat(part(area, "air density")).isCloseTo(air, within(2e-5));
        var rolling = CoastDays.figure(outcome, "rolling-coefficient");
        assertThat(part(rolling, "mass of bike and rider")).isCloseTo(mass * 3 / 105, within(1e-9));
        assertThat(part(rolling, "turning of the wheels (assumed)")).isCloseTo(wheels, within(1e-9));
    }
}
