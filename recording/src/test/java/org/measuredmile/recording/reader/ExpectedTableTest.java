package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Decoding.Refused;
import org.measuredmile.recording.reader.OtherDefinitions.Other;
import org.measuredmile.recording.reader.SharedRecordings.Known;

/// Every row of the collection's table of known values: met, or named as of another definition, or of a file that is no
/// recording and says so.
///
/// Source of each value: the table's column `computed_by`.
class ExpectedTableTest {
    /// Files of the table that are no recording, and the reason that must be given.
    private static final Map<String, String> REFUSED = refused();

    private static Map<String, String> refused() {
        Map<String, String> all = new HashMap<>(RealRecordingsTest.REFUSED);
        all.put("fit/locations_only_not_an_activity.fit", "not-an-activity");
        return all;
    }

    static Stream<Known> rows() {
        return SharedRecordings.rows().stream();
    }

    static List<Other> others() {
        return OtherDefinitions.ALL;
    }

    @Test
    void theTableIsThere() {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no folder shared/recordings above this one");
        assertThat(SharedRecordings.rows()).hasSizeGreaterThan(600);
    }

    @ParameterizedTest(allowZeroInvocations = true)
    @MethodSource("rows")
    void isMetOrOfAnotherDefinitionOrOfNoRecording(Known known) {
        String refusal = REFUSED.get(known.file());
        if (refusal != null) {
            assertThat(Decode.refusal(SharedRecordings.decode(known.file())).code())
                    .isEqualTo(refusal);
        } else if (OtherDefinitions.reason(known).isEmpty()) {
            assertThat(KnownValues.check(known))
                    .as(known + " by " + known.by() + " is covered by a definition")
                    .isTrue();
        }
    }

    @ParameterizedTest
    @MethodSource("others")
    void everyOtherDefinitionIsOfSomeRowAndOnThePage(Other other) throws IOException {
        assertThat(FormatPagesTest.pages()).contains("| " + other.reason() + " |");
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no folder shared/recordings above this one");
        assertThat(SharedRecordings.rows()).anyMatch(other::covers);
    }

    /// What is wrong with each broken file, where it says so first, and how many of its samples are kept.
    @ParameterizedTest
    @CsvSource({
        "gpx/invalid_xml_mismatched_tag.gpx, ill-formed, line 39, 2",
        "gpx/empty_ele_duplicate_point.gpx, repeated-time, line 9, 1",
        "gpx/all_zero_coordinates_hr_only.gpx, zero-coordinates, line 9, 15",
        "gpx/eight_tracks_almost_no_time.gpx, no-time, line 67, 5",
        "nmea/bad_checksum.nmea, wrong-checksum, line 1, 1",
        "nmea/truncated_end.nmea, cut-off, line 5, 1",
        "tcx/coordinates_zero_and_not_numbers.tcx, bad-coordinates, line 47, 2",
        "tcx/coordinates_zero_and_not_numbers.tcx, zero-coordinates, line 13, 2",
        "tcx/course_with_course_points.tcx, planned-course, line 13, 18",
        "csv-gnss/logger_padded_cells_time_reversal.csv, blocks-reordered, '', 21",
        "csv-imu/wheelchair_sprint_frame_400hz.csv, time-backwards, line 13148, 14103",
        "rig/roller_rig_100hz_decimal_comma.csv, time-unit, Timestamp (ms), 7523"
    })
    void aBrokenFileIsNamedWithItsPlaceAndWhatWasSaved(String file, String code, String where, int kept) {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no folder shared/recordings above this one");
        Recording recording = SharedRecordings.recording(file);
        Finding finding = Decode.finding(recording, code);
        assertThat(finding.place().source()).isEqualTo(recording.name());
        assertThat(finding.place().where()).isEqualTo(where);
        assertThat(recording.timesS()).hasSize(kept);
    }

    @ParameterizedTest
    @CsvSource({
        "gpx/route_only_55_points.gpx, 1 routes",
        "gpx/waypoints_only_82.gpx, 82 waypoints",
        "gpx/utf8_bom_no_namespace.gpx, 1 waypoints",
        "gpx/coordinates_not_numbers.gpx, none of 2 track points",
        "nmea/void_fix_only.nmea, no fix in any of 1 epochs",
        "fit/locations_only_not_an_activity.fit, saved locations",
        "rig/drag_test_table.txt, no rows of as many cells",
        "rig/stopping_distance_50_cars_1920s.csv, stopping_distance_ft"
    })
    void whatIsNoRecordingSaysWhatItHolds(String file, String words) {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no folder shared/recordings above this one");
        switch (SharedRecordings.decode(file)) {
            case Decoded decoded ->
                throw new AssertionError(
                        file + " was decoded: " + decoded.recording().counts());
            case Refused refused -> {
                Finding first = refused.findings().getFirst();
                assertThat(first.place().source()).isEqualTo(file.substring(file.indexOf('/') + 1));
                assertThat(first.message()).contains(words);
                assertThat(first.remedy()).isNotBlank();
            }
        }
    }
}
