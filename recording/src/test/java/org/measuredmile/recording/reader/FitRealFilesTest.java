package org.measuredmile.recording.reader;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Track;

/// Real FIT files against what is known of them.
///
/// Sources: two files as dtcooper/python-fitparse decodes them, which lie beside the files; the collection's
/// SOURCES.md.
/// The rows of EXPECTED.csv are held in [ExpectedTableTest].
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
        // As long as the file says, and not into the bytes behind a text that has no end.
        assertThat(ride.device()).isNotBlank().hasSizeLessThan(24).matches("[ -~]+");
        assertThat(named(ride, "heart_rate").source()).isEqualTo("heart-rate sensor, Heartrate");
        // Without a position no distance comes of a track.
        assertThat(ride.track()).isEqualTo(Track.NONE);
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
