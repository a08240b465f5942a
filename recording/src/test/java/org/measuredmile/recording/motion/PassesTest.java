package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Course;
import org.measuredmile.recording.day.Course.Gate;
import org.measuredmile.recording.day.Course.Surveyed;

/// Rides over a straight course of 300 m whose gates lie 100 m and 400 m along the road.
class PassesTest {
    private static final double BEARING = 63;

    private static Gate gate(double alongM) {
        var at = Geodesic.WGS84.Direct(45, 10, BEARING, alongM);
        return new Gate(at.lat2, at.lon2, at.azi2);
    }

    private static Course course(double lengthM, Optional<Gate> finish) {
        return new Course(
                "hill",
                "climb",
                Optional.of(new Surveyed(lengthM, 0.1)),
                Optional.empty(),
                Optional.of(gate(100)),
                finish,
                "",
                Optional.empty(),
                "");
    }

    private static Course hill() {
        return course(300, Optional.of(gate(400)));
    }

    /// A ride whose way along the road is a function of time.
    private static Recording ride(double seconds, double stepS, DoubleUnaryOperator alongM, Noise noise) {
        var random = new Random(noise.seed);
        var times = Simulated.times(0.37, seconds, stepS);
        double kept = StrictMath.exp(-stepS / 70);
        var along = Arrays.stream(times).map(alongM).toArray();
        var aside = Simulated.wander(times.length, noise.positionM, kept, random);
        Arrays.setAll(aside, i -> aside[i] + noise.asideM);
        var channels = new ArrayList<Channel>(Simulated.positions(
                times, along, BEARING, Simulated.wander(times.length, noise.positionM, kept, random), aside));
        if (noise.withSpeed) {
            double scale = 1 + 0.003 * random.nextGaussian();
            var exact = Simulated.channel(
                    ChannelKind.SPEED,
                    times,
                    t -> scale * Math.abs(alongM.applyAsDouble(t + 0.05) - alongM.applyAsDouble(t - 0.05)) / 0.1);
            channels.add(Simulated.noisy(exact, 0.05, random));
        }
        return Simulated.recording(channels);
    }

    private record Noise(double positionM, double asideM, boolean withSpeed, long seed) {}

    private static final Noise EXACT = new Noise(0, 0, false, 1);
    private static final Noise WITH_SPEED = new Noise(0, 0, true, 1);

    /// Up at 4.5 m/s with a swing, a turn at 480 m, down at 8 m/s.
    private static double upAndDownM(double t) {
        double turnS = 107;
        double up = 4.5 * t + 3 * StrictMath.sin(t / 9);
        double top = 4.5 * turnS + 3 * StrictMath.sin(turnS / 9);
        return t <= turnS ? up : t <= turnS + 10 ? top : top - 8 * (t - turnS - 10);
    }

    private static double whenS(DoubleUnaryOperator alongM, double metres, double low, double high) {
        double a = low;
        double b = high;
        boolean rises = alongM.applyAsDouble(high) > alongM.applyAsDouble(low);
        for (int i = 0; i < 60; i++) {
            double middle = (a + b) / 2;
            if ((alongM.applyAsDouble(middle) < metres) == rises) {
                a = middle;
            } else {
                b = middle;
            }
        }
        return a;
    }

    @Test
    void bothWaysAreFoundAndTimedBetweenTheirFixes() {
        var passes = Passes.of(ride(170, 1, PassesTest::upAndDownM, EXACT), hill());
        assertThat(passes.partial()).isEmpty();
        assertThat(passes.passes())
                .extracting(Pass::direction)
                .containsExactly(Pass.Direction.OUT, Pass.Direction.BACK);
        var out = passes.passes().getFirst();
        assertThat(out.method()).isEqualTo(Pass.Method.GATES);
        assertThat(out.fromS()).isCloseTo(whenS(PassesTest::upAndDownM, 100, 0, 107), within(0.02));
        assertThat(out.toS()).isCloseTo(whenS(PassesTest::upAndDownM, 400, 0, 107), within(0.02));
        var back = passes.passes().getLast();
        assertThat(back.fromS()).isCloseTo(whenS(PassesTest::upAndDownM, 400, 117, 170), within(0.02));
        assertThat(back.toS()).isCloseTo(whenS(PassesTest::upAndDownM, 100, 117, 170), within(0.02));
        assertThat(back.direction().id()).isEqualTo("back");
    }

