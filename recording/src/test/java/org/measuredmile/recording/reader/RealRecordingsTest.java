package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Inspection;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Decoding.Refused;
import org.measuredmile.recording.reader.SharedRecordings.Known;

/// Every real recording against what other libraries and the data sets' authors say of it.
///
/// Expected values: the collection's EXPECTED.csv, whose column `computed_by` names the library or author of each.
class RealRecordingsTest {
    /// What cannot be a recording, and the reason that must be given.
    private static final Map<String, String> REFUSED = Map.of(
            "gpx/route_only_55_points.gpx", "no-track",
            "gpx/waypoints_only_82.gpx", "no-track",
            "gpx/utf8_bom_no_namespace.gpx", "no-track",
            "gpx/coordinates_not_numbers.gpx", "no-samples",
            "nmea/void_fix_only.nmea", "no-fix",
            "rig/drag_test_table.txt", "no-table",
            "rig/stopping_distance_50_cars_1920s.csv", "no-times");

    /// By these the values were computed in a way that this reader can be held to; the rest is by other definitions
    /// (gpxpy's ascent smooths, the authors' durations count recorded seconds).
    private static final Set<String> COMPARABLE = Set.of(
            "xml.etree",
            "pyproj Geod WGS84",
            "own count",
            "own NMEA reader",
            "own parser",
            "numpy trapezoid",
            "numpy median",
            "numpy max",
            "pandas max",
            "pandas sum",
            "trapezoid");

    private static final String ZEROS = "tcx/coordinates_zero_and_not_numbers.tcx";

    static List<String> files() {
        return SharedRecordings.files();
    }

