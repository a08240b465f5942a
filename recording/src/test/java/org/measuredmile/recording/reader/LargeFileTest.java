package org.measuredmile.recording.reader;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/// A file of 200 MB of each format is decoded in a heap of 256 MB.
@Tag("long")
class LargeFileTest {
    @ParameterizedTest
    @ValueSource(strings = {"gpx", "tcx", "fit", "nmea", "csv"})
    void aLargeFileIsDecodedInASmallHeap(String format) throws IOException, InterruptedException {
        String path = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        Process decoder = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx256m",
                        "-XX:+ExitOnOutOfMemoryError",
                        "-cp",
                        path,
                        LargeFile.class.getName(),
                        format)
                .redirectErrorStream(true)
                .start();
        String said = new String(decoder.getInputStream().readAllBytes(), UTF_8);
        assertThat(decoder.waitFor(5, TimeUnit.MINUTES)).as(said).isTrue();
        assertThat(decoder.exitValue()).as(said).isZero();
        assertThat(said).startsWith(format + " kept ");
        long kept = Long.parseLong(said.replaceAll("(?s)^\\w+ kept (\\d+) .*", "$1"));
        long made = Long.parseLong(said.replaceAll("(?s).* of (\\d+) made.*", "$1"));
        long bytes = Long.parseLong(said.strip().replaceAll("(?s).* (\\d+) bytes$", "$1"));
        // The whole file, or as much of it as may be held (22 million values), and then that is told.
        if (said.contains("[too-long]")) {
            assertThat(made - kept).as(said).isBetween(0L, made / 100);
        } else {
            assertThat(said).contains("s, [] of");
            assertThat(kept).isEqualTo(made);
            assertThat(bytes).isGreaterThanOrEqualTo(200_000_000);
        }
        assertThat(kept).isGreaterThan(500_000);
    }
}
