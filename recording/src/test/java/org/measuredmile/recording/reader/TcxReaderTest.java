package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.recording.reader.Decode.finding;
import static org.measuredmile.recording.reader.Decode.recording;
import static org.measuredmile.recording.reader.Decode.refusal;
import static org.measuredmile.recording.reader.Decode.resource;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;

class TcxReaderTest {
    private static String activity(String laps) {
        return "<?xml version=\"1.0\"?>\n<TrainingCenterDatabase><Activities><Activity Sport=\"Biking\">\n" + laps
                + "<Creator><Name>box</Name></Creator></Activity></Activities>"
                + "<Author><Name>a program</Name></Author></TrainingCenterDatabase>\n";
    }

    private static String lap(String track) {
        return "<Lap StartTime=\"2031-05-04T10:15:00Z\"><TotalTimeSeconds>1.5</TotalTimeSeconds>"
                + "<DistanceMeters>7.25</DistanceMeters>\n" + track + "</Lap>\n";
    }

    private static String track(String points) {
        return "<Track>\n" + points + "</Track>\n";
    }

    private static String point(int second, String more) {
        return "<Trackpoint><Time>2031-05-04T10:15:0" + second + "Z</Time>" + more + "</Trackpoint>\n";
    }

    private static String at(double north) {
        return "<Position><LatitudeDegrees>" + north
                + "</LatitudeDegrees><LongitudeDegrees>6.5</LongitudeDegrees></Position>";
    }

    @Test
    void pointsHaveTheirValuesByPlaceAndTheirExtensionsUnderAnyPrefix() {
        String more = at(51.5)
                + "<AltitudeMeters>58.25</AltitudeMeters><DistanceMeters>12.5</DistanceMeters>"
                + "<HeartRateBpm><Value>120</Value></HeartRateBpm><Cadence>60</Cadence><Extensions>"
                + "<q:TPX xmlns:q=\"u:q\"><q:Speed>5.5</q:Speed><Watts>210</Watts></q:TPX></Extensions>";
        Recording ride = recording("r.tcx", activity(lap(track(point(0, more) + point(1, at(51.6))))));
        assertThat(ride.device()).isEqualTo("box");
        assertThat(first(ride, ChannelKind.LATITUDE)).isEqualTo(51.5);
        assertThat(first(ride, ChannelKind.LONGITUDE)).isEqualTo(6.5);
        assertThat(first(ride, ChannelKind.ALTITUDE)).isEqualTo(58.25);
        assertThat(first(ride, ChannelKind.DISTANCE)).isEqualTo(12.5);
        assertThat(first(ride, ChannelKind.HEART_RATE)).isEqualTo(2);
        assertThat(first(ride, ChannelKind.CADENCE)).isEqualTo(1);
        assertThat(first(ride, ChannelKind.SPEED)).isEqualTo(5.5);
        assertThat(first(ride, ChannelKind.POWER)).isEqualTo(210);
        assertThat(ride.counts())
                .containsEntry("activities", 1L)
                .containsEntry("laps", 1L)
                .containsEntry("tracks", 1L)
                .containsEntry("points", 2L);
    }

    private static double first(Recording ride, ChannelKind kind) {
        return ride.channel(kind).orElseThrow().value(0);
    }

    @Test
    void runCadenceIsCadenceWhereThereIsNoOther() {
        String more = "<Extensions><x:TPX><x:RunCadence>90</x:RunCadence></x:TPX></Extensions>";
        Recording ride = recording("r.tcx", activity(lap(track(point(0, at(1) + more)))));
        assertThat(first(ride, ChannelKind.CADENCE)).isEqualTo(1.5);
    }

