package org.measuredmile.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.FrameRate;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.trial.standingstart.StandingStart;

class FrameReadingTest {
    private static final String TIME = "time-to-10-mph";

    private static FrameReading read(String text) {
        return FrameReading.parse(text).orElseThrow(() -> new AssertionError(text));
    }

    private static GivenDay start(String written, String instrument) {
        return GivenDay.of(new StandingStart())
                .run("s-1", "drive=throttle to=10-mph", "out")
                .reading("s-1", TIME, written, instrument);
    }

    private static Finding fault(GivenDay day) {
        List<Finding> faults = day.input().readings().faultsOf("s-1");
        assertThat(faults).hasSize(1);
        return faults.getFirst();
    }

    // 63 frames of 30000/1001 a second take 63 · 1001 / 30000 s; arithmetic.
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            frames 1203 to 1266 | 63 | 2
            Frames 1203 - 1266  | 63 | 2
            frames 1203–1266    | 63 | 2
            1203 to 1266 frames | 63 | 2
            1203 to 1266 frame  | 63 | 2
            frame 1203 to frame 1266 | 63 | 2
            frames 1203 to 1266 frame | 63 | 2
            63 frames           | 63 | 2
            63 frame            | 63 | 2
            frame 63            | 63 | 1
            frame 63 frame      | 63 | 1
            frames 7 to 7       | 0  | 2
            """)
    void framesAreReadAsTheTimeBetweenThem(String text, long between, int ends) {
        var rate = new FrameRate.Steady(30000, 1001);
        assertThat(read(text).seconds(rate)).isEqualTo(between * 1001.0 / 30000);
        assertThat(read(text).ends()).isEqualTo(ends);
    }

    @ParameterizedTest
    @ValueSource(strings = {"frames 1266 to 1203", "frame", "frames ten to twelve", "frame 1.5", "frames 1 to 2 to 3"})
    void framesThatCannotBeReadAreAFault(String text) {
        assertThat(FrameReading.isMeant(text)).isTrue();
        assertThat(FrameReading.parse(text)).isEmpty();
        assertThat(fault(start(text, "camera-1").camera("30")).code()).isEqualTo("reading-not-understood");
    }

    // A difference of two ends, each uniform over its frame: a/√6 (JCGM 100:2008, 4.3.9); simulated beside it.
    @Test
    void theUncertaintyIsThatOfEndsAnywhereInTheirFrames() {
        var rate = new FrameRate.Steady(240, 1);
        double frameS = 1.0 / 240;
        double both = read("frames 10 to 73").stepS(rate) / Math.sqrt(12);
        double one = read("frame 73").stepS(rate) / Math.sqrt(12);
        assertThat(both).isCloseTo(frameS / Math.sqrt(6), within(1e-15));
        assertThat(one).isCloseTo(frameS / Math.sqrt(12), within(1e-15));
        RandomGenerator random = new Seed(240).stream(0);
        double squares = 0;
        int draws = 200_000;
        for (int i = 0; i < draws; i++) {
            double beganS = random.nextDouble() * frameS;
            double endedS = random.nextDouble() * frameS;
            double errorS = endedS - beganS;
            squares += errorS * errorS;
        }
        assertThat(Math.sqrt(squares / draws)).isCloseTo(both, within(0.01 * both));
    }

    @Test
    void aReadingByFramesHasItsSecondsItsStepAndItsCamera() {
        var value = start("frames 1203 to 1266", "camera-1")
                .camera("30000/1001")
                .input()
                .readings()
                .of("s-1", TIME)
                .orElseThrow();
        assertThat(value.si()).isEqualTo(63 * 1001.0 / 30000);
        assertThat(value.stepSd()).isCloseTo(1001.0 / 30000 / Math.sqrt(6), within(1e-15));
        assertThat(value.instrument().map(Instrument::id)).contains("camera-1");
        assertThat(value.isByCamera()).isTrue();
    }

    @Test
    void theDaysOnlyCameraNeedsNoName() {
        assertThat(start("frames 1203 to 1266", "")
                        .camera("30")
                        .input()
                        .readings()
                        .of("s-1", TIME))
                .hasValueSatisfying(value -> assertThat(value.si()).isEqualTo(2.1));
    }

    @Test
    void theRateMayStandBehindTheFramesWhereNoCameraStatesIt() {
        var value = start("frames 1203 to 1266 at 30000/1001", "")
                .input()
                .readings()
                .of("s-1", TIME)
                .orElseThrow();
        assertThat(value.si()).isEqualTo(63 * 1001.0 / 30000);
        assertThat(value.stepSd()).isCloseTo(1001.0 / 30000 / Math.sqrt(6), within(1e-15));
        assertThat(value.isByCamera()).isTrue();
        assertThat(read("63 frames @ 29.97 fps").rate()).contains(new FrameRate.Steady(2997, 100));
        assertThat(FrameReading.parse("63 frames at noon")).isEmpty();
        assertThat(fault(start("63 frames at variable", "")).code()).isEqualTo("frame-rate-variable");
        assertThat(fault(start("63 frames at 25", "camera-1").camera("30")).code())
                .isEqualTo("frame-rates-differ");
    }

    @Test
    void secondsReadOffAPictureAreNoFinerThanItsFrames() {
        var value = start("2.10 s", "camera-1")
                .camera("25")
                .input()
                .readings()
                .of("s-1", TIME)
                .orElseThrow();
        assertThat(value.stepSd()).isCloseTo(0.04 / Math.sqrt(6), within(1e-15));
    }

    @Test
    void withoutASteadyRateFramesTellNoTime() {
        assertThat(fault(start("frames 1203 to 1266", "camera-1").camera("variable"))
                        .code())
                .isEqualTo("frame-rate-variable");
        assertThat(fault(start("frames 1203 to 1266", "camera-1").camera("")).code())
                .isEqualTo("frames-without-rate");
        assertThat(fault(start("frames 1203 to 1266", "")).code()).isEqualTo("frames-without-rate");
        var watch = start("frames 1203 to 1266", "stopwatch-1").instrument(Instrument.Kind.STOPWATCH, 0.01, 1, 0);
        assertThat(fault(watch).code()).isEqualTo("frames-without-rate");
    }

    @Test
    void aTimeThatCannotBeIsNotBelievedInFramesEither() {
        assertThat(fault(start("frames 1203 to 1204", "camera-1").camera("30")).code())
                .isEqualTo("reading-not-plausible");
    }

    @Test
    void theBudgetHoldsTheFramesAndNoReactionTime() {
        var byCamera = threeStarts("frames 1203 to 1323", "frames 2203 to 2322", "frames 3203 to 3322");
        // 120 and 119 frames of 30 a second are 4.00 and 3.97 s. A hand adds 0.10 s to each and 0.05 s to all.
        var byWatch = threeStarts("4.00 s", "3.97 s", "3.97 s");
        String reaction = "reaction to start and speed, alike in all runs";
        assertThat(contribution(byCamera, reaction)).isZero();
        assertThat(contribution(byWatch, reaction)).isCloseTo(0.05, within(1e-12));
        assertThat(contribution(byCamera, "scatter of 3 runs"))
                .isPositive()
                .isLessThan(contribution(byWatch, "scatter of 3 runs"));
    }

    private static Figure threeStarts(String first, String second, String third) {
        String camera = first.startsWith("frames") ? "camera-1" : "";
        var day = start(first, camera)
                .run("s-2", "drive=throttle to=10-mph", "back")
                .reading("s-2", TIME, second, camera)
                .run("s-3", "drive=throttle to=10-mph", "out")
                .reading("s-3", TIME, third, camera);
        return GivenDay.figure(
                (camera.isEmpty() ? day : day.camera("30")).checked().reduced(),
                "standingstart.time-to drive=throttle to=10-mph");
    }

    private static double contribution(Figure figure, String input) {
        return figure.budget().stream()
                .filter(one -> one.input().equals(input))
                .mapToDouble(Contribution::standardUncertainty)
                .findFirst()
                .orElse(0);
    }

    static Stream<Trial> trials() {
        return Trials.ALL.stream();
    }

    @ParameterizedTest
    @MethodSource("trials")
    void everyTimeOfEveryTrialMayBeToldByFrames(Trial trial) {
        for (ReadingSpec spec : trial.declaration().readings()) {
            if (spec.kind() == QuantityKind.TIME) {
                double low = Math.max(0, spec.plausible().low());
                long frames =
                        Math.round(30 * Math.max(1, Math.min(spec.plausible().high(), low + 1)));
                var day = GivenDay.of(trial)
                        .run("r-1", "", "out")
                        .reading(spec.scope() == ReadingSpec.Scope.DAY ? "" : "r-1", spec.name(), frames + " frames")
                        .camera("30");
                assertThat(day.input().readings().of("r-1", spec.name()))
                        .as(spec.name())
                        .hasValueSatisfying(value -> assertThat(value.si()).isEqualTo(frames / 30.0));
            }
        }
    }
}
