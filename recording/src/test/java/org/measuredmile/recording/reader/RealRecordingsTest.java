package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Inspection;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Decoding.Refused;

/// Every real recording: what it is decoded as, or why it is refused. Its known values are held in [ExpectedTableTest].
class RealRecordingsTest {
    /// What cannot be a recording, and the reason that must be given.
    static final Map<String, String> REFUSED = Map.of(
            "gpx/route_only_55_points.gpx", "no-track",
            "gpx/waypoints_only_82.gpx", "no-track",
            "gpx/utf8_bom_no_namespace.gpx", "no-track",
            "gpx/coordinates_not_numbers.gpx", "no-samples",
            "nmea/void_fix_only.nmea", "no-fix",
            "rig/drag_test_table.txt", "no-table",
            "rig/stopping_distance_50_cars_1920s.csv", "no-times");

    static List<String> files() {
        return SharedRecordings.files();
    }

    @Test
    void theRealRecordingsAreThere() {
        assumeTrue(
                SharedRecordings.folder().isPresent(),
                "skipped: no folder shared/recordings above the working directory, so no real recording is decoded");
        assertThat(SharedRecordings.files()).hasSizeGreaterThan(45);
    }

    @ParameterizedTest(allowZeroInvocations = true)
    @MethodSource("files")
    void isDecodedOrRefusedWithTheRightReason(String file) {
        String reason = REFUSED.get(file);
        switch (SharedRecordings.decode(file)) {
            case Decoded(Recording recording) -> {
                assertThat(reason).as(file).isNull();
                assertThat(recording.format().name()).isEqualTo(formatOf(file));
                assertThat(recording.channels()).isNotEmpty();
            }
            case Refused refused -> {
                Finding first = refused.findings().getFirst();
                assertThat(first.level()).isEqualTo(Finding.Level.REFUSED);
                assertThat(first.code()).as(first.line()).isEqualTo(reason);
                assertThat(first.remedy()).isNotEmpty();
            }
        }
    }

    private static String formatOf(String file) {
        return switch (file.substring(0, file.indexOf('/'))) {
            case "gpx" -> "GPX";
            case "tcx" -> "TCX";
            case "nmea" -> "NMEA";
            default -> "DELIMITED";
        };
    }

    @ParameterizedTest(allowZeroInvocations = true)
    @MethodSource("files")
    void timeAlwaysGoesForwardAndNothingIsInvented(String file) {
        if (SharedRecordings.decode(file) instanceof Decoded(Recording recording)) {
            ReaderContract.holds(recording);
        }
    }

    @Test
    void theCarsTrackAndSpeedAreReportedToDisagree() {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no real recordings");
        Recording car = SharedRecordings.recording("csv-imu/car_216s_gnss10hz_imu50hz.csv");
        // 1763 m by positions, 1665 m by speed: SOURCES.md of the collection. Of these 4 m and 2 m come while it
        // stands, which SOURCES.md does not take off.
        assertThat(Inspection.of(car, List.of()).findings())
                .anyMatch(finding -> finding.code().equals("distances-disagree")
                        && finding.message().contains("1759 m (and 4 m while standing)")
                        && finding.message().contains("1663 m"));
    }

    @Test
    void brokenXmlGivesWhatCameBeforeAndTheLineWhereItBreaks() {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no real recordings");
        Recording recording = SharedRecordings.recording("gpx/invalid_xml_mismatched_tag.gpx");
        assertThat(recording.timesS()).hasSize(2);
        // xml.etree: mismatched tag: line 39.
        assertThat(Decode.finding(recording, "ill-formed").place().where()).isEqualTo("line 39");
    }

    @Test
    void theRollersHeadSaysMillisecondsButItsTimesAreSeconds() {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no real recordings");
        Recording roller = SharedRecordings.recording("rig/roller_rig_100hz_decimal_comma.csv");
        assertThat(roller.findings()).anyMatch(finding -> finding.code().equals("time-unit"));
        assertThat(roller.channel(ChannelKind.FORCE).orElseThrow().size()).isEqualTo(7523);
    }

    @Test
    void anOlderBlockAfterANewerOneIsPutInOrder() {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no real recordings");
        Recording logger = SharedRecordings.recording("csv-gnss/logger_padded_cells_time_reversal.csv");
        assertThat(logger.timesS()).hasSize(21);
        assertThat(logger.findings()).anyMatch(finding -> finding.code().equals("blocks-reordered"));
    }

    @Test
    void theDateAtTheEndHoldsForThePartBeforeMidnight() {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no real recordings");
        Recording drive = SharedRecordings.recording("nmea/gga_only_over_midnight_date_at_end.nmea");
        assertThat(drive.start().orElseThrow()).hasToString("2019-03-08T23:56:00Z");
        assertThat(drive.spanS()).isEqualTo(499);
    }
}
