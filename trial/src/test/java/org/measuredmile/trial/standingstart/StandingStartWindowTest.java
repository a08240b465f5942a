package org.measuredmile.trial.standingstart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.Trace;

/// Starts whose ends a person set.
class StandingStartWindowTest {
    /// Two starts, each 12 s of thrust after 3 s of standing.
    private static Recording twoStarts() {
        return StartDays.ride()
                .stand(3)
                .start(2, 12, 12)
                .brake(0)
                .stand(3)
                .start(1.6, 12, 12)
                .brake(0)
                .stand(2)
                .seen("starts.csv", 10, 5);
    }

    private static RunResult run(Outcome outcome, String id) {
        return outcome.runs().stream()
                .filter(run -> run.run().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static double timeS(RunResult run) {
        return run.value("time-to-10-mph").orElseThrow().value();
    }

    @Test
    void theStretchThatAPlotShowsGivesTheValueThatTheWholeRecordingGave() {
        var found = StartDays.day().recording(twoStarts()).reduce().runs();
        assertThat(found).hasSize(2);
        for (RunResult start : found) {
            Trace trace = start.trace().orElseThrow();
            double[] times = trace.lines().getFirst().timesS();
            var set = StartDays.day()
                    .run("s-1", "out")
                    .recording(twoStarts())
                    .window("starts.csv", "s-1", trace.originS() + times[0], trace.originS() + times[times.length - 1])
                    .reduce();
            assertThat(run(set, "s-1").reason()).isEmpty();
            assertThat(timeS(run(set, "s-1"))).isCloseTo(timeS(start), within(1e-6));
        }
    }

    @Test
    void aRunIsTheStartBetweenItsEndsAndTheOtherIsProposed() {
        var found = StartDays.day().recording(twoStarts()).reduce().runs();
        double fromS = found.get(1).stretch().orElseThrow().fromS() - 2.5;
        var set = StartDays.day()
                .run("s-1", "out")
                .recording(twoStarts())
                .window("starts.csv", "s-1", fromS, fromS + 12)
                .reduce();
        assertThat(timeS(run(set, "s-1"))).isCloseTo(timeS(found.get(1)), within(0.02));
        assertThat(run(set, "s-1").stretch()).contains(new RunResult.Stretch("starts.csv", fromS, fromS + 12));
        assertThat(set.runs())
                .extracting(RunResult::run)
                .containsExactly("s-1", found.getFirst().run());
    }

    @Test
    void aStretchWithoutAStartIsRefusedAndGivenNoOther() {
        var set = StartDays.day()
                .run("s-1", "out", Run.State.PROPOSED, "")
                .recording(twoStarts())
                .window("starts.csv", "s-1", 8, 12)
                .reduce();
        assertThat(run(set, "s-1").reason())
                .isEqualTo("no start lies between 8.00 s and 12.00 s of starts.csv;"
                        + " no time to 10 mph was written down");
        assertThat(run(set, "s-1").trace()).isPresent();
    }

    @Test
    void withoutItsStandingTheStartIsRefusedWithLimitAndValue() {
        var start = StartDays.day().recording(twoStarts()).reduce().runs().getFirst();
        double movedS = start.stretch().orElseThrow().fromS();
        var set = StartDays.day()
                .run("s-1", "out")
                .recording(twoStarts())
                .window("starts.csv", "s-1", movedS - 0.3, movedS + 10)
                .reduce();
        assertThat(run(set, "s-1").reason())
                .contains("rolling start: at rest for")
                .contains("1.00 s needed");
    }
}
