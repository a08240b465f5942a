package org.measuredmile.trial.climb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;

/// Climbs timed by hand, without any file.
class ClimbHandTest {
    private static ClimbDays two() {
        return ClimbDays.onTheHill()
                .run("c-1", "throttle")
                .reading("c-1", "climb-time", "1:01.8")
                .run("c-2", "throttle")
                .reading("c-2", "climb-time", "62.4 s");
    }

    @Test
    void aWatchAndACourseGiveTimeSpeedAndPower() {
        var outcome = two().reduce();
        var time = ClimbDays.figure(outcome, "climb.time course=hill drive=throttle");
        assertThat(time.value()).isCloseTo(62.1, within(1e-9));
        // 0.05 s alike in all and 0.10 s a run over √2: 0.087 s at least.
        assertThat(time.thisDay().standard()).isGreaterThan(0.087);
        assertThat(time.budget())
                .extracting(part -> part.input())
                .contains("reaction at both marks, alike in all runs", "scatter of 2 runs", "between days");
        assertThat(ClimbDays.figure(outcome, "climb.mean-speed course=hill drive=throttle")
                        .value())
                .isCloseTo((300 / 61.8 + 300 / 62.4) / 2, within(1e-9));
        var power = ClimbDays.figure(outcome, "climb.wheel-power course=hill drive=throttle");
        assertThat(power.value()).isBetween(330.0, 420.0);
        assertThat(power.assumed()).anyMatch(words -> words.contains("speed at both marks"));
        assertThat(power.budget()).extracting(part -> part.input()).contains("speed at both marks (assumed)");
        assertThat(outcome.findings()).noneMatch(finding -> finding.code().contains("disagree"));
    }

    @Test
    void withoutARiseThereIsATimeAndNoPower() {
        var outcome = ClimbDays.withoutCourse()
                .run("c-1", "throttle")
                .reading("c-1", "climb-time", "68 s")
                .reading("", "climb-length", "0.25 mi")
                .reduce();
        assertThat(outcome.figures())
                .extracting(figure -> figure.key().text())
                .containsExactly("climb.time drive=throttle", "climb.mean-speed drive=throttle");
        assertThat(ClimbDays.finding(outcome, "course-rise-missing").remedy()).contains("survey");
    }

    @Test
    void aCameraHasNobodysReaction() {
        var outcome = ClimbDays.onTheHill()
                .camera("30")
                .run("c-1", "throttle")
                .reading("c-1", "climb-time", "frames 300 to 2160")
                .reduce();
        var time = ClimbDays.figure(outcome, "climb.time course=hill drive=throttle");
        assertThat(time.value()).isCloseTo(62, within(1e-9));
        assertThat(time.budget())
                .noneMatch(part -> part.input().contains("reaction") && part.standardUncertainty() > 0);
        // A frame over √6: JCGM 100:2008, 4.3.9.
        assertThat(time.budget())
                .anyMatch(part -> part.input().equals("timing of single runs")
                        && Math.abs(part.standardUncertainty() - 1 / 30.0 / Math.sqrt(6)) < 1e-9);
    }

    @Test
    void oneRunThatDisagreesCannotSayWhichIsOdd() {
        var outcome = ClimbDays.onTheHill()
                .run("c-1", "throttle")
                .reading("c-1", "climb-time", "62.0 s")
                .reading("c-1", "climb-mean-speed", "21.5 km/h")
                .reduce();
        assertThat(ClimbDays.finding(outcome, "length-time-speed-disagree").message())
                .contains("cannot be told");
    }

    @Test
    void twoRunsThatAgreeWithEachOtherAccuseTheCourse() {
        var outcome = ClimbDays.onAHill(360, 18)
                .run("c-1", "throttle")
                .reading("c-1", "climb-time", "62.0 s")
                .reading("c-1", "climb-mean-speed", "17.4 km/h")
                .run("c-2", "throttle")
                .reading("c-2", "climb-time", "61.0 s")
                .reading("c-2", "climb-mean-speed", "17.7 km/h")
                .reduce();
        var said = ClimbDays.finding(outcome, "course-length-doubted");
        assertThat(said.message()).contains("c-1, c-2", "360.0 m", "odd one out");
        assertThat(outcome.findings()).noneMatch(finding -> finding.code().equals("length-time-speed-disagree"));
    }

