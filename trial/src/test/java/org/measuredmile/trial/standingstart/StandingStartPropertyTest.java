package org.measuredmile.trial.standingstart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Recording;

/// Laws that hold for any start. Each seed is a test of its own and stands in its name.
class StandingStartPropertyTest {
    private static double time(Recording recording, int mph) {
        return StartDays.day()
                .recording(recording)
                .reduce()
                .runs()
                .getFirst()
                .value("time-to-" + mph + "-mph")
                .orElseThrow()
                .value();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void standingLongerBeforeChangesNothing(long seed) {
        var random = new Random(seed);
        double thrust = 1.4 + random.nextDouble();
        var brief = StartDays.ride().stand(3).start(thrust, 13, 12).brake(0).stand(2);
        var patient = StartDays.ride().stand(9).start(thrust, 13, 12).brake(0).stand(2);
        assertThat(time(brief.seen("a.csv", 10, seed), 15))
                .isCloseTo(time(patient.seen("a.csv", 10, seed + 100), 15), within(0.4));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void aHigherSpeedTakesLongerAndMoreThrustLessLong(long seed) {
        var random = new Random(seed);
        double thrust = 1.4 + 0.6 * random.nextDouble();
        var ride = StartDays.ride().stand(3).start(thrust, 13, 14).brake(0).seen("a.csv", 10, seed);
        var stronger =
                StartDays.ride().stand(3).start(1.3 * thrust, 13, 14).brake(0).seen("a.csv", 10, seed);
        assertThat(time(ride, 10)).isLessThan(time(ride, 15));
        assertThat(time(ride, 15)).isLessThan(time(ride, 20));
        assertThat(time(stronger, 15)).isLessThan(time(ride, 15));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void fiveSamplesASecondAgreeWithTen(long seed) {
        var ride = StartDays.ride().stand(3).start(1.8, 13, 12).brake(0).stand(2);
        assertThat(time(ride.seen("a.csv", 5, seed), 10))
                .isCloseTo(time(ride.seen("a.csv", 10, seed), 10), within(0.35));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void theOrderInWhichRunsAreWrittenDoesNotMatter(long seed) {
        var random = new Random(seed);
        String[] times = new String[6];
        for (int i = 0; i < times.length; i++) {
            times[i] = String.format(java.util.Locale.ROOT, "%.2f s", 4 + random.nextDouble());
        }
        var forward = StartDays.day();
        var backward = StartDays.day();
        for (int i = 0; i < times.length; i++) {
            int j = times.length - 1 - i;
            forward.run("s-" + i, i % 2 == 0 ? "out" : "back").reading("s-" + i, "time-to-15-mph", times[i]);
            backward.run("s-" + j, j % 2 == 0 ? "out" : "back").reading("s-" + j, "time-to-15-mph", times[j]);
        }
        var one = forward.reduce().figures().getFirst();
        var other = backward.reduce().figures().getFirst();
        assertThat(one.value()).isCloseTo(other.value(), within(1e-12));
        assertThat(one.anyDay().standard()).isCloseTo(other.anyDay().standard(), within(1e-12));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void noiseOfAnyKindIsSurvivedWithoutAnException(long seed) {
        var random = new Random(seed);
        var ride = StartDays.ride();
        for (int i = 0; i < 12; i++) {
            switch (random.nextInt(3)) {
                case 0 -> ride.stand(3 * random.nextDouble());
                case 1 -> ride.start(0.1 + 8 * random.nextDouble(), 2 + 10 * random.nextDouble(), 6);
                default -> ride.hold(8 * random.nextDouble(), random.nextDouble());
            }
        }
        var outcome = StartDays.day().recording(ride.seen("wild.csv", 10, seed)).reduce();
        assertThat(outcome.runs())
                .allSatisfy(
                        run -> assertThat(run.counted()).isEqualTo(run.reason().isEmpty()));
    }
}
