package org.measuredmile.trial.standingstart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.recording.reader.Readers;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;

/// A real town drive at 10 Hz with starts after rest: 2014-03-26-000-Data.csv of balzer82/Kalman,
/// CC-BY-SA-2.0, which lies beside the repository and not in it. Skipped where it is missing.
class StandingStartCarTest {
    private static final String FILE = "car_216s_gnss10hz_imu50hz.csv";

    private static Optional<Path> file() {
        var folder = Path.of("").toAbsolutePath();
        while (folder != null) {
            var found = folder.resolve("shared")
                    .resolve("recordings")
                    .resolve("csv-imu")
                    .resolve(FILE);
            if (Files.isReadable(found)) {
                return Optional.of(found);
            }
            folder = folder.getParent();
        }
        return Optional.empty();
    }

    private static Recording drive() throws IOException {
        var path = file();
        assumeTrue(path.isPresent(), "the shared recordings are not here");
        try (var bytes = Files.newInputStream(path.orElseThrow())) {
            return switch (Readers.decode(FILE, bytes)) {
                case Decoding.Decoded(var recording) -> recording;
                case Decoding.Refused refused -> throw new AssertionError(refused.findings());
            };
        }
    }

    private static RunResult startNear(Outcome outcome, double atS) {
        return outcome.runs().stream()
                .filter(run -> Math.abs(run.stretch().orElseThrow().fromS() - atS) < 2)
                .findFirst()
                .orElseThrow();
    }

    /// By eye in the file: rest until 194.7 s, then 0.5 m/s to 20 mph in about 7.6 s over 30 m. The car creeps
    /// away, so its first movement is known to half a second only.
    @Test
    void theStartsAfterRestAreFoundAndTimedWithTheirUncertainty() throws IOException {
        Outcome outcome = StartDays.day().recording(drive()).reduce();
        var late = startNear(outcome, 194.7);
        assertThat(late.reason()).isEmpty();
        assertThat(late.value("time-to-20-mph").orElseThrow().value()).isCloseTo(7.9, within(0.7));
        assertThat(late.value("distance-to-20-mph").orElseThrow().value()).isCloseTo(30.8, within(2.5));
        assertThat(late.value("time-to-20-mph").orElseThrow().standardUncertainty())
                .isBetween(0.005, 0.8);
        // By the samples, the crossings found between them: 0.5 m/s at 194.81 s, 20 mph at 202.34 s, 29.9 m by
        // trapezoids
        // of the receiver's speed; to the sample after, 9.19 m/s at 202.44 s, it is 7.6 s and 30.8 m.
        var time = late.value("time-from-half-mps-to-20-mph").orElseThrow();
        var distance = late.value("distance-from-half-mps-to-20-mph").orElseThrow();
        assertThat(time.value()).isCloseTo(7.54, within(0.1));
        assertThat(distance.value()).isCloseTo(29.9, within(0.5));
        assertThat(time.standardUncertainty()).isBetween(0.03, 0.4);
        assertThat(distance.standardUncertainty()).isBetween(0.1, 1.5);
        var figure = outcome.figures().getFirst();
        assertThat(figure.anyDay().interval95().contains(figure.value())).isTrue();
    }

    /// By eye in the file: below 0.5 m/s for just a second, 0.49 m/s at 167.70 s, at 0.5 to 0.8 m/s until 169.3
    /// s, then 8.93 m/s at 174.30 s and 9.04 m/s at 174.40 s: 6.6 s from 0.5 m/s to 20 mph.
    @Test
    void aStartThatCreptFirstHasItsTimesFromHalfAMetreASecondAndDoesNotCount() throws IOException {
        var crept = startNear(reduced(), 167.7);
        assertThat(crept.counted()).isFalse();
        assertThat(crept.reason())
                .startsWith("moving before the start, for 1.")
                .contains("at up to 1.00 m/s", "reduced χ² of the fit", "at most 2.50");
        assertThat(crept.value("time-to-20-mph")).isEmpty();
        var time = crept.value("time-from-half-mps-to-20-mph").orElseThrow();
        assertThat(time.value()).isCloseTo(6.55, within(0.15));
        assertThat(time.standardUncertainty()).isBetween(0.03, 0.4);
        var distance = crept.value("distance-from-half-mps-to-20-mph").orElseThrow();
        assertThat(distance.value()).isCloseTo(31.2, within(1.0));
        assertThat(distance.standardUncertainty()).isBetween(0.1, 1.5);
        assertThat(crept.value("time-from-half-mps-to-10-mph").orElseThrow().value())
                .isLessThan(time.value())
                .isCloseTo(2.75, within(0.15));
    }

    private static Outcome reduced() throws IOException {
        return StartDays.day().recording(drive()).reduce();
    }

    @Test
    void whatIsNoStartSaysWhy() throws IOException {
        Outcome outcome = StartDays.day().recording(drive()).reduce();
        assertThat(outcome.runs()).isNotEmpty().allSatisfy(run -> {
            assertThat(run.state()).isEqualTo(Run.State.PROPOSED);
            assertThat(run.counted() || !run.reason().isBlank()).isTrue();
        });
    }
}
