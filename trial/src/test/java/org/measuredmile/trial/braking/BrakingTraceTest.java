package org.measuredmile.trial.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;

class BrakingTraceTest {
    private static final double TWENTY_MPH = 8.9408;

    private static SteppedRide threeStops() {
        return new SteppedRide().stop(TWENTY_MPH, 6).stop(TWENTY_MPH, 6).stop(TWENTY_MPH, 6);
    }

    private static BrakingDays written() {
        return BrakingDays.day()
                .run("b-1", "trace", Run.State.CONFIRMED, "")
                .run("b-2", "trace", Run.State.CONFIRMED, "")
                .run("b-3", "trace", Run.State.CONFIRMED, "");
    }

    private static Figure figure(Outcome outcome, String id) {
        return outcome.figures().stream()
                .filter(one -> one.key().figure().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aTraceGivesBrakingDistanceAndDecelerationsThatHoldTheTruth() {
        var ride = threeStops();
        var outcome = written()
                .recording(BrakingDays.recording("a.csv", ride.speed(10, 0, 1)), "b-1", "b-2", "b-3")
                .reduce();
        var distance = figure(outcome, "braking.braking-distance");
        assertThat(distance.counted()).isEqualTo(3);
        assertThat(distance.thisDay().interval95().contains(ride.lastStopM())).isTrue();
        assertThat(distance.thisDay().interval95().halfWidth() / distance.value())
                .isBetween(0.03, 0.12);
        assertThat(figure(outcome, "braking.mfdd").value()).isCloseTo(6.0, within(0.2));
        assertThat(outcome.figures()).extracting(one -> one.key().figure()).doesNotContain("braking.stopping-distance");
        assertThat(outcome.runs()).hasSize(3).allSatisfy(run -> {
            assertThat(run.counted()).isTrue();
            assertThat(run.trace().orElseThrow().lines()).hasSize(2);
            assertThat(run.trace().orElseThrow().events())
                    .extracting(event -> event.title())
                    .containsExactly("onset", "braking in full", "rest");
        });
    }

    @Test
    void withALeverChannelTheStoppingDistanceBeginsAtTheControl() {
        var ride = threeStops();
        var outcome = written()
                .recording(
                        BrakingDays.recording("a.csv", ofWheel(ride.speed(10, 0, 1)), ride.lever(SteppedRide.DELAY_S)),
                        "b-1",
                        "b-2",
                        "b-3")
                .reduce();
        var stopping = figure(outcome, "braking.stopping-distance");
        assertThat(stopping.key().text()).contains("method=trace");
        assertThat(stopping.thisDay().interval95().contains(ride.lastStopM() + 0.1 * TWENTY_MPH))
                .isTrue();
        assertThat(stopping.value())
                .isLessThan(figure(outcome, "braking.braking-distance").value() + 2);
    }

    @Test
    void aLeverBesideAReceiverOfUnknownDelayGivesNoStoppingDistance() {
        var ride = threeStops();
        var outcome = written()
                .recording(BrakingDays.recording("a.csv", ride.speed(10, 0, 1), ride.lever(0)), "b-1", "b-2", "b-3")
                .reduce();
        assertThat(outcome.figures())
                .extracting(one -> one.key().figure())
                .contains("braking.braking-distance")
                .doesNotContain("braking.stopping-distance");
    }

    private static Channel ofWheel(Channel speed) {
        return new Channel(
                ChannelKind.WHEEL_SPEED, "wheel speed", "m/s", new Channel.Series(speed.timesS(), speed.values()));
    }

    @Test
    void aShiftOfTheClockChangesNothing() {
        var ride = threeStops();
        var now = written()
                .recording(BrakingDays.recording("a.csv", ride.speed(10, 0, 1)), "b-1", "b-2", "b-3")
                .reduce();
        var later = written()
                .recording(BrakingDays.recording("a.csv", ride.speed(10, 512, 1)), "b-1", "b-2", "b-3")
                .reduce();
        for (int i = 0; i < now.figures().size(); i++) {
            assertThat(later.figures().get(i).value())
                    .isCloseTo(now.figures().get(i).value(), within(1e-4));
            assertThat(later.figures().get(i).anyDay().standard())
                    .isCloseTo(now.figures().get(i).anyDay().standard(), within(1e-4));
        }
    }

    @Test
    void stopsThatNobodyWroteAreProposedAndSaidNotToBeConfirmed() {
        var outcome = BrakingDays.day()
                .recording(
                        BrakingDays.recording("a.csv", threeStops().slowDown(8).speed(10, 0, 2)))
                .reduce();
        assertThat(outcome.runs()).hasSize(4);
        assertThat(outcome.runs()).allSatisfy(run -> assertThat(run.state()).isEqualTo(Run.State.PROPOSED));
        assertThat(outcome.runs()).filteredOn(RunResult::counted).hasSize(3);
        assertThat(outcome.runs().get(3).reason()).contains("never at rest").contains("at most 1.8 km/h");
        assertThat(figure(outcome, "braking.mfdd").findings())
                .extracting(Finding::code)
                .contains("not-confirmed");
    }

    @Test
    void onceASecondIsRefusedWithWhatWouldDo() {
        var outcome = written()
                .recording(BrakingDays.recording("a.csv", threeStops().speed(1, 0, 1)), "b-1", "b-2", "b-3")
                .reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs())
                .allSatisfy(run -> assertThat(run.reason())
                        .contains("sampled every 1.00 s: too coarse for a stopping distance; use the tape reading or "
                                + "a logger"
                                + " of 10 Hz or more"));
        assertThat(outcome.findings()).extracting(Finding::code).contains("too-coarse");
    }

    @Test
    void aStopFromTheWrongSpeedIsRefusedWithLimitAndValue() {
        var outcome = BrakingDays.day()
                .recording(BrakingDays.recording(
                        "a.csv", new SteppedRide().stop(11, 6).speed(10, 0, 1)))
                .reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs())
                .singleElement()
                .satisfies(run -> assertThat(run.reason())
                        .containsPattern("entry speed 39\\.[5-7] km/h is outside 30\\.7 to 33\\.7 km/h")
                        .contains("23.5 to 26.5 km/h"));
    }

