package org.measuredmile.trial.standingstart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.day.Run;

/// Starts timed by a watch, without any file.
class StandingStartHandTest {
    @Test
    void aWatchAloneGivesATime() {
        var outcome = StartDays.day()
                .run("s-1", "out")
                .reading("s-1", "time-to-15-mph", "4.62 s")
                .run("s-2", "back")
                .reading("s-2", "time-to-15-mph", "4.78 s")
                .reduce();
        var figure = outcome.figures().getFirst();
        assertThat(figure.key().text()).isEqualTo("standingstart.time-to drive=throttle to=15-mph");
        // Slope and wind make the mean of both ways a little late, by less than the watch's hundredth here.
        assertThat(figure.value()).isLessThan(4.70).isCloseTo(4.70, within(0.012));
        assertThat(figure.assumed()).anyMatch(what -> what.endsWith("late, which is taken off"));
        assertThat(figure.budget().stream().map(one -> one.input()))
                .contains("display shows the speed late (assumed)", "reaction to start and speed, alike in all runs");
        // The display alone is ± 0.2 s, standard uncertainty: house value.
        assertThat(figure.thisDay().standard()).isGreaterThan(0.2);
        assertThat(outcome.runs()).allMatch(run -> run.counted());
    }

    @Test
    void distanceByHandStandsBesideTheTime() {
        var outcome = StartDays.day()
                .run("s-1", "out")
                .reading("s-1", "time-to-10-mph", "3.1 s")
                .reading("s-1", "distance-to-10-mph", "24 ft")
                .reduce();
        assertThat(outcome.figures())
                .extracting(figure -> figure.key().figure())
                .containsExactly("standingstart.time-to", "standingstart.distance-to");
    }

    @Test
    void aWatchThatDisagreesWithTheRecordingIsAFinding() {
        var ride = StartDays.ride().stand(3).start(2, 12, 12).brake(0).stand(2);
        var outcome = StartDays.day()
                .run("s-1", "out")
                .reading("s-1", "time-to-10-mph", "9.0 s")
                .recording(ride.seen("ride.csv", 10, 2), "s-1")
                .reduce();
        assertThat(outcome.findings()).anyMatch(finding -> finding.code().equals("hand-and-trace-differ"));
        assertThat(outcome.runs().getFirst().value("hand-time-to-10-mph")).isPresent();
    }

    @Test
    void aVoidRunIsShownAndDoesNotCount() {
        var outcome = StartDays.day()
                .run("s-1", "out", Run.State.VOID, "wheel-lift")
                .reading("s-1", "time-to-10-mph", "3.1 s")
                .reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs().getFirst().reason()).contains("front wheel lifted");
    }

    @ParameterizedTest
    @ValueSource(strings = {"-3 s", "0.01 s", "400 s", "fast", "3 m", "NaN"})
    void aReadingThatCannotBeIsAFaultOfItsRun(String written) {
        var outcome = StartDays.day()
                .run("s-1", "out")
                .reading("s-1", "time-to-10-mph", written)
                .reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs().getFirst().counted()).isFalse();
        assertThat(outcome.findings())
                .anyMatch(finding -> finding.place().text().contains("readings.csv"));
    }

    @Test
    void aMissingWindWidensTheIntervalAndIsAFinding() {
        var calm = StartDays.day().run("s-1", "out").reading("s-1", "time-to-20-mph", "8.1 s");
        var unknown = StartDays.day().withoutWind().run("s-1", "out").reading("s-1", "time-to-20-mph", "8.1 s");
        var outcome = unknown.reduce();
        assertThat(outcome.figures().getFirst().thisDay().standard())
                .isGreaterThan(calm.reduce().figures().getFirst().thisDay().standard());
        assertThat(outcome.findings()).anyMatch(finding -> finding.code().equals("condition-missing"));
    }
}
