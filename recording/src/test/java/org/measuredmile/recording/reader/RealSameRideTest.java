package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.check.DayChecks;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.reader.Decoding.Decoded;

/// Real rides that the collection holds in two formats, and all that it holds but once.
///
/// Source: the collection's SOURCES.md names which file was converted from which.
class RealSameRideTest {
    private static DayChecks checks(List<String> files) {
        var recordings = new TreeMap<String, Recording>();
        for (String file : files) {
            if (SharedRecordings.decode(file) instanceof Decoded(Recording recording)) {
                recordings.put(recording.name(), recording);
            }
        }
        LocalDate date = recordings.values().stream()
                .flatMap(recording -> recording.start().stream())
                .findFirst()
                .map(start -> start.atZone(ZoneOffset.UTC).toLocalDate())
                .orElse(LocalDate.EPOCH);
        return DayChecks.of(day(date), recordings, new TreeMap<>());
    }

    private static TestDay day(LocalDate date) {
        return new TestDay(
                "day",
                date,
                ZoneOffset.UTC,
                "",
                "bike",
                Configuration.UNKNOWN,
                List.of(),
                List.of(),
                Optional.empty(),
                Conditions.UNKNOWN,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    @ParameterizedTest
    @CsvSource({
        "tcx/bike_1hz_30min_2_laps_speed_ext.tcx, gpx/bike_1hz_30min_converted_from_tcx.gpx",
        "nmea/road_1hz_20min.nmea, gpx/road_1hz_20min_converted_from_nmea.gpx",
        "fit/bike_smart_60min_auto_pause_25km.fit, gpx/bike_smart_60min_8_segments_converted_from_fit.gpx"
    })
    void aConversionIsLeftOutAndTheOriginalUsed(String original, String converted) {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no real recordings");
        DayChecks checks = checks(List.of(original, converted));
        assertThat(checks.leftOut()).containsExactly(converted.substring(converted.indexOf('/') + 1));
    }

    @Test
    void noOtherTwoRecordingsAreTakenForOne() {
        assumeTrue(SharedRecordings.folder().isPresent(), "skipped: no real recordings");
        DayChecks checks = checks(SharedRecordings.files());
        var same = new ArrayList<String>();
        checks.byFile()
                .forEach((file, findings) -> findings.stream()
                        .filter(finding ->
                                finding.code().equals("same-ride") && finding.level() == Finding.Level.WARNING)
                        .forEach(finding -> same.add(file)));
        assertThat(same)
                .contains("bike_1hz_30min_converted_from_tcx.gpx", "road_1hz_20min_converted_from_nmea.gpx")
                .isSubsetOf(
                        "bike_1hz_30min_converted_from_tcx.gpx",
                        "road_1hz_20min_converted_from_nmea.gpx",
                        "bike_smart_60min_8_segments_converted_from_fit.gpx",
                        // The same walk with and without heights, and with times removed.
                        "eight_tracks_almost_no_time.gpx",
                        "eight_tracks_no_elevation.gpx",
                        "eight_tracks_empty_segment_waypoints.gpx");
    }
}