    @Test
    void lapsAreMarksWithTheirTotalsInWordsAndTracksAreSegments() {
        String text = activity(lap(track(point(0, at(1)) + point(1, at(2))) + track(point(3, at(3))))
                + lap(track(point(4, at(4)) + point(6, at(5)))));
        Recording ride = recording("r.tcx", text);
        assertThat(ride.marks())
                .containsExactly(
                        new Mark(Mark.Kind.LAP, 0, 3, "1.5 s, 7.25 m"), new Mark(Mark.Kind.LAP, 4, 6, "1.5 s, 7.25 m"));
        assertThat(ride.segments()).containsExactly(new Segment(0, 1), new Segment(3, 3), new Segment(4, 6));
        assertThat(ride.channel(ChannelKind.DISTANCE)).isEmpty();
    }

    @Test
    void lapsThatClaimMoreTimeThanThePointsCoverAreToldAndNotAdded() {
        Recording ride = recording(Decode.bytes("o.tcx", resource("bike_1hz_offset_timezone_hr.tcx")));
        // 2283 s of lap, 463 s of points, times of day with +01:00: SOURCES.md of the collection.
        assertThat(finding(ride, "lap-totals").message()).contains("2283.0 s").contains("463.0 s");
        assertThat(ride.spanS()).isEqualTo(463);
        assertThat(ride.start().orElseThrow()).hasToString("2020-12-27T14:59:36Z");
        assertThat(ride.zoneStated()).isTrue();
    }

    @Test
    void pointsWithNothingButATimeAreOnePauseUntilTheNextThatHoldsAnything() {
        String text = activity(lap(track(point(0, at(1)) + point(1, "")) + track(point(2, "") + point(3, at(2)))));
        Recording ride = recording("r.tcx", text);
        assertThat(ride.marks(Mark.Kind.PAUSE)).containsExactly(new Mark(Mark.Kind.PAUSE, 1, 3, ""));
        assertThat(ride.timesS()).containsExactly(0, 1, 2, 3);
    }

    @Test
    void aPointWithoutPositionThatHoldsAValueIsNoPause() {
        Recording ride = recording(Decode.bytes("g.tcx", resource("bike_power_cadence_66min_gap.tcx")));
        // 317 points, one without position, 313 with power, 316 with cadence: own count of the collection.
        assertThat(ride.marks(Mark.Kind.PAUSE)).isEmpty();
        assertThat(ride.channel(ChannelKind.LATITUDE).orElseThrow().size()).isEqualTo(316);
        assertThat(ride.channel(ChannelKind.POWER).orElseThrow().size()).isEqualTo(313);
        assertThat(ride.channel(ChannelKind.CADENCE).orElseThrow().size()).isEqualTo(316);
        // 1792.3 m: pyproj Geod WGS84.
        assertThat(ride.track().lengthM().orElseThrow()).isCloseTo(1792.3, within(0.06));
    }

    @Test
    void anAbsentSensorGivesNoCadence() {
        String more = at(1) + "<Cadence>0</Cadence><SensorState>Absent</SensorState>";
        String present = at(2) + "<Cadence>0</Cadence><SensorState>Present</SensorState>";
        Recording ride = recording("r.tcx", activity(lap(track(point(0, more) + point(1, present)))));
        Channel cadence = ride.channel(ChannelKind.CADENCE).orElseThrow();
        assertThat(cadence.timesS()).containsExactly(1);
        assertThat(finding(ride, "sensor-absent").message()).startsWith("1 points");
    }

    @Test
    void aDistanceThatStepsBackIsToldAndKept() {
        String text = activity(lap(track(point(0, "<DistanceMeters>5</DistanceMeters>")
                + point(1, "<DistanceMeters>4.5</DistanceMeters>")
                + point(2, "<DistanceMeters>6</DistanceMeters>"))));
        Recording ride = recording("r.tcx", text);
        assertThat(finding(ride, "distance-back").message())
                .startsWith("1 steps")
                .contains("from 5.0 m to 4.5 m");
        assertThat(finding(ride, "distance-back").place().where()).isEqualTo("line 6");
        assertThat(ride.channel(ChannelKind.DISTANCE).orElseThrow().values()).containsExactly(5, 4.5, 6);
    }

