package org.measuredmile.trial.assistspeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.trial.GivenDay.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.GivenDay;
import org.measuredmile.trial.Outcome;

class AssistSpeedTest {
    private static String key(int level, String role) {
        return "assistspeed.speed drive=pedal level=" + level + " levelRole=" + role;
    }

    /// A trace once a second: from rest through levels held for the given seconds, 4 s from one to the next.
    private static double[] ride(long seed, double scale, double[] levels, int... heldS) {
        var random = new Random(seed);
        var speeds = new ArrayList<Double>(List.of(0.0, 0.0));
        double last = 0;
        double wander = 0;
        for (int k = 0; k < levels.length; k++) {
            int ramp = last == 0 ? 5 : 4;
            for (int i = 1; i <= ramp; i++) {
                speeds.add(last + (levels[k] - last) * i / ramp);
            }
            for (int i = 0; i < heldS[k]; i++) {
                wander = 0.9 * wander + 0.05 * random.nextGaussian();
                speeds.add(levels[k] + wander + 0.03 * random.nextGaussian());
            }
            last = levels[k];
        }
        for (int i = 1; i <= 4; i++) {
            speeds.add(last * (4 - i) / 4);
        }
        return speeds.stream().mapToDouble(speed -> Math.max(0, speed) * scale).toArray();
    }

    private static Recording recording(String name, double shiftS, double... speeds) {
        double[] times = new double[speeds.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = i + shiftS;
        }
        return recording(name, times, speeds);
    }

    private static Recording recording(String name, double[] times, double[] speeds) {
        double end = times.length == 0 ? 0 : times[times.length - 1];
        var channel = new Channel(ChannelKind.SPEED, "speed", "m/s", new Channel.Series(times, speeds));
        return new Recording(
                name,
                Format.DELIMITED,
                "",
                Optional.empty(),
                true,
                times.length,
                times,
                List.of(new Segment(0, end)),
                List.of(channel),
                new TreeMap<>(),
                List.of());
    }

    private static List<Figure> asRidden(Outcome outcome) {
        return outcome.figures().stream()
                .filter(one -> one.key().variant().get("at").isEmpty())
                .toList();
    }

    private static final double[] LEVELS = {4.5, 5.6, 6.7};

    private static GivenDay threeLevels() {
        var day = GivenDay.of(new AssistSpeed())
                .bikeLevels(3)
                .instrument(Instrument.Kind.RECEIVER, 0.01, 1, 0.002)
                .wind(1);
        for (String way : List.of("out", "back")) {
            for (int k = 1; k <= 3; k++) {
                day.run(way + k, "level=" + k, way);
            }
        }
        return day;
    }

    private static Outcome bothWays(double scale, double shiftS) {
        return threeLevels()
                .recording(
                        recording("out.csv", shiftS, ride(1, scale, LEVELS, 30, 30, 30)),
                        "receiver-1",
                        "out1",
                        "out2",
                        "out3")
                .recording(
                        recording("back.csv", shiftS, ride(2, scale, LEVELS, 30, 30, 30)),
                        "receiver-1",
                        "back1",
                        "back2",
                        "back3")
                .reduced();
    }

    @Test
    void threeLevelsBothWaysGiveThreeFiguresWithTheirGains() {
        var outcome = bothWays(1, 0);
        String[] roles = {"lowest", "middle", "highest"};
        for (int k = 1; k <= 3; k++) {
            var figure = figure(outcome, key(k, roles[k - 1]));
            assertThat(figure.thisDay().interval95().contains(LEVELS[k - 1])).isTrue();
            assertThat(figure.counted()).isEqualTo(2);
            assertThat(figure.findings()).noneMatch(one -> one.code().equals("unpaired"));
        }
        assertThat(figure(outcome, key(2, "middle")).findings())
                .anyMatch(one -> one.code().equals("gain"));
        assertThat(outcome.runs()).allMatch(run -> run.counted() && run.trace().isPresent());
        assertThat(outcome.runs().get(1).value("gain").orElseThrow().value()).isCloseTo(1.1, within(0.4));
    }