    @Test
    void chainageRunsFromGateToGateInTheSenseOfTheCourse() {
        var passes = Passes.of(ride(170, 1, PassesTest::upAndDownM, WITH_SPEED), hill())
                .passes();
        var out = passes.getFirst();
        assertThat(out.method()).isEqualTo(Pass.Method.SPEED_OVER_LENGTH);
        for (int i = 0; i < out.timesS().length; i++) {
            assertThat(out.chainageM()[i]).isCloseTo(upAndDownM(out.timesS()[i]) - 100, within(0.05));
        }
        assertThat(out.atS(150)).isCloseTo(whenS(PassesTest::upAndDownM, 250, 0, 107), within(0.05));
        assertThat(passes.getLast().atS(150)).isCloseTo(whenS(PassesTest::upAndDownM, 250, 117, 170), within(0.05));
        assertThat(passes.getLast().chainageM()).isSortedAccordingTo((a, b) -> Double.compare(b, a));
    }

    /// 200 climbs; position 2.5 m over 70 s, speed 0.05 m/s white and a scale of 0.3 %.
    @ParameterizedTest(name = "with speed: {0}")
    @CsvSource({"true, 1, 188, 200", "false, 1, 190, 200", "true, 0.5, 188, 200"})
    void theDurationsIntervalHoldsTheTruthAsOftenAsItSays(boolean withSpeed, double stepS, int least, int most) {
        int held = 0;
        double truth = whenS(PassesTest::upAndDownM, 400, 0, 107) - whenS(PassesTest::upAndDownM, 100, 0, 107);
        for (int seed = 0; seed < 200; seed++) {
            var recording = ride(110, stepS, PassesTest::upAndDownM, new Noise(2.5, 0, withSpeed, seed));
            var pass = Passes.of(recording, hill()).passes().getFirst();
            held += Math.abs(pass.durationS() - truth) <= 2 * pass.uDurationS() ? 1 : 0;
        }
        assertThat(held).isBetween(least, most);
    }

    @Test
    void aWrongLengthIsNoticedWhereSpeedAndGatesDisagree() {
        var recording = ride(170, 1, PassesTest::upAndDownM, WITH_SPEED);
        assertThat(Passes.of(recording, hill()).passes().getFirst().findings()).isEmpty();
        var wrong = Passes.of(recording, course(325, Optional.of(gate(400))))
                .passes()
                .getFirst();
        assertThat(wrong.findings()).extracting(one -> one.code()).contains("gates-disagree", "course-not-straight");
        assertThat(wrong.chainageM()[wrong.chainageM().length - 1]).isBetween(315.0, 325.0);
    }

    @Test
    void ridesThatAreNoPassesSayWhy() {
        DoubleUnaryOperator turnsBack = t -> t < 50 ? 5 * t : 250 - 5 * (t - 50);
        assertThat(Passes.of(ride(95, 1, turnsBack, EXACT), hill()).partial())
                .singleElement()
                .satisfies(one -> assertThat(one.reason()).contains("turned back"));
        assertThat(Passes.of(ride(50, 1, t -> 5 * t, EXACT), hill()).partial())
                .singleElement()
                .satisfies(one -> assertThat(one.reason()).contains("not reached"));
        assertThat(Passes.of(ride(50, 1, t -> 200 + 5 * t, EXACT), hill()).partial())
                .singleElement()
                .satisfies(one -> {
                    assertThat(one.direction()).isEqualTo(Pass.Direction.OUT);
                    assertThat(one.reason()).contains("first gate was not crossed");
                });
        var beside = Passes.of(ride(100, 1, t -> 5 * t, new Noise(0, 30, false, 1)), hill());
        assertThat(beside.passes()).isEmpty();
        assertThat(beside.partial())
                .singleElement()
                .satisfies(one -> assertThat(one.reason()).contains("30 m right", "at most 15 m"));
        assertThat(Passes.of(ride(100, 1, t -> 5 * t, new Noise(0, 200, false, 1)), hill()))
                .isEqualTo(new Passes(List.of(), List.of()));
    }

