package org.measuredmile.trial.climb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/// Climbs found in recordings by the gates of the hill.
class ClimbTraceTest {
    @Test
    void repeatedPassesInOneRecordingAreFoundAndMatchedInOrder() {
        var outcome = ClimbDays.onTheHill()
                .run("c-1", "throttle")
                .run("c-2", "throttle")
                .run("c-3", "pedal")
                .recording(ClimbDays.ride("hill.csv", true, 4.5, 4.6, 5.5), "c-1", "c-2", "c-3")
                .reduce();
        assertThat(outcome.runs()).allMatch(run -> run.counted());
        // 300 m at 4.5 and 4.6 m/s: arithmetic.
        var time = ClimbDays.figure(outcome, "climb.time course=hill drive=throttle");
        assertThat(time.value()).isCloseTo((300 / 4.5 + 300 / 4.6) / 2, within(0.3));
        assertThat(ClimbDays.figure(outcome, "climb.lowest-speed course=hill drive=throttle")
                        .value())
                .isCloseTo(4.55, within(0.03));
        assertThat(ClimbDays.figure(outcome, "climb.time course=hill drive=pedal")
                        .value())
                .isCloseTo(300 / 5.5, within(0.3));
        assertThat(ClimbDays.finding(outcome, "pedalling-gained")).isNotNull();
        assertThat(outcome.runs().getFirst().trace()).isPresent();
        assertThat(outcome.findings()).noneMatch(finding -> finding.code().contains("disagree"));
    }

    @Test
    void nobodyWroteRunsSoThePassesAreProposed() {
        var outcome = ClimbDays.onTheHill()
                .recording(ClimbDays.ride("hill.csv", true, 4.5, 4.6))
                .reduce();
        assertThat(outcome.runs()).hasSize(2).allMatch(run -> run.counted());
        var time = ClimbDays.figure(outcome, "climb.time course=hill drive=throttle");
        assertThat(time.findings()).anyMatch(finding -> finding.code().equals("not-confirmed"));
    }

    @Test
    void aFoundRunWhoseEndsAreWrittenDownIsFoundAgain() {
        var ride = ClimbDays.ride("hill.csv", true, 4.5, 4.6);
        var found = ClimbDays.onTheHill().recording(ride).reduce();
        var stretch = found.runs().getFirst().stretch().orElseThrow();
        var again = ClimbDays.onTheHill()
                .run("c-1", "throttle")
                .recording(ride, "c-1")
                .window("hill.csv", "c-1", stretch.fromS(), stretch.toS())
                .reduce();
        var first = again.runs().stream().filter(run -> run.run().equals("c-1")).findFirst();
        assertThat(first.orElseThrow().counted()).as(first.toString()).isTrue();
        assertThat(first.orElseThrow().value("time").orElseThrow().value())
                .isCloseTo(found.runs().getFirst().value("time").orElseThrow().value(), within(1e-6));
    }

    @Test
    void withoutASpeedBothGatesTellTheTimeAndItIsWider() {
        var outcome = ClimbDays.onTheHill()
                .run("c-1", "throttle")
                .recording(ClimbDays.ride("hill.csv", false, 4.5), "c-1")
                .reduce();
        var time = ClimbDays.figure(outcome, "climb.time course=hill drive=throttle");
        assertThat(time.value()).isCloseTo(300 / 4.5, within(0.1));
        assertThat(time.assumed()).anyMatch(words -> words.contains("position within 3 m"));
        // Two-gate formula of the crew's study, σ 3 m, τ 60 s, at 4.5 m/s and 66.7 s: 0.77 s.
        assertThat(outcome.runs().getFirst().value("time").orElseThrow().standardUncertainty())
                .isCloseTo(0.77, within(0.02));
        assertThat(outcome.figures()).noneMatch(figure -> figure.key().figure().equals("climb.lowest-speed"));
    }

    @Test
    void aWatchThatDisagreesWithTheRecordingIsAFindingAndTheBetterOneStands() {
        var outcome = ClimbDays.onTheHill()
                .run("c-1", "throttle")
                .reading("c-1", "climb-time", "59.0 s")
                .reading("c-1", "climb-mean-speed", "16.2 km/h")
                .recording(ClimbDays.ride("hill.csv", true, 4.5), "c-1")
                .reduce();
        assertThat(ClimbDays.finding(outcome, "hand-and-trace-differ").message())
                .contains("c-1");
        assertThat(ClimbDays.finding(outcome, "length-time-speed-disagree").message())
                .contains("the odd one out is the time");
    }

    @Test
    void twoRecordedRunsThatAgreeOnAnotherLengthAccuseTheCourse() {
        var outcome = ClimbDays.onAHill(345, 18)
                .run("c-1", "throttle")
                .run("c-2", "throttle")
                .recording(ClimbDays.ride("hill.csv", true, 4.5, 4.6), "c-1", "c-2")
                .reduce();
        assertThat(ClimbDays.finding(outcome, "gates-disagree")).isNotNull();
        assertThat(ClimbDays.finding(outcome, "course-length-doubted").message())
                .contains("345.0 m");
    }

    @Test
    void aClimbTooShortToTellIsRefusedWithLimitAndValue() {
        var outcome = ClimbDays.onTheHill()
                .run("c-1", "throttle")
                .recording(ClimbDays.ride("hill.csv", true, 18), "c-1")
                .reduce();
        assertThat(outcome.runs().getFirst().counted()).isFalse();
        assertThat(outcome.runs().getFirst().reason()).contains("at least 20 s");
        assertThat(outcome.figures()).isEmpty();
    }
}
