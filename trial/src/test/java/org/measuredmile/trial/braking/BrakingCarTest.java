package org.measuredmile.trial.braking;

import static org.assertj.core.api.Assertions.assertThat;
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

/// A real town drive at 10 Hz in which no stop can be counted: 2014-03-26-000-Data.csv of balzer82/Kalman,
/// CC-BY-SA-2.0, which lies beside the repository and not in it. Skipped where it is missing.
class BrakingCarTest {
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

    @Test
    void noStopOfATownDriveCountsAndEachSaysWhy() throws IOException {
        Outcome outcome = BrakingDays.day().recording(drive()).reduce();
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs()).hasSizeBetween(5, 30).allSatisfy(run -> {
            assertThat(run.state()).isEqualTo(Run.State.PROPOSED);
            assertThat(run.counted()).isFalse();
            assertThat(run.reason()).containsPattern("[0-9]").containsPattern("at most|at least|is outside");
            assertThat(run.stretch()).isPresent();
        });
        assertThat(outcome.runs().stream().map(run -> run.reason()).distinct()).hasSameSizeAs(outcome.runs());
    }
}