    @Test
    void aGapAtAGateRefusesThePass() {
        var whole = ride(100, 1, t -> 5 * t, EXACT);
        var channels = whole.channels().stream()
                .map(one -> {
                    int[] kept = java.util.stream.IntStream.range(0, one.size())
                            .filter(i -> Math.abs(one.timeS(i) - 20) > 2)
                            .toArray();
                    return Simulated.channel(
                            one.kind(),
                            Arrays.stream(kept).mapToDouble(one::timeS).toArray(),
                            Arrays.stream(kept).mapToDouble(one::value).toArray());
                })
                .toList();
        assertThat(Passes.of(Simulated.recording(channels), hill()).partial())
                .singleElement()
                .satisfies(one -> assertThat(one.reason()).contains("no fix for", "at most 2.1 s"));
    }

    @Test
    void aLoopHasOneGateAndEveryRoundIsAPass() {
        DoubleUnaryOperator rounds = t -> 250 + 240 * StrictMath.sin(2 * Math.PI * t / 120);
        var times = Simulated.times(5, 400, 1);
        double[] along = Arrays.stream(times).map(rounds).toArray();
        double[] aside = Arrays.stream(times)
                .map(t -> 80 * (1 - StrictMath.cos(2 * Math.PI * t / 120)))
                .toArray();
        var recording =
                Simulated.recording(Simulated.positions(times, along, BEARING, new double[times.length], aside));
        var loop = new Course(
                "loop",
                "loop",
                Optional.empty(),
                Optional.empty(),
                Optional.of(gate(250)),
                Optional.empty(),
                "",
                Optional.empty(),
                "");
        var passes = Passes.of(recording, loop).passes();
        assertThat(passes).hasSize(2);
        assertThat(passes).allSatisfy(pass -> assertThat(pass.durationS()).isCloseTo(120, within(0.05)));
    }

    @Test
    void aPolylineWithABendGivesChainageAlongIt() {
        var corner = Geodesic.WGS84.Direct(45, 10, 90, 200);
        var end = Geodesic.WGS84.Direct(corner.lat2, corner.lon2, 0, 150);
        var line = CourseLine.through(List.of(
                        new CourseLine.Point(45, 10),
                        new CourseLine.Point(corner.lat2, corner.lon2),
                        new CourseLine.Point(end.lat2, end.lon2)))
                .orElseThrow();
        assertThat(line.lengthM()).isCloseTo(350, within(0.01));
        var beyondCorner = Geodesic.WGS84.Direct(corner.lat2, corner.lon2, 0, 60);
        var beside = Geodesic.WGS84.Direct(beyondCorner.lat2, beyondCorner.lon2, 90, 7);
        var on = line.project(new CourseLine.Point(beside.lat2, beside.lon2));
        assertThat(on.chainageM()).isCloseTo(260, within(0.01));
        assertThat(on.asideM()).isCloseTo(7, within(0.01));
        var early = line.project(new CourseLine.Point(beside.lat2, beside.lon2), 0, 150);
        assertThat(early.chainageM()).isCloseTo(150, within(0.01));
        assertThat(CourseLine.through(List.of(new CourseLine.Point(45, 10), new CourseLine.Point(45, 10))))
                .isEmpty();
    }
}
