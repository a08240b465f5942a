package org.measuredmile.trial.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.Trace;

/// Stops whose ends a person set. Three stops a ride, about 10.7 s from one to the next.
class BrakingWindowTest {
    private static final double TWENTY_MPH = 8.9408;

    private static SteppedRide threeStops() {
        return new SteppedRide().stop(TWENTY_MPH, 6).stop(TWENTY_MPH, 5).stop(TWENTY_MPH, 6);
    }

    private static Recording recording(long seed) {
        return BrakingDays.recording("a.csv", threeStops().speed(10, 0, seed));
    }

    private static BrakingDays one(Run.State state) {
        return BrakingDays.day().run("b-1", "trace", state, state == Run.State.VOID ? "traffic" : "");
    }

    private static RunResult run(Outcome outcome, String id) {
        return outcome.runs().stream()
                .filter(run -> run.run().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static double distanceM(RunResult run) {
        return run.value("braking.braking-distance").orElseThrow().value();
    }

    /// All that the trace of a run shows.
    private static double[] shown(RunResult run) {
        Trace trace = run.trace().orElseThrow();
        double[] times = trace.lines().getFirst().timesS();
        return new double[] {trace.originS() + times[0], trace.originS() + times[times.length - 1]};
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theStretchThatAPlotShowsGivesTheValueThatTheWholeRecordingGave(long seed) {
        var found = BrakingDays.day().recording(recording(seed)).reduce().runs();
        assertThat(found).hasSize(3);
        for (RunResult stop : found) {
            double[] ends = shown(stop);
            var set = one(Run.State.CONFIRMED)
                    .recording(recording(seed))
                    .window("a.csv", "b-1", ends[0], ends[1])
                    .reduce();
            assertThat(run(set, "b-1").reason()).isEmpty();
            assertThat(distanceM(run(set, "b-1"))).isCloseTo(distanceM(stop), within(1e-6));
        }
    }

    @Test
    void aRunIsTheStopBetweenItsEndsThoughAnotherComesFirst() {
        var found = BrakingDays.day().recording(recording(1)).reduce().runs();
        var set = one(Run.State.CONFIRMED)
                .recording(recording(1))
                .window("a.csv", "b-1", 11, 21)
                .reduce();
        assertThat(distanceM(run(set, "b-1"))).isCloseTo(distanceM(found.get(1)), within(0.05));
        assertThat(run(set, "b-1").stretch()).contains(new RunResult.Stretch("a.csv", 11, 21));
        assertThat(set.runs())
                .hasSize(3)
                .extracting(RunResult::run)
                .doesNotContain(found.get(1).run());
    }

    @Test
    void noSampleOutsideTheEndsChangesTheValue() {
        var speed = threeStops().speed(10, 0, 1);
        double[] torn = speed.values().clone();
        for (int i = 0; i < torn.length; i++) {
            torn[i] = speed.timeS(i) >= 11 && speed.timeS(i) <= 21 ? torn[i] : 3 + i % 7;
        }
        var other = BrakingDays.recording("a.csv", BrakingDays.speed(speed.timesS(), torn));
        var asRidden = one(Run.State.CONFIRMED).recording(recording(1)).window("a.csv", "b-1", 11, 21);
        var tornApart = one(Run.State.CONFIRMED).recording(other).window("a.csv", "b-1", 11, 21);
        assertThat(run(tornApart.reduce(), "b-1").values())
                .isEqualTo(run(asRidden.reduce(), "b-1").values());
    }

    @Test
    void aStretchWithoutAStopIsRefusedAndGivenNoOther() {
        var set = one(Run.State.CONFIRMED)
                .recording(recording(1))
                .window("a.csv", "b-1", 11, 14)
                .reduce();
        var run = run(set, "b-1");
        assertThat(run.counted()).isFalse();
        assertThat(run.reason()).isEqualTo("no stop lies between 11.00 s and 14.00 s of a.csv");
        assertThat(run.values()).isEmpty();
        assertThat(shown(run)).containsExactly(new double[] {11, 14}, within(0.11));
        assertThat(set.runs()).hasSize(4);
    }

    @Test
    void endsSetTooTightAreRefusedWithLimitAndValue() {
        var stop = BrakingDays.day().recording(recording(1)).reduce().runs().get(1);
        double onsetS = stop.stretch().orElseThrow().fromS();
        var set = one(Run.State.CONFIRMED)
                .recording(recording(1))
                .window("a.csv", "b-1", onsetS - 0.4, onsetS + 4)
                .reduce();
        assertThat(run(set, "b-1").reason())
                .contains("recorded before it, at least")
                .contains("steady riding needed");
    }

    @Test
    void twoStopsBetweenTheEndsOfOneRunAreRefused() {
        var set = one(Run.State.CONFIRMED)
                .recording(recording(1))
                .window("a.csv", "b-1", 0, 21)
                .reduce();
        assertThat(run(set, "b-1").reason())
                .isEqualTo("2 stops lie between 0.00 s and 21.00 s of a.csv, a run is one: split it, or move its ends");
        assertThat(set.runs()).hasSize(2);
    }

    @Test
    void aVoidRunKeepsItsEndsAndIsDrawn() {
        var set = one(Run.State.VOID)
                .recording(recording(1))
                .window("a.csv", "b-1", 11, 21)
                .reduce();
        var run = run(set, "b-1");
        assertThat(run.reason()).startsWith("void: ");
        assertThat(run.stretch()).contains(new RunResult.Stretch("a.csv", 11, 21));
        assertThat(run.trace()).isPresent();
        assertThat(set.runs()).hasSize(3);
    }

    @Test
    void endsBeyondTheRecordingOrInALostOneSaySo() {
        var beyond = one(Run.State.CONFIRMED)
                .recording(recording(1))
                .window("a.csv", "b-1", 400, 410)
                .reduce();
        assertThat(run(beyond, "b-1").reason())
                .startsWith("nothing was recorded between 400.00 s and 410.00 s of a.csv, which runs from ");
        var day = one(Run.State.CONFIRMED).recording(recording(1)).window("a.csv", "b-1", 1, 2);
        var input = day.input();
        var lost = new Braking()
                .reduce(new org.measuredmile.trial.TrialInput(
                        input.day(),
                        input.bike(),
                        input.runs(),
                        input.readings(),
                        new java.util.TreeMap<>(),
                        input.scatter(),
                        input.used()));
        assertThat(run(lost, "b-1").reason()).isEqualTo("the recording a.csv, which holds its ends, could not be read");
    }

    @Test
    void runsThatOverlapAreNamedAndSoAreEndsInTwoRecordings() {
        var outcome = BrakingDays.day()
                .run("b-1", "trace", Run.State.CONFIRMED, "")
                .run("b-2", "trace", Run.State.CONFIRMED, "")
                .run("b-3", "trace", Run.State.CONFIRMED, "")
                .recording(recording(1))
                .recording(BrakingDays.recording("b.csv", threeStops().speed(10, 0, 2)))
                .window("a.csv", "b-1", 0, 12)
                .window("a.csv", "b-2", 10.5, 21)
                .window("a.csv", "b-3", 21, 33)
                .window("b.csv", "b-3", 0, 12)
                .reduce();
        assertThat(outcome.findings())
                .filteredOn(one -> one.code().equals("runs-overlap"))
                .singleElement()
                .satisfies(one -> {
                    assertThat(one.message()).startsWith("run b-1 and run b-2 have 1.50 s in common");
                    assertThat(one.place().text()).isEqualTo("a.csv: 10.5 s");
                });
        assertThat(outcome.findings())
                .filteredOn(one -> one.code().equals("ends-in-two-recordings"))
                .singleElement()
                .satisfies(one -> assertThat(one.message()).startsWith("run b-3 has its ends in a.csv already"));
    }

    @Test
    void runsMatchedByOrderStayMatchedWhenAnotherGetsItsEnds() {
        var days = BrakingDays.day()
                .run("b-1", "trace", Run.State.CONFIRMED, "")
                .run("b-2", "trace", Run.State.CONFIRMED, "")
                .run("b-3", "trace", Run.State.CONFIRMED, "");
        var before = days.recording(recording(1), "b-1", "b-2", "b-3").reduce();
        var after = days.window("a.csv", "b-2", 11, 21).reduce();
        assertThat(after.runs()).hasSize(3).allMatch(RunResult::counted);
        for (String id : new String[] {"b-1", "b-3"}) {
            assertThat(run(after, id)).usingRecursiveComparison().isEqualTo(run(before, id));
        }
    }
}