    @Test
    void speedsTwiceAsHighByTheInstrumentsFactorAreTwiceAsHigh() {
        var plain = threeLevels()
                .recording(
                        recording("out.csv", 0, ride(1, 1, LEVELS, 30, 30, 30)), "receiver-1", "out1", "out2", "out3");
        var calibrated = GivenDay.of(new AssistSpeed())
                .bikeLevels(3)
                .instrument(Instrument.Kind.RECEIVER, 0.01, 1.02, 0.002)
                .wind(1)
                .run("out1", "level=1", "out")
                .run("out2", "level=2", "out")
                .run("out3", "level=3", "out")
                .recording(
                        recording("out.csv", 0, ride(1, 1, LEVELS, 30, 30, 30)), "receiver-1", "out1", "out2", "out3");
        String key = key(1, "lowest");
        assertThat(figure(calibrated.reduced(), key).value())
                .isCloseTo(1.02 * figure(plain.reduced(), key).value(), within(1e-3));
    }

    @Test
    void aShiftOfTheClockChangesNothing() {
        var plain = bothWays(1, 0);
        var shifted = bothWays(1, 3600);
        assertThat(shifted.figures().stream().map(one -> one.value()).toList())
                .isEqualTo(plain.figures().stream().map(one -> one.value()).toList());
    }

    @Test
    void oneWayAloneIsUnpairedAndMuchWider() {
        var outcome = threeLevels()
                .recording(
                        recording("out.csv", 0, ride(1, 1, LEVELS, 30, 30, 30)), "receiver-1", "out1", "out2", "out3")
                .reduced();
        String key = key(3, "highest");
        assertThat(figure(outcome, key).findings()).anyMatch(one -> one.code().equals("unpaired"));
        assertThat(figure(outcome, key).thisDay().interval95().halfWidth())
                .isGreaterThan(
                        1.5 * figure(bothWays(1, 0), key).thisDay().interval95().halfWidth());
    }

    @Test
    void aLevelHeldTooShortIsRefusedByNameAndTheOthersStand() {
        var outcome = threeLevels()
                .recording(recording("out.csv", 0, ride(1, 1, LEVELS, 30, 30, 7)), "receiver-1", "out1", "out2", "out3")
                .reduced();
        assertThat(outcome.runs().get(2).counted()).isFalse();
        assertThat(outcome.runs().get(2).reason())
                .startsWith("level 3 held for ")
                .endsWith("8 s needed");
        assertThat(asRidden(outcome)).hasSize(2);
    }

    @Test
    void levelsThatAreAlikeAreSaidToBeAlikeAndAWrongOrderIsShown() {
        double[] alike = {5.0, 5.05, 4.2};
        var outcome = threeLevels()
                .recording(recording("out.csv", 0, ride(1, 1, alike, 40, 40, 40)), "receiver-1", "out1", "out2", "out3")
                .reduced();
        assertThat(outcome.figures().stream().flatMap(one -> one.findings().stream()))
                .anyMatch(one -> one.code().equals("levels-not-told-apart"))
                .anyMatch(one -> one.code().equals("levels-out-of-order"));
        assertThat(figure(outcome, key(3, "highest")).value()).isCloseTo(4.2, within(0.3));
    }

    @Test
    void aLevelThatNobodyAnnouncedIsProposedAndNothingIsChanged() {
        double[] four = {4.0, 5.2, 6.4, 7.6};
        var outcome = threeLevels()
                .recording(
                        recording("out.csv", 0, ride(1, 1, four, 40, 40, 40, 40)), "receiver-1", "out1", "out2", "out3")
                .reduced();
        assertThat(outcome.findings()).anyMatch(one -> one.code().equals("levels-differ"));
        assertThat(asRidden(outcome)).hasSize(3);
    }

