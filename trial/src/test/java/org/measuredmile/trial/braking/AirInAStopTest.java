package org.measuredmile.trial.braking;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;

/// Why no stop is given at reference conditions: what air and wind do to a stop from 20 mph.
///
/// Source: m·v·dv/ds = −m·a − ½·ρ·C_dA·(v + w)², integrated by the midpoint rule; 113 kg, 0.6 m².
class AirInAStopTest {
    private static final double FROM_MPS = 8.9408;
    private static final RoadLoad LOAD = new RoadLoad(0, 0.6);
    private static final Setting REFERENCE = new Setting(113, 0, 1.1837, 9.80665);

    private static double distanceM(double brakeMps2, Setting setting, double headMps) {
        int steps = 2000;
        double distance = 0;
        for (int i = 0; i < steps; i++) {
            double v = FROM_MPS * (1 - (i + 0.5) / steps);
            double deceleration = brakeMps2 + LOAD.dragN(setting, v, headMps) / setting.massKg();
            distance += v * FROM_MPS / steps / deceleration;
        }
        return distance;
    }

    @ParameterizedTest
    @CsvSource({"5.2, 1.10", "5.2, 1.25", "6.6, 1.10", "6.6, 1.25"})
    void theDensityOfTheAirMovesAStopByLessThanTwoInAThousand(double brakeMps2, double kgPerM3) {
        double there = distanceM(brakeMps2, REFERENCE.inAir(kgPerM3), 0);
        double reference = distanceM(brakeMps2, REFERENCE, 0);
        assertThat(Math.abs(there / reference - 1)).isBetween(0.0005, 0.002);
    }

    @ParameterizedTest
    @CsvSource({"5.2, 3", "6.6, 3", "5.2, -3", "6.6, -3"})
    void aWindAtTheLimitMovesAStopByLessThanDaysDiffer(double brakeMps2, double headMps) {
        double windy = distanceM(brakeMps2, REFERENCE, headMps);
        double reference = distanceM(brakeMps2, REFERENCE, 0);
        double betweenDays = Braking.DECLARATION
                .requireFigure("braking.stopping-distance")
                .prior()
                .betweenDays();
        assertThat(Math.abs(windy / reference - 1)).isBetween(0.01, betweenDays);
    }
}
