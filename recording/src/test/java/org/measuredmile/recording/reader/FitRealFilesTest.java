package org.measuredmile.recording.reader;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Track;
import org.measuredmile.recording.reader.SharedRecordings.Known;

/// Real FIT files against what is known of them.
///
/// Sources: the collection's EXPECTED.csv (its column `computed_by`), and two files as dtcooper/python-fitparse decodes
/// them, which lie beside the files.
class FitRealFilesTest {
    private static Recording resource(String name) {
        return Decode.recording(Decode.bytes(name, Decode.resource("fit/" + name)));
    }

    private static Channel named(Recording recording, String name) {
        return recording.channels().stream()
                .filter(channel -> channel.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static List<String[]> rows(String name) {
        return new String(Decode.resource("fit/" + name), UTF_8)
                .lines()
                .skip(1)
                .map(line -> line.split(",", -1))
                .toList();
    }

    @Test
    void theShortRideIsDecodedAsAnotherLibraryDoes() {
        Recording ride = resource("bike_short_hrv_15_records.fit");
        List<String[]> rows = rows("bike_short_hrv_15_records_decoded.csv");
        assertThat(ride.timesS()).hasSize(rows.size());
        // Mon Jun 12 09:10:15 PDT 2017
        assertThat(ride.start()).contains(java.time.Instant.parse("2017-06-12T16:10:15Z"));
        for (int i = 0; i < rows.size(); i++) {
            String[] row = rows.get(i);
            assertThat(named(ride, "heart_rate").value(i) * 60).isCloseTo(Double.parseDouble(row[1]), within(1e-9));
            assertThat(named(ride, "cadence").value(i) * 60).isCloseTo(Double.parseDouble(row[2]), within(1e-9));
            assertThat(named(ride, "speed").value(i)).isEqualTo(Double.parseDouble(row[3]));
            assertThat(named(ride, "distance").value(i)).isEqualTo(Double.parseDouble(row[4]));
            assertThat(named(ride, "position_lat").value(i) * 0x8000_0000L / 180)
                    .isCloseTo(Double.parseDouble(row[5]), within(1e-6));
            assertThat(named(ride, "position_long").value(i) * 0x8000_0000L / 180)
                    .isCloseTo(Double.parseDouble(row[6]), within(1e-6));
            assertThat(named(ride, "altitude").value(i)).isCloseTo(Double.parseDouble(row[7]), within(1e-9));
            assertThat(named(ride, "temperature").value(i) - 273.15)
                    .isCloseTo(Double.parseDouble(row[8]), within(1e-9));
        }
    }

    @Test
    void compressedTimesAndPackedDistancesAreDecodedAsAnotherLibraryDoes() {
        Recording run = resource("run_compressed_timestamps.fit");
        List<String[]> rows = rows("run_compressed_timestamps_decoded.csv");
        Channel distance = named(run, "distance");
        Channel cadence = named(run, "cadence");
        // The file's first record holds nothing but its time, and is not among the rows.
        long first = 17_217_864L;
        assertThat(distance.size()).isEqualTo(rows.size());
        for (int i = 0; i < rows.size(); i++) {
            String[] row = rows.get(i);
            assertThat(distance.timeS(i)).isEqualTo(Long.parseLong(row[0]) - first);
            assertThat(named(run, "heart_rate").value(i) * 60).isCloseTo(Double.parseDouble(row[1]), within(1e-9));
            assertThat(named(run, "speed").value(i)).isEqualTo(Double.parseDouble(row[2]));
            assertThat(distance.value(i)).isEqualTo(Double.parseDouble(row[3]));
            int at = cadence.indexAtOrAfter(distance.timeS(i));
            if (!row[4].equals("null")) {
                assertThat(cadence.timeS(at)).isEqualTo(distance.timeS(i));
                assertThat(cadence.value(at) * 60).isCloseTo(Double.parseDouble(row[4]), within(1e-9));
            }
        }
    }

    @Test
    void textWithoutAnEndAndManyApplicationsAreRead() {
        Recording ride = resource("trainer_devfields_unterminated_strings.fit");
        assertThat(ride.device()).isEqualTo("ELEMNT ROAM");
        assertThat(named(ride, "heart_rate").source()).isEqualTo("heart-rate sensor, Heartrate");
        // Without a position no distance comes of a track.
        assertThat(ride.track()).isEqualTo(Track.NONE);
    }

    static Stream<Known> known() {
        return SharedRecordings.knownIn("fit").filter(known -> !known.item().startsWith("part file 1: part "));
    }

    @ParameterizedTest(allowZeroInvocations = true)
    @MethodSource("known")
    void agreesWithWhatIsKnown(Known known) {
        if (known.file().contains("locations")) {
            assertThat(Decode.refusal(SharedRecordings.decode(known.file())).code())
                    .isEqualTo("not-an-activity");
            return;
        }
        Recording recording = SharedRecordings.recording(known.file());
        switch (known.item().replace("part file 1: ", "")) {
            case "FIT files in the file" ->
                assertThat(recording.counts()).containsEntry("parts", Long.parseLong(known.value()));
            case "header size / header CRC / file CRC" ->
                assertThat(recording.findings())
                        .noneMatch(finding -> finding.code().contains("checksum"));
            case "definitions little / big endian / with developer fields" -> definitions(known, recording);
            case "records / with position / compressed headers" ->
                counted(known, recording, "records", "positions", "compressed-headers");
            case "path length" ->
                assertThat(bridged(recording.track())).isCloseTo(known.number(), within(known.tolerance(1e-4)));
            case "span of times" -> {
                Channel record = recording.channels().stream()
                        .filter(channel -> channel.kind() == ChannelKind.DISTANCE
                                || channel.name().equals("altitude"))
                        .findFirst()
                        .orElseThrow();
                double whole = record.timeS(record.size() - 1) - record.timeS(0);
                assertThat(Math.max(whole, known.file().contains("camera") ? 0 : recording.spanS()))
                        .isEqualTo(known.number());
            }
            case "repeated times" ->
                assertThat(Decode.finding(recording, "repeated-time").message()).startsWith(known.value() + " ");
            case "last distance field" -> {
                Channel distance = recording.channel(ChannelKind.DISTANCE).orElseThrow();
                assertThat(distance.value(distance.size() - 1)).isEqualTo(known.number());
            }
            case "largest speed, device" -> {
                if (recording.channel(ChannelKind.SPEED).isPresent()) {
                    double largest = Arrays.stream(named(recording, "speed").values())
                            .max()
                            .orElseThrow();
                    // The device takes the largest of what it did not record as well.
                    assertThat(largest).isBetween(known.number() * 0.96, known.number() * 1.0001);
                }
            }
            case "timer time, device" -> timer(known, recording);
            case "largest power, device" ->
                assertThat(Arrays.stream(named(recording, "power").values())
                                .max()
                                .orElseThrow())
                        .isCloseTo(known.number(), within(3.0));
            // By the maker's own definitions of distance, ascent and means, which the records alone do not give.
            case "elapsed time, device",
                    "distance, device",
                    "mean speed, device",
                    "ascent, device",
                    "descent, device",
                    "mean power, device" -> assertThat(known.by()).startsWith("device");
            default -> throw new AssertionError("nobody has decided about " + known);
        }
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

    @Test
    void pausesMakeTheSegmentsThatAnIndependentConverterMakes() {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no real recordings");
        Recording ride = SharedRecordings.recording("fit/bike_smart_60min_auto_pause_25km.fit");
        Recording converted = SharedRecordings.recording("gpx/bike_smart_60min_8_segments_converted_from_fit.gpx");
        assertThat(ride.segments()).isEqualTo(converted.segments());
        assertThat(ride.track().lengthM().orElseThrow())
                .isCloseTo(converted.track().lengthM().orElseThrow(), within(0.1));
    }

    @Test
    void theCamerasClockIsThatOfItsSatellites() {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no real recordings");
        Recording camera = SharedRecordings.recording("fit/action_camera_gps10hz_imu.fit");
        // SOURCES.md: 1419 satellite messages, 692 blocks of 30 samples; the file's name says 19:33:04 local time.
        assertThat(camera.channel(ChannelKind.SPEED).orElseThrow().size()).isEqualTo(1419);
        assertThat(camera.channel(ChannelKind.ACCELERATION_X).orElseThrow().size())
                .isEqualTo(692 * 30);
        assertThat(camera.start().orElseThrow()).hasToString("2017-06-28T02:33:05.306Z");
        double[] gravity = new double[3];
        ChannelKind[] axes = {ChannelKind.ACCELERATION_X, ChannelKind.ACCELERATION_Y, ChannelKind.ACCELERATION_Z};
        for (int axis = 0; axis < 3; axis++) {
            gravity[axis] = Arrays.stream(
                            camera.channel(axes[axis]).orElseThrow().values())
                    .limit(3000)
                    .average()
                    .orElseThrow();
        }
        double size = Math.sqrt(gravity[0] * gravity[0] + gravity[1] * gravity[1] + gravity[2] * gravity[2]);
        assertThat(size).isCloseTo(9.80665, within(0.15));
    }
}