    @Test
    void tapeAndTraceOfTheSameRunsAreComparedAndStayTwoFigures() {
        var ride = threeStops();
        double metres = ride.lastStopM() + 0.1 * TWENTY_MPH;
        var day = BrakingDays.day();
        for (String id : new String[] {"b-1", "b-2", "b-3"}) {
            day.taped(id, String.format(java.util.Locale.ROOT, "%.2f m", metres), "20 mph");
        }
        var outcome = day.recording(
                        BrakingDays.recording("a.csv", ride.speed(10, 0, 1), ride.lever(0)), "b-1", "b-2", "b-3")
                .reduce();
        assertThat(outcome.figures())
                .extracting(one -> one.key().text())
                .contains(
                        "braking.stopping-distance method=tape nominal=20-mph surface=dry",
                        "braking.braking-distance nominal=20-mph surface=dry");
        assertThat(outcome.findings()).extracting(Finding::code).contains("tape-and-trace");
        var wrong = BrakingDays.day().taped("b-1", "10.5 m", "20 mph");
        var compared = wrong.recording(
                        BrakingDays.recording(
                                "a.csv",
                                ofWheel(new SteppedRide().stop(TWENTY_MPH, 6).speed(10, 0, 1)),
                                new SteppedRide().stop(TWENTY_MPH, 6).lever(SteppedRide.DELAY_S)),
                        "b-1")
                .reduce();
        assertThat(compared.findings()).extracting(Finding::code).contains("tape-and-trace-differ");
    }

    @Test
    void withoutThePreRideCheckNoProposedStopCounts() {
        var outcome = BrakingDays.day()
                .withoutCheck()
                .recording(BrakingDays.recording("a.csv", threeStops().speed(10, 0, 1)))
                .reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs())
                .hasSize(3)
                .allSatisfy(run -> assertThat(run.reason()).contains("pre-ride check"));
    }
}
