package org.measuredmile.trial.standingstart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Finding;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;

/// Starts in recordings: what is found, what is refused and why.
class StandingStartTraceTest {
    private static RunResult only(StartDays.Ride ride, double rateHz) {
        var outcome =
                StartDays.day().recording(ride.seen("ride.csv", rateHz, 7)).reduce();
        assertThat(outcome.runs()).hasSize(1);
        return outcome.runs().getFirst();
    }

    private static Figure figure(Outcome outcome, String key) {
        return outcome.figures().stream()
                .filter(figure -> figure.key().text().equals(key))
                .findFirst()
                .orElseThrow();
    }

    private static StartDays.Ride good() {
        return StartDays.ride().stand(3).start(2, 12, 12).brake(0).stand(2);
    }

    @Test
    void aStartAfterRestIsFoundAndTimed() {
        var ride = good();
        var run = only(ride, 10);
        assertThat(run.reason()).isEmpty();
        var time = run.value("time-to-10-mph").orElseThrow();
        assertThat(time.value()).isCloseTo(ride.lastTimeToTenMphS(), within(0.2));
        assertThat(time.standardUncertainty()).isBetween(0.01, 0.15);
        assertThat(run.value("distance-to-20-mph")).isPresent();
        assertThat(run.stretch()).isPresent();
    }

    @Test
    void threeRunsEachWayGiveAFigureWithBothIntervals() {
        var day = StartDays.day().rider(82).weighed(27.4, 0.05);
        var ride = StartDays.ride();
        String[] ids = {"s-1", "s-2", "s-3", "s-4", "s-5", "s-6"};
        for (int i = 0; i < ids.length; i++) {
            day.run(ids[i], i % 2 == 0 ? "out" : "back");
            ride.stand(3).start(2, 12, 12).brake(0);
        }
        var outcome =
                day.recording(ride.stand(2).seen("starts.csv", 10, 3), ids).reduce();
        var time = figure(outcome, "standingstart.time-to drive=throttle to=10-mph");
        assertThat(time.counted()).isEqualTo(6);
        assertThat(time.thisDay().interval95().contains(ride.lastTimeToTenMphS()))
                .isTrue();
        assertThat(time.anyDay().interval95().halfWidth())
                .isGreaterThan(time.thisDay().interval95().halfWidth());
        var peak = figure(outcome, "standingstart.peak-power drive=throttle");
        assertThat(peak.used())
                .singleElement()
                .satisfies(one -> assertThat(one.key().figure()).isEqualTo("weighin.mass"));
        assertThat(peak.value()).isBetween(400.0, 900.0);
    }

    @Test
    void aSpeedThatWasNotReachedHasNoTime() {
        var day = StartDays.day().run("s-1", "out");
        var slow = StartDays.ride().stand(3).start(2, 7.2, 30).brake(0).stand(2);
        var outcome = day.recording(slow.seen("slow.csv", 10, 4), "s-1").reduce();
        assertThat(outcome.figures()).noneMatch(figure -> figure.key().text().contains("to=20-mph"));
        assertThat(outcome.findings())
                .filteredOn(finding -> finding.code().equals("not-reached"))
                .anySatisfy(finding -> assertThat(finding.message())
                        .contains("did not reach 20 mph")
                        .contains("16.")
                        .contains("mph"));
    }

    @Test
    void aFlatApproachHasNoTimeAndSaysHowBadlyItWouldBeKnown() {
        var flat = StartDays.ride().stand(3).start(2, 9.05, 40).brake(0).stand(2);
        var run = only(flat, 10);
        assertThat(run.value("time-to-20-mph")).isEmpty();
        var day = StartDays.day().run("s-1", "out").recording(flat.seen("flat.csv", 10, 7), "s-1");
        assertThat(day.reduce().findings())
                .anySatisfy(finding -> assertThat(finding.message())
                        .contains("approaches 20 mph too flatly")
                        .contains("0.10 m/s²"));
    }

    @Test
    void onceASecondIsRefusedWithTheReasonAndTheRemedy() {
        var outcome = StartDays.day().recording(good().seen("slow.csv", 1, 5)).reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.findings())
                .filteredOn(finding -> finding.level() == Finding.Level.REFUSED)
                .anySatisfy(finding -> assertThat(finding.line())
                        .contains("1.00 s")
                        .contains("0.20 s")
                        .contains("by hand"));
        assertThat(outcome.runs()).allSatisfy(run -> assertThat(run.reason()).contains("too coarse"));
    }

    @Test
    void aRollingStartIsRefused() {
        var rolling = StartDays.ride().hold(6, 3).brake(1.2).hold(1.2, 3).start(2, 12, 10);
        assertThat(only(rolling, 10).reason()).contains("rolling start").contains("0.50 m/s");
        var brief = StartDays.ride().hold(6, 3).brake(0).stand(0.2).start(2, 12, 10);
        assertThat(only(brief, 10).reason()).contains("rolling start").contains("1.00 s");
    }

    @Test
    void aSecondPushIsRefused() {
        var pushed = StartDays.ride()
                .stand(3)
                .start(2, 12, 1.3)
                .brake(0.9)
                .hold(0.9, 0.5)
                .start(2, 12, 10);
        assertThat(only(pushed, 10).reason()).contains("push").contains("at most");
    }

    @Test
    void tooFewSamplesInTheStartAreRefused() {
        var leap = StartDays.ride().stand(3).start(9, 30, 2).brake(0);
        assertThat(only(leap, 5).reason()).contains("samples above").contains("at least 4");
    }

    @Test
    void aGapInTheStartIsRefusedAndOneLaterTakesOnlyTheSpeedsBehindIt() {
        var early = StartDays.day()
                .recording(good().seen("gap.csv", 10, 6, 3.7, 4.6))
                .reduce();
        assertThat(early.runs().getFirst().reason()).contains("gap of").contains("1.60");
        var late = StartDays.day()
                .recording(good().seen("gap.csv", 10, 6, 7.5, 8.5))
                .reduce();
        var run = late.runs().getFirst();
        assertThat(run.value("time-to-10-mph")).isPresent();
        assertThat(run.value("time-to-20-mph")).isEmpty();
    }

    @Test
    void withoutThePreRideCheckNothingCounts() {
        var outcome = StartDays.day()
                .withoutCheck()
                .run("s-1", "out")
                .recording(good().seen("ride.csv", 10, 8), "s-1")
                .reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs().getFirst().reason()).contains("pre-ride check");
    }

    @Test
    void aDayRiddenOneWayIsWiderAndSaysSo() {
        var oneWay = StartDays.day()
                .run("s-1", "out")
                .recording(good().seen("ride.csv", 10, 8), "s-1")
                .reduce();
        var figure = figure(oneWay, "standingstart.time-to drive=throttle to=20-mph");
        assertThat(figure.findings()).anyMatch(finding -> finding.code().equals("unpaired"));
        assertThat(figure.budget()).anyMatch(one -> one.input().equals("wind along the road"));
    }
}
