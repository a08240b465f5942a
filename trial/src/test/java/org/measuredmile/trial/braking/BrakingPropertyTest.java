package org.measuredmile.trial.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.Unit;
import org.measuredmile.trial.Figure;

/// Laws that hold for any stop. Each seed is a test of its own and stands in its name.
class BrakingPropertyTest {
    private static final int RUNS = 4;

    private static Figure tape(BrakingDays day) {
        return day.reduce().figures().getFirst();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void theSameStopsWrittenInOtherUnitsGiveTheSameFigure(long seed) {
        var random = new Random(seed);
        var metric = BrakingDays.day();
        var imperial = BrakingDays.day();
        for (int i = 0; i < RUNS; i++) {
            double mps = 8.94 + 0.2 * random.nextGaussian();
            double metres = 6.4 + 0.3 * random.nextGaussian();
            metric.taped("b-" + i, text(metres, "m"), text(mps * 3.6, "km/h"));
            imperial.taped("b-" + i, text(Unit.FOOT.fromSi(metres), "ft"), text(Unit.MILE_PER_HOUR.fromSi(mps), "mph"));
        }
        assertThat(tape(metric).value()).isCloseTo(tape(imperial).value(), within(1e-9));
        assertThat(tape(metric).anyDay().standard())
                .isCloseTo(tape(imperial).anyDay().standard(), within(1e-9));
    }

    private static String text(double value, String unit) {
        return String.format(Locale.ROOT, "%.12f %s", value, unit);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void theOrderInWhichRunsAreWrittenDoesNotMatter(long seed) {
        var random = new Random(seed);
        var forward = BrakingDays.day();
        var backward = BrakingDays.day();
        String[] distances = new String[RUNS];
        for (int i = 0; i < RUNS; i++) {
            distances[i] = text(6.4 + 0.3 * random.nextGaussian(), "m");
        }
        for (int i = 0; i < RUNS; i++) {
            forward.taped("b-" + i, distances[i], "20 mph");
            backward.taped("b-" + i, distances[RUNS - 1 - i], "20 mph");
        }
        assertThat(tape(forward).value()).isCloseTo(tape(backward).value(), within(1e-12));
        assertThat(tape(forward).anyDay().standard())
                .isCloseTo(tape(backward).anyDay().standard(), within(1e-12));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void aStopIsLongerFromAHigherSpeedAndWithALongerBuildUp(long seed) {
        var random = new Random(seed);
        double entry = 5 + 6 * random.nextDouble();
        double deceleration = 3 + 4 * random.nextDouble();
        double buildUp = 0.1 + 0.3 * random.nextDouble();
        var stop = new StopCurve(entry, 0, buildUp, deceleration, 0.2);
        assertThat(new StopCurve(entry + 0.1, 0, buildUp, deceleration, 0.2).distanceM())
                .isGreaterThan(stop.distanceM());
        assertThat(new StopCurve(entry, 0, buildUp + 0.05, deceleration, 0.2).distanceM())
                .isGreaterThan(stop.distanceM());
        assertThat(stop.positionM(stop.durationS())).isCloseTo(stop.distanceM(), within(1e-9));
        assertThat(stop.positionM(stop.durationS() + 1)).isCloseTo(stop.distanceM(), within(1e-9));
    }
}
