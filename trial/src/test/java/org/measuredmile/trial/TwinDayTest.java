package org.measuredmile.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.reader.Decoding;

/// A day whose one ride, with three hard stops in it, lies in its folder more than once.
class TwinDayTest {
    private static final Instant TEN = Instant.parse("2031-05-14T09:00:00Z");
    private static final int STOPS = 3;
    private static final double HZ = 10;
    private static final String DAY = """
            date: 2031-05-14
            timeZone: Europe/London
            place: Wendlesea, invented
            bike: ostrelle-lamplight
            """;

    /// Three times: 20 s of standing, 7 m/s within 7 s, 40 s of riding that never is quite even, a stop at 4 m/s².
    private static double mps(double timeS) {
        double inS = timeS % 90;
        double riding = 7 + 0.3 * Math.sin(timeS / 3.7) + 0.2 * Math.sin(timeS / 11);
        return Math.max(0, Math.min(riding, Math.min(inS - 20, 4 * (67 - inS))));
    }

    private static String table(double fromS, double toS, double noiseMps) {
        var text = new StringBuilder("time,speed (m/s),latitude,longitude,altitude (m)\n");
        each(
                fromS,
                toS,
                (timeS, wayM) -> text.append(String.format(
                        Locale.ROOT,
                        "%s,%.3f,%.7f,%.7f,%.1f%n",
                        at(timeS),
                        Math.max(0, mps(timeS) + noiseMps * Math.sin(997 * timeS)),
                        50 + wayM / 111_195 + noiseMps * 1e-3 * Math.sin(timeS / 7),
                        8.0,
                        20.0)));
        return text.toString();
    }

    private static String exchange(double fromS, double toS) {
        var text = new StringBuilder(
                "<gpx version=\"1.1\" creator=\"made\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>\n");
        each(
                fromS,
                toS,
                (timeS, wayM) -> text.append(String.format(
                        Locale.ROOT,
                        "<trkpt lat=\"%.7f\" lon=\"%.7f\"><time>%s</time></trkpt>%n",
                        50 + wayM / 111_195,
                        8.0,
                        at(timeS))));
        return text.append("</trkseg></trk></gpx>\n").toString();
    }

    private interface Sample {
        void at(double timeS, double wayM);
    }

    private static void each(double fromS, double toS, Sample sample) {
        double wayM = 0;
        for (int i = 0; i <= toS * HZ; i++) {
            wayM += mps(i / HZ) / HZ;
            if (i >= fromS * HZ) {
                sample.at(i / HZ, wayM);
            }
        }
    }

    private static Instant at(double timeS) {
        return TEN.plusMillis(Math.round(1000 * timeS));
    }

    private static DayReduction.Result.Reduced reduced(Map<String, String> files, String recordings)
            throws IOException {
        var texts = new TreeMap<String, byte[]>();
        texts.put("day.yaml", DAY.getBytes(StandardCharsets.UTF_8));
        if (!recordings.isEmpty()) {
            texts.put("runs.csv", "run,trial,state\nb-01,braking,confirmed\n".getBytes(StandardCharsets.UTF_8));
            texts.put("recordings.csv", recordings.getBytes(StandardCharsets.UTF_8));
        }
        var sources = new TreeMap<String, DayFolder.ByteSource>();
        files.forEach((name, text) ->
                sources.put(name, () -> new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))));
        return (DayReduction.Result.Reduced) DayReduction.reduce(
                new DayFolder("2031-05-14-lamplight", texts, sources), ScatterRecord.DECLARED_PRIORS);
    }

    private static List<String> stops(DayReduction.Result.Reduced reduced) {
        return reduced.outcomes().getOrDefault("braking", Outcome.NOTHING).runs().stream()
                .filter(run -> run.stretch().isPresent())
                .map(run -> run.stretch().orElseThrow().recording())
                .toList();
    }

    private static List<Finding> findings(DayReduction.Result.Reduced reduced, String file) {
        Decoding decoding = reduced.recordings().get(file);
        return decoding == null
                ? List.of()
                : decoding.findings().stream()
                        .filter(finding -> finding.code().startsWith("same-")
                                || finding.code().equals("overlapping-recordings"))
                        .toList();
    }

    @Test
    void theStopsOfARideInTwoFormatsCountOnce() throws IOException {
        var alone = reduced(Map.of("ride.csv", table(0, 270, 0)), "");
        assertThat(stops(alone)).hasSize(STOPS).containsOnly("ride.csv");
        var twice = reduced(Map.of("ride.csv", table(0, 270, 0), "converted.gpx", exchange(0, 270)), "");
        assertThat(stops(twice)).isEqualTo(stops(alone));
        assertThat(findings(twice, "converted.gpx")).singleElement().satisfies(finding -> {
            assertThat(finding.code()).isEqualTo("same-ride");
            assertThat(finding.message()).contains("it is not used").contains("\"ride.csv\" has a speed of its own");
        });
        assertThat(findings(twice, "ride.csv"))
                .singleElement()
                .satisfies(finding -> assertThat(finding.message()).contains("\"converted.gpx\""));
        assertThat(twice.inputs()).anyMatch(input -> input.name().equals("converted.gpx"));
    }

    @Test
    void aCopyUnderAnotherNameCountsOnce() throws IOException {
        var twice = reduced(Map.of("a.csv", table(0, 270, 0), "b.csv", table(0, 270, 0)), "");
        assertThat(stops(twice)).hasSize(STOPS).containsOnly("a.csv");
        assertThat(findings(twice, "b.csv"))
                .singleElement()
                .satisfies(finding -> assertThat(finding.code()).isEqualTo("same-file"));
    }

    @Test
    void aSecondInstrumentOnTheBikeDoublesNoStop() throws IOException {
        var twice = reduced(Map.of("a.csv", table(0, 270, 0), "b.csv", table(0, 270, 0.05)), "");
        assertThat(stops(twice)).hasSize(STOPS).containsOnly("a.csv");
        assertThat(findings(twice, "b.csv"))
                .singleElement()
                .satisfies(finding -> assertThat(finding.code()).isEqualTo("overlapping-recordings"));
    }

    @Test
    void filesThatOverlapInPartGiveEveryStopOnce() throws IOException {
        var parts = reduced(Map.of("a.csv", table(0, 180, 0), "b.csv", table(60, 270, 0)), "");
        assertThat(stops(parts)).hasSize(STOPS).contains("a.csv", "b.csv");
        assertThat(findings(parts, "a.csv")).hasSize(findings(parts, "b.csv").isEmpty() ? 1 : 0);
    }

    @Test
    void whatRecordingsCsvNamesIsUsedInItsPlace() throws IOException {
        var named = reduced(
                Map.of("a.csv", table(0, 270, 0), "b.csv", table(0, 270, 0.05)), "file,runs\nb.csv,b-01@45-80\n");
        assertThat(stops(named)).hasSize(STOPS).containsOnly("b.csv");
        assertThat(findings(named, "a.csv"))
                .singleElement()
                .satisfies(finding -> assertThat(finding.message()).contains("has runs named in recordings.csv"));
    }
}