    @Test
    void aPlannedCourseIsReadButNothingMayComeOfIt() {
        String text = "<TrainingCenterDatabase><Courses><Course><Name>loop</Name><Lap><TotalTimeSeconds>1"
                + "</TotalTimeSeconds></Lap><Track>" + point(0, at(1)) + point(1, at(2)) + "</Track>"
                + "<CoursePoint><Name>bend</Name><Time>2031-05-04T10:15:01Z</Time></CoursePoint>"
                + "</Course></Courses></TrainingCenterDatabase>";
        Recording plan = recording("r.tcx", text);
        assertThat(finding(plan, "planned-course").level()).isEqualTo(Finding.Level.REFUSED);
        assertThat(plan.mayGiveFigures()).isFalse();
        assertThat(plan.marks()).containsExactly(new Mark(Mark.Kind.POINT, 1, 1, "bend"));
    }

    @Test
    void zerosAndWordsForCoordinatesAndLapsThatRepeatTheWholeAreTold() {
        Recording ride = recording(Decode.bytes("z.tcx", resource("coordinates_zero_and_not_numbers.tcx")));
        assertThat(finding(ride, "zero-coordinates").place().where()).isEqualTo("line 13");
        assertThat(finding(ride, "bad-coordinates").message()).contains("no, undefined");
        assertThat(finding(ride, "repeated-time").message()).startsWith("1 samples");
        assertThat(finding(ride, "time-backwards").message()).startsWith("1 samples");
        assertThat(finding(ride, "lap-totals").message()).contains("4566.0 s").contains("1.0 s");
        assertThat(ride.track().lengthM().orElse(0)).isZero();
        assertThat(ride.mayGiveFigures()).isTrue();
    }

    @Test
    void timesWithoutAZoneAreReadAsUtcAndSaidToBe() {
        String bare = "<Trackpoint><Time>2031-05-04T10:15:00.5</Time>" + at(1) + "</Trackpoint>";
        Recording ride = recording("r.tcx", activity(lap(track(bare + point(1, at(2))))));
        assertThat(ride.zoneStated()).isFalse();
        assertThat(ride.timesS()).containsExactly(0, 0.5);
        assertThat(finding(ride, "zone-not-stated").level()).isEqualTo(Finding.Level.WARNING);
    }

    @Test
    void aFileThatBreaksGivesWhatCameBeforeAndTheLine() {
        String whole = activity(lap(track(point(0, at(1)) + point(1, at(2)) + point(2, at(3)))));
        Recording cut = recording("r.tcx", whole.substring(0, whole.indexOf("10:15:02")));
        assertThat(cut.timesS()).containsExactly(0, 1);
        assertThat(finding(cut, "cut-off").place().where()).isEqualTo("line 7");
        assertThat(cut.marks(Mark.Kind.LAP)).hasSize(1);
        Recording ill = recording("r.tcx", whole.replace("<Time>2031-05-04T10:15:02Z</Time>", "<Time></Tim>"));
        assertThat(ill.timesS()).containsExactly(0, 1);
        assertThat(finding(ill, "ill-formed").place().where()).isEqualTo("line 7");
    }

    @Test
    void filesThatHoldNothingToReadAreRefused() {
        assertThat(refusal("r.tcx", "<kml><x/></kml>").code()).isEqualTo("not-tcx");
        assertThat(refusal("r.tcx", activity(lap(""))).code()).isEqualTo("no-track");
        String timeless = "<Trackpoint>" + at(1) + "</Trackpoint>";
        assertThat(refusal("r.tcx", activity(lap(track(timeless)))).code()).isEqualTo("no-times");
        assertThat(refusal("r.tcx", activity(lap(track(point(0, "") + point(1, "")))))
                        .code())
                .isEqualTo("no-samples");
    }

    @Test
    void anEmptyTrackIsAnEmptySegment() {
        Recording ride = recording("r.tcx", activity(lap(track("") + track(point(0, at(1)) + point(1, at(2))))));
        assertThat(finding(ride, "empty-segment").message()).startsWith("1 segments");
        assertThat(ride.findings()).extracting(Finding::level).isEqualTo(List.of(Finding.Level.NOTE));
    }
}
