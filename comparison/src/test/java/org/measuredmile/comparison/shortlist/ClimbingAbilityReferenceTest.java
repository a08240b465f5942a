package org.measuredmile.comparison.shortlist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.comparison.TestFigures;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.Figure;

/// Bikes whose launch force and power limit tell the same grade, so that the chance of climbing it is known.
class ClimbingAbilityReferenceTest {
    private static final double FORCE_N = 130;
    private static final double RIDER_KG = 80;
    private static final double BIKE_KG = 25;

    private static List<Figure> figures() {
        // 9 % of each: their own uncertainty is nearly all there is.
        double powerW = FORCE_N * ClimbingAbility.PACE_MPS;
        return List.of(
                TestFigures.figure("standingstart.launch-force", "drive=throttle", FORCE_N, 0.09 * FORCE_N),
                TestFigures.figure("standingstart.power-limit", "drive=throttle", powerW, 0.09 * powerW),
                TestFigures.figure("weighin.mass", "battery=in", BIKE_KG, 0.001),
                TestFigures.figure("coastdown.rolling-coefficient", "", 0.008, 1e-6),
                TestFigures.figure("coastdown.drag-area", "", 1e-6, 1e-9));
    }

    private static TestedBike bike(List<Correlation> correlations) {
        var results = new ArrayList<TestedBike.Result>();
        for (var figure : figures()) {
            results.add(new TestedBike.Result(figure, TestFigures.DAY, "day-1", "", true, correlations));
        }
        return new TestedBike(TestFigures.described("Lantern", 1890), results);
    }

    /// F = m·g·(sin θ + C_rr·cos θ), solved for tan θ.
    private static double gradeByForce() {
        double share = FORCE_N / ((BIKE_KG + RIDER_KG) * 9.80665);
        double angle = Math.asin(share / Math.hypot(1, 0.008)) - Math.atan(0.008);
        return Math.tan(angle);
    }

    private static double chance(List<Correlation> correlations) {
        return ClimbingAbility.of(bike(correlations), RIDER_KG).orElseThrow().probability(gradeByForce());
    }

    /// Both above their medians at once: ¼ + arcsin(ϱ)/2π (W. F. Sheppard 1899, of two normal variables).
    @ParameterizedTest
    @ValueSource(doubles = {-0.8, -0.4, 0, 0.5, 0.9})
    void forceAndPowerAreDrawnLeaningAsTheirDaySaid(double coefficient) {
        var keys = figures();
        var said = new Correlation(keys.get(0).key(), keys.get(1).key(), coefficient);

        // 4,000 draws: a standard deviation of 0.007 at most; 3½ of them.
        assertThat(chance(List.of(said))).isCloseTo(0.25 + Math.asin(coefficient) / (2 * Math.PI), within(0.026));
    }

    @Test
    void whereNobodyKeptItTheBudgetsTell() {
        // Of one input named alike each: 0.99, the most that budgets are believed.
        assertThat(chance(List.of())).isCloseTo(0.25 + Math.asin(0.99) / (2 * Math.PI), within(0.028));
    }
}