    @Test
    void strongWindVoidsTheRunsAndGivesLimitAndValue() {
        var outcome = threeLevels()
                .wind(4.2)
                .recording(
                        recording("out.csv", 0, ride(1, 1, LEVELS, 30, 30, 30)), "receiver-1", "out1", "out2", "out3")
                .reduced();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs().getFirst().reason())
                .contains("wind")
                .contains("4.2")
                .contains("3");
    }

    @Test
    void fourSamplesOrNoneOrACoarseRecordingAreRefused() {
        assertThat(refusal(recording("a.csv", 0, 5, 5, 5, 5))).isEqualTo("recording-too-short");
        assertThat(refusal(recording("a.csv", 0))).isEqualTo("no-speed");
        double[] times = new double[60];
        double[] speeds = new double[60];
        for (int i = 0; i < 60; i++) {
            times[i] = 2 * i;
            speeds[i] = 5 + 0.01 * (i % 3);
        }
        assertThat(refusal(recording("a.csv", times, speeds))).isEqualTo("sampled-too-coarsely");
    }

    private static String refusal(Recording recording) {
        var outcome = threeLevels().recording(recording, "", "out1").reduced();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs()).noneMatch(run -> run.counted());
        return outcome.findings().getFirst().code();
    }

    @Test
    void aSpeedThatNeverChangesIsAnInstrumentHoldingItsLastValue() {
        double[] constant = new double[60];
        java.util.Arrays.fill(constant, 5.0);
        var outcome = GivenDay.of(new AssistSpeed())
                .run("a1", "level=2", "")
                .recording(recording("a.csv", 0, constant), "", "a1")
                .reduced();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs().getFirst().reason()).contains("holds its last value");
    }

    @Test
    void typedSpeedsBothWaysGiveTheirMeanWithTheDisplaysStep() {
        var outcome = GivenDay.of(new AssistSpeed())
                .bikeLevels(5)
                .wind(0)
                .run("a1", "level=5", "out")
                .reading("a1", "speed", "24.6 km/h")
                .run("a2", "level=5", "back")
                .reading("a2", "speed", "25.0 km/h")
                .run("a3", "level=4", "out")
                .reduced();
        var figure = figure(outcome, key(5, "highest"));
        // Hand arithmetic: (24.6 + 25.0) / 2 / 3.6.
        assertThat(figure.value()).isCloseTo(6.888889, within(1e-6));
        assertThat(figure.budget()).anyMatch(part -> part.input().equals("step of the display"));
        assertThat(outcome.runs().getLast().reason()).contains("no speed was written down");
    }

    /// By P = v·(105·9.81·0.009 + ½·1.2·0.6·(v + w)²) in the head: about 0.2 % of v for each (m/s)² along the road.
    @Test
    void aWindAlikeBothWaysTakesMoreThanItGivesBack() {
        var figure = figure(
                GivenDay.of(new AssistSpeed())
                        .bikeLevels(5)
                        .wind(2)
                        .run("a1", "level=5", "out")
                        .reading("a1", "speed", "22 km/h")
                        .run("a2", "level=5", "back")
                        .reading("a2", "speed", "26 km/h")
                        .reduced(),
                key(5, "highest"));
        assertThat(figure.value()).isBetween(24 / 3.6 - 0.06, 24 / 3.6 - 0.01);
        assertThat(figure.assumed()).anyMatch(one -> one.startsWith("the written wind of 2.00 m/s"));
    }

    @Test
    void aRunWithoutALevelDoesNotCount() {
        var outcome = GivenDay.of(new AssistSpeed())
                .run("a1", "", "out")
                .reading("a1", "speed", "24.6 km/h")
                .reduced();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs().getFirst().reason()).contains("which level");
    }

    @Test
    void theCutOffIsGivenOnlyWhereSomebodyNotedIt() {
        var outcome = GivenDay.of(new AssistSpeed())
                .run("a1", "level=5", "out")
                .reading("a1", "speed", "24.6 km/h")
                .reading("a1", "cut-off", "25.4 km/h")
                .reduced();
        assertThat(figure(outcome, "assistspeed.cut-off drive=pedal").value()).isCloseTo(25.4 / 3.6, within(1e-9));
        assertThat(bothWays(1, 0).figures()).noneMatch(one -> one.key().figure().equals("assistspeed.cut-off"));
    }

    /// Closed forms: A·cos φ alone holds 95 % within A·sin(0.475·π); without wind t or normal is left.
    @Test
    void aWindOfUnknownBearingIsBounded() {
        assertThat(BearingInterval.halfWidth(1, 1e-2, Double.POSITIVE_INFINITY))
                .isCloseTo(StrictMath.sin(0.475 * Math.PI), within(0.01));
        assertThat(BearingInterval.halfWidth(1e-9, 1, Double.POSITIVE_INFINITY)).isCloseTo(1.959964, within(1e-4));
    }

    private static GivenDay threeInOne() {
        return GivenDay.of(new AssistSpeed())
                .bikeLevels(3)
                .instrument(Instrument.Kind.RECEIVER, 0.01, 1, 0.002)
                .wind(1)
                .recording(recording("out.csv", 0, ride(1, 1, LEVELS, 30, 30, 30)), "receiver-1");
    }

    @Test
    void aLevelWhoseEndsWereSetIsWhatLiesBetweenThem() {
        var outcome = threeInOne()
                .run("a-2", "level=2", "out")
                .window("out.csv", "a-2", 42, 69)
                .reduced();
        var run = outcome.runs().stream()
                .filter(one -> one.run().equals("a-2"))
                .findFirst()
                .orElseThrow();
        assertThat(run.reason()).isEmpty();
        assertThat(run.value("speed").orElseThrow().value()).isCloseTo(LEVELS[1], within(0.2));
        assertThat(run.stretch()).contains(new org.measuredmile.trial.RunResult.Stretch("out.csv", 42, 69));
        assertThat(figure(outcome, "assistspeed.speed drive=pedal level=2 levelRole=middle")
                        .value())
                .isCloseTo(LEVELS[1], within(0.2));
    }

    @Test
    void stretchesThatLieInARunWithItsEndsAreNotProposedAgain() {
        var before = threeInOne().reduced().runs();
        var after = threeInOne()
                .run("a-2", "level=2", "out")
                .window("out.csv", "a-2", 39, 73)
                .reduced()
                .runs();
        assertThat(before).hasSize(3);
        assertThat(after)
                .extracting(org.measuredmile.trial.RunResult::run)
                .contains(before.getFirst().run())
                .doesNotContain(before.get(1).run())
                .filteredOn(one -> one.startsWith("out.csv/"))
                .hasSize(2);
    }

    @Test
    void endsAroundTooLittleAreRefusedWithLimitAndValue() {
        var outcome = threeInOne()
                .run("a-2", "level=2", "out")
                .window("out.csv", "a-2", 42, 47)
                .reduced();
        var run = outcome.runs().getFirst();
        assertThat(run.counted()).isFalse();
        assertThat(run.reason()).startsWith("between 42.00 s and 47.00 s of out.csv: 6 speed samples; a level needs ");
        assertThat(run.trace()).isPresent();
        assertThat(outcome.figures()).isEmpty();
    }

    @Test
    void theOtherLevelsStayInOrderWhenOneGetsItsEnds() {
        var day = threeLevels()
                .recording(
                        recording("out.csv", 0, ride(1, 1, LEVELS, 30, 30, 30)), "receiver-1", "out1", "out2", "out3")
                .recording(
                        recording("back.csv", 0, ride(2, 1, LEVELS, 30, 30, 30)),
                        "receiver-1",
                        "back1",
                        "back2",
                        "back3")
                .window("out.csv", "out2", 39, 73);
        var outcome = day.reduced();
        assertThat(outcome.runs())
                .filteredOn(run -> run.run().matches("(out|back)\\d"))
                .hasSize(6)
                .allSatisfy(run -> assertThat(run.value("speed").orElseThrow().value())
                        .isCloseTo(LEVELS[run.run().charAt(run.run().length() - 1) - '1'], within(0.25)));
    }
}