    @Test
    void oneRunAgainstOthersAccusesItsOwnSpeedOrTime() {
        var bySpeed = two().reading("c-1", "climb-mean-speed", "17.4 km/h")
                .reading("c-2", "climb-mean-speed", "21.9 km/h")
                .reduce();
        assertThat(ClimbDays.finding(bySpeed, "length-time-speed-disagree").message())
                .contains("run c-2", "the odd one out is the mean speed");
        var byTime = two().reading("c-1", "climb-mean-speed", "17.4 km/h")
                .run("c-3", "throttle")
                .reading("c-3", "climb-time", "72.1 s")
                .reading("c-3", "climb-mean-speed", "17.4 km/h")
                .reduce();
        assertThat(ClimbDays.finding(byTime, "length-time-speed-disagree").message())
                .contains("run c-3", "the odd one out is the time");
    }

    @Test
    void aRatioOfMilesAndKilometresIsNamed() {
        var outcome = two().reading("c-1", "climb-mean-speed", "28.0 km/h").reduce();
        assertThat(ClimbDays.finding(outcome, "length-time-speed-disagree").message())
                .contains("miles taken for kilometres");
    }

    @Test
    void riseLengthAndGradeAreHeldAgainstEachOther() {
        var fine = two().reading("", "climb-grade", "6 %").reduce();
        assertThat(fine.findings()).noneMatch(finding -> finding.code().equals("rise-length-grade-disagree"));
        var off = two().reading("", "climb-grade", "9 %").reduce();
        assertThat(ClimbDays.finding(off, "rise-length-grade-disagree").message())
                .contains("6.0 %", "9.0 %", "cannot be told");
        var byRise = two().reading("", "climb-grade", "9 %")
                .reading("", "climb-rise", "27 m")
                .reduce();
        assertThat(ClimbDays.finding(byRise, "rise-length-grade-disagree").message())
                .contains("the odd one out is the rise");
        assertThat(ClimbDays.finding(byRise, "rises-differ").message()).contains("27.0 m", "18.0 m");
        var byLength = two().reading("", "climb-grade", "9 %")
                .reading("", "climb-length", "200 m")
                .reduce();
        assertThat(ClimbDays.finding(byLength, "rise-length-grade-disagree").message())
                .contains("the odd one out is the length");
    }

    @Test
    void pedallingThatGainedLessThanItsUncertaintyShowsNoDifference() {
        var close =
                two().run("c-3", "pedal").reading("c-3", "climb-time", "61.5 s").reduce();
        assertThat(ClimbDays.finding(close, "no-difference-shown").message()).contains("0.6 s");
        var clear =
                two().run("c-3", "pedal").reading("c-3", "climb-time", "48.0 s").reduce();
        assertThat(ClimbDays.finding(clear, "pedalling-gained").message()).contains("14.1 s");
        var gain = ClimbDays.figure(clear, "climb.pedalling-gain course=hill");
        assertThat(gain.value()).isCloseTo(14.1, within(1e-9));
        // One watch holder's reaction is in both times and cancels.
        assertThat(gain.budget())
                .anyMatch(part -> part.input().contains("reaction") && part.standardUncertainty() == 0);
    }

    @Test
    void aBikeThatWouldStandStillAtReferenceHasNoSuchFigure() {
        var outcome = ClimbDays.onAHill(300, 40)
                .rider(45)
                .run("c-1", "throttle")
                .used("standingstart.launch-force", Variant.of("drive", "throttle"), QuantityKind.FORCE, 120, 3)
                .used("standingstart.power-limit", Variant.of("drive", "throttle"), QuantityKind.POWER, 2000, 20)
                .reading("c-1", "climb-time", "62 s")
                .reduce();
        assertThat(ClimbDays.finding(outcome, "no-reference").message()).contains("would not climb it");
        assertThat(outcome.figures())
                .noneMatch(figure -> figure.key().figure().equals("climb.time")
                        && figure.key().variant().has("at", "reference"));
    }

    @Test
    void aVoidRunIsShownAndDoesNotCount() {
        var outcome = ClimbDays.onTheHill()
                .run("c-1", "throttle", Run.State.VOID, "cut-back")
                .reading("c-1", "climb-time", "62 s")
                .reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs().getFirst().reason()).contains("cut back");
    }

    @ParameterizedTest
    @ValueSource(strings = {"-3 s", "0.5 s", "2:00:00", "quick", "62 m", "NaN"})
    void aReadingThatCannotBeIsAFaultOfItsRun(String written) {
        var outcome = ClimbDays.onTheHill()
                .run("c-1", "throttle")
                .reading("c-1", "climb-time", written)
                .reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs().getFirst().counted()).isFalse();
        assertThat(outcome.findings())
                .anyMatch(finding -> finding.place().text().contains("readings.csv"));
    }
}
