package org.measuredmile.trial.engagement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.trial.GivenDay.figure;

import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.trial.GivenDay;

/// Pushes of known delay and overrun, by video and by trace.
class EngagementTest {
    private static final String LEVEL = " level=3 levelRole=middle";

    private static GivenDay day() {
        return GivenDay.of(new Engagement()).bikeLevels(5);
    }

    /// Hand arithmetic: 24, 27 and 23 frames of 1/60 s: 0.400, 0.450 and 0.3833 s.
    @Test
    void theHandbooksExampleHolds() {
        var outcome = day().camera("60")
                .run("a", "level=3", "")
                .reading("a", "delay", "frame 100 to 124", "camera-1")
                .run("b", "level=3", "")
                .reading("b", "delay", "frame 100 to 127", "camera-1")
                .run("c", "level=3", "")
                .reading("c", "delay", "frame 100 to 123", "camera-1")
                .reduced();
        assertThat(figure(outcome, "engagement.delay" + LEVEL).value())
                .isCloseTo((0.400 + 0.450 + 23 / 60.0) / 3, within(1e-9));
        assertThat(new Engagement().declaration().handbook().example()).contains("0.411");
    }

    /// Hand arithmetic: 0.8 s at 3 m/s are 2.4 m, and 0.75 m/s² over 0.8 s another 0.24 m.
    @Test
    void anOverrunAndTheSpeedGiveItsWay() {
        var outcome = day().run("a", "level=3", "")
                .reading("a", "overrun-time", "0.8 s")
                .reading("a", "rolling-speed", "3 m/s")
                .reduced();
        assertThat(figure(outcome, "engagement.overrun-distance" + LEVEL).value())
                .isCloseTo(2.64, within(1e-9));
    }

    /// Cranks at one turn a second from 2 s to 5 s; thrust from 0.4 s after their begin, gone 0.7 s after their
    /// end.
    private static Recording push(double thrustMps2, double rateHz, RandomGenerator random) {
        int count = (int) (9 * rateHz);
        double[] times = new double[count];
        double[] cranks = new double[count];
        double[] forward = new double[count];
        double[] speed = new double[count];
        for (int i = 0; i < count; i++) {
            double t = i / rateHz;
            times[i] = t;
            cranks[i] = t >= 2 && t < 5 ? 1 : 0;
            double thrust = Math.clamp((t - 2.4) / 0.2, 0, 1) - Math.clamp((t - 5.5) / 0.2, 0, 1);
            forward[i] = -0.1 + thrustMps2 * thrust + 0.1 * Draw.normal(random);
            speed[i] = 3;
        }
        return new Recording(
                "push.csv",
                Format.DELIMITED,
                "",
                Optional.empty(),
                false,
                count,
                times,
                List.of(new Segment(0, times[count - 1])),
                List.of(
                        new Channel(ChannelKind.CADENCE, "n", "Hz", new Channel.Series(times, cranks)),
                        new Channel(ChannelKind.ACCELERATION_X, "a", "m/s²", new Channel.Series(times, forward)),
                        new Channel(ChannelKind.SPEED, "v", "m/s", new Channel.Series(times, speed))),
                new TreeMap<>(),
                List.of());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void aTraceGivesDelayAngleAndOverrun(long seed) {
        var random = new Seed(seed).child("push").stream(0);
        var outcome = day().run("a", "level=3", "")
                .recording(push(0.8, 50, random), "", "a")
                .reduced();
        assertThat(figure(outcome, "engagement.delay" + LEVEL).value()).isCloseTo(0.4, within(0.08));
        assertThat(figure(outcome, "engagement.crank-angle" + LEVEL).value())
                .isCloseTo(0.4 * 2 * Math.PI, within(0.55));
        assertThat(figure(outcome, "engagement.overrun-time" + LEVEL).value()).isCloseTo(0.7, within(0.08));
        assertThat(figure(outcome, "engagement.overrun-distance" + LEVEL).value())
                .isCloseTo(2.1, within(0.25));
        assertThat(outcome.runs().getFirst().trace()).isPresent();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void aPushWithoutThrustIsRefusedWithItsLimit(long seed) {
        var outcome = day().run("a", "level=3", "")
                .recording(push(0.0, 50, new Seed(seed).stream(0)), "", "a")
                .reduced();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs().getFirst().reason()).contains("no change of thrust stands out", "needed");
    }

    @Test
    void aSlowLoggerIsRefusedWithWhatWouldDo() {
        var outcome = day().run("a", "level=3", "")
                .recording(push(0.8, 10, new Seed(1).stream(0)), "", "a")
                .reduced();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs().getFirst().reason()).contains("acceleration-x every 0.10 s", "at most 0.05 s");
    }

    @Test
    void aPushThatNobodyWroteDownIsProposed() {
        var outcome = day().recording(push(0.8, 50, new Seed(7).stream(0)), "").reduced();
        assertThat(outcome.runs())
                .singleElement()
                .satisfies(run -> assertThat(run.run()).startsWith("push.csv at"));
    }
}