    static Stream<Known> known() {
        return SharedRecordings.known().stream()
                .filter(known -> COMPARABLE.contains(known.by()) && !REFUSED.containsKey(known.file()));
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
    @MethodSource("known")
    void agreesWithWhatIsKnown(Known known) {
        Recording recording = known.file().startsWith("csv-power")
                        && known.item().startsWith("2020")
                ? SharedRecordings.recording(
                        known.file(),
                        SharedRecordings.linesWith(known.file(), known.item().substring(0, 10), true))
                : SharedRecordings.recording(known.file());
        String item = known.item().replaceFirst("^2020-\\d\\d-\\d\\d ", "");
        assertThat(check(item, known, recording))
                .as(known + " is compared or set aside")
                .isTrue();
    }

    /// Compares one value; false for an item that nobody has decided about.
    private static boolean check(String item, Known known, Recording recording) {
        switch (item) {
            case "tracks / segments / points / waypoints / routes" -> counts(known, recording);
            case "path length", "path length, GGA", "apparent path" -> {
                // By its one step from 0, 0, which is no place here but a receiver without a fix.
                if (!known.file().equals(ZEROS)) {
                    near(recording.track().lengthM().orElse(0), known, 0.005);
                }
            }
            case "path length, RMC" -> {
                byte[] rmc = SharedRecordings.linesWith(known.file(), "RMC", false);
                near(
                        SharedRecordings.recording(known.file(), rmc)
                                .track()
                                .lengthM()
                                .orElse(0),
                        known,
                        0.005);
            }
            case "span of times", "elapsed time", "duration" -> near(recording.spanS(), known, 0.0001);
            case "rows", "Fix lines" -> assertThat(recording.samples()).isEqualTo(Long.parseLong(known.value()));
            case "Raw lines" ->
                assertThat(recording.counts()).containsEntry("lines-raw", Long.parseLong(known.value()));
            case "sentences" -> sentences(known, recording);
            case "wrong checksum / no checksum / unreadable lines" -> checksums(known, recording);
            case "sentences with a wrong checksum" ->
                assertThat(recording.counts()).containsEntry("wrong-checksum", Long.parseLong(known.value()));
            case "repeated times" -> noticed("repeated-time", known, recording);
            case "points without time" -> noticed("no-time", known, recording);
            case "points at 0/0" -> noticed("zero-coordinates", known, recording);
            case "empty segments" -> noticed("empty-segment", known, recording);
            case "time steps back" ->
                assertThat(recording.findings()).anyMatch(each -> each.code().equals("blocks-reordered"));
            case "steps not positive" ->
                assertThat(recording.samples() - recording.timesS().length).isEqualTo(Long.parseLong(known.value()));
            case "gaps over 1 s" ->
                assertThat(Inspection.of(recording, List.of()).gaps()).hasSize(Integer.parseInt(known.value()));
            default -> {
                return channels(item, known, recording);
            }
        }
        return true;
    }

    private static boolean channels(String item, Known known, Recording recording) {
        if (known.file().startsWith("tcx/")) {
            return TcxKnown.check(item, known, recording);
        }
        switch (item) {
            case "largest speed", "largest speed, RMC", "largest surface speed", "largest reported speed" ->
                near(largest(channel(recording, ChannelKind.SPEED)) * perMps(known), known, 0.0005);
            case "largest bus speed" -> near(largest(speedNamed(recording, "Speed")) * perMps(known), known, 0.0005);
            case "largest GNSS speed" ->
                near(largest(speedNamed(recording, "GpsSpeed")) * perMps(known), known, 0.0005);
            case "distance, vehicle bus" -> near(sumOverSeconds(speedNamed(recording, "Speed")), known, 0.005);
            case "distance, GNSS speed" -> near(sumOverSeconds(speedNamed(recording, "GpsSpeed")), known, 0.005);
            case "well-formed XML" ->
                assertThat(recording.findings()).anyMatch(each -> each.code().equals("ill-formed"));
            case "distance", "roller distance", "distance from RMC speed" -> {
                // The one with late sentences is a trapezoid in file order there, in order of time
                // here: at rest, so that 0.2 m is all there is between them.
                double slack = known.file().contains("subsecond") ? 0.25 : 0.005;
                near(trapezoid(channel(recording, ChannelKind.SPEED)), known, slack);
            }
            case "last distance" ->
                near(
                        channel(recording, ChannelKind.DISTANCE)
                                .values()[
                                channel(recording, ChannelKind.DISTANCE).size() - 1],
                        known,
                        1e-6);
            case "largest power" -> near(largest(channel(recording, ChannelKind.POWER)), known, 1e-6);
            case "GNSS epochs" ->
                assertThat(channel(recording, ChannelKind.SPEED).size()).isEqualTo(Integer.parseInt(known.value()));
            case "GNSS rows" ->
                assertThat(channel(recording, ChannelKind.LATITUDE).size()).isEqualTo(Integer.parseInt(known.value()));
            case "largest rate" ->
                near(Math.toDegrees(largest(channel(recording, ChannelKind.TURN_RATE_Y))), known, 0.0005);
            case "median step" ->
                assertThat(channel(recording, ChannelKind.TURN_RATE_X).medianStepS())
                        .isCloseTo(known.number(), within(2e-6));
            case "state of charge at start" ->
                near(channel(recording, ChannelKind.STATE_OF_CHARGE).value(0) * 100, known, 1e-6);
            case "state of charge at end" -> {
                Channel charge = channel(recording, ChannelKind.STATE_OF_CHARGE);
                near(charge.value(charge.size() - 1) * 100, known, 1e-6);
            }
            // Of the file's own positions, times of day and other tables; said by other values already.
            case "first / last time, GGA",
                    "first / last time, RMC",
                    "repeated positions",
                    "points without elevation",
                    "work" -> {
                return true;
            }
            default -> {
                return false;
            }
        }
        return true;
    }

    private static void near(double value, Known known, double share) {
        assertThat(value).as(known.toString()).isCloseTo(known.number(), within(known.tolerance(share)));
    }

    private static void counts(Known known, Recording recording) {
        String[] parts = known.value().split(" / ");
        String[] names = {"tracks", "segments", "points", "waypoints", "routes"};
        for (int i = 0; i < names.length; i++) {
            assertThat(recording.counts()).as(known.file()).containsEntry(names[i], Long.parseLong(parts[i]));
        }
        assertThat(recording.samples()).isEqualTo(Long.parseLong(parts[2]));
    }

    private static void sentences(Known known, Recording recording) {
        String[] parts = known.value().split(" ");
        long wrong = recording.counts().getOrDefault("wrong-checksum", 0L);
        for (int i = 0; i < parts.length; i += 2) {
            long dropped = parts[i].equals("RMC") ? wrong : 0;
            assertThat(recording.counts()).containsEntry(parts[i], Long.parseLong(parts[i + 1]) - dropped);
        }
    }

    private static void checksums(Known known, Recording recording) {
        String[] parts = known.value().split(" / ");
        assertThat(recording.counts())
                .containsEntry("wrong-checksum", Long.parseLong(parts[0]))
                .containsEntry("no-checksum", Long.parseLong(parts[1]))
                .containsEntry("unreadable", Long.parseLong(parts[2]));
    }

    private static void noticed(String code, Known known, Recording recording) {
        assertThat(recording.findings())
                .as(known.toString())
                .anyMatch(finding ->
                        finding.code().equals(code) && finding.message().startsWith(known.value() + " "));
    }

    private static Channel channel(Recording recording, ChannelKind kind) {
        return recording.channel(kind).orElseThrow(() -> new AssertionError(recording.name() + " has no " + kind));
    }

    private static Channel speedNamed(Recording recording, String name) {
        return recording.channels().stream()
                .filter(channel ->
                        channel.kind() == ChannelKind.SPEED && channel.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static double largest(Channel channel) {
        return Arrays.stream(channel.values()).map(Math::abs).max().orElseThrow();
    }

    private static double sumOverSeconds(Channel speed) {
        return Arrays.stream(speed.values()).sum();
    }

    private static double trapezoid(Channel speed) {
        double sumM = 0;
        for (int i = 1; i < speed.size(); i++) {
            sumM += (speed.value(i) + speed.value(i - 1)) / 2 * (speed.timeS(i) - speed.timeS(i - 1));
        }
        return sumM;
    }

    private static double perMps(Known known) {
        return known.unit().equals("km/h") ? 3.6 : 1;
    }

    @ParameterizedTest(allowZeroInvocations = true)
    @MethodSource("gpxDurations")
    void segmentsAddUpToTheDurationOfAnIndependentLibrary(Known known) {
        // gpxpy 1.5.0 get_duration: the sum over segments of last minus first time.
        Recording recording = SharedRecordings.recording(known.file());
        double sumS = 0;
        for (Segment segment : recording.segments()) {
            sumS += segment.toS() - segment.fromS();
        }
        assertThat(sumS).isCloseTo(known.number(), within(0.01));
    }

    static Stream<Known> gpxDurations() {
        return SharedRecordings.known().stream()
                .filter(known -> known.item().equals("duration") && known.by().startsWith("gpxpy"));
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
        assertThat(channel(roller, ChannelKind.FORCE).size()).isEqualTo(7523);
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
