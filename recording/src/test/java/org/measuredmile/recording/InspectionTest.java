package org.measuredmile.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class InspectionTest {
    private static Recording recording(double[] timesS, List<Segment> segments, Channel... channels) {
        return new Recording(
                "r",
                Format.DELIMITED,
                "",
                Optional.empty(),
                true,
                timesS.length,
                timesS,
                segments,
                List.of(channels),
                new TreeMap<>(),
                List.of());
    }

    private static Channel channel(ChannelKind kind, double[] timesS, double... values) {
        return new Channel(kind, kind.id(), "", new Channel.Series(timesS, values));
    }

    private static double[] seconds(int count) {
        double[] timesS = new double[count];
        Arrays.setAll(timesS, i -> i);
        return timesS;
    }

    private static Inspection inspect(Recording recording) {
        return Inspection.of(recording, List.of());
    }

    @Test
    void standingStillAddsNoRidingTimeAndNoDistance() {
        double[] timesS = seconds(5);
        Inspection ride = inspect(
                recording(timesS, List.of(new Segment(0, 4)), channel(ChannelKind.SPEED, timesS, 0, 0, 4, 4, 0)));
        assertThat(ride.clockSeconds()).isEqualTo(4);
        assertThat(ride.ridingSeconds()).hasValue(3);
        assertThat(ride.distanceMetres()).hasValue(8);
        assertThat(ride.distanceSource()).isEqualTo("speed integrated over time");
    }

    @Test
    void distanceIsNotBridgedOverAGapAndTheGapIsNamed() {
        double[] timesS = {0, 1, 2, 60, 61};
        Inspection ride = inspect(
                recording(timesS, List.of(new Segment(0, 61)), channel(ChannelKind.SPEED, timesS, 5, 5, 5, 5, 5)));
        assertThat(ride.distanceMetres()).hasValue(15);
        assertThat(ride.gaps()).containsExactly(new Inspection.Gap(2, 60));
    }

    @Test
    void aPauseBetweenSegmentsIsNoPartOfTheTrack() {
        double[] timesS = {0, 1, 2, 3};
        Recording ride = recording(
                timesS,
                List.of(new Segment(0, 1), new Segment(2, 3)),
                channel(ChannelKind.LATITUDE, timesS, 0, 0, 1, 1),
                channel(ChannelKind.LONGITUDE, timesS, 0, 1, 0, 1));
        // The equator's degree is pi/180 of a = 6 378 137 m (WGS-84, NIMA TR8350.2); the geodesic one degree
        // apart at latitude 1 is 111 302.65 m: GeographicLib's own figure, a pin.
        assertThat(inspect(ride).trackDistanceMetres().orElseThrow())
                .isCloseTo(Math.toRadians(6_378_137) + 111_302.65, within(0.05));
    }

    @Test
    void ascentCountsRisesAboveTheHysteresisOnly() {
        double[] timesS = seconds(7);
        Channel altitude = channel(ChannelKind.ALTITUDE, timesS, 100, 104, 99, 103, 115, 108, 96);
        assertThat(inspect(recording(timesS, List.of(new Segment(0, 6)), altitude))
                        .ascentMetres())
                .hasValue(15);
        Channel pressure = channel(ChannelKind.PRESSURE, timesS, 1, 1, 1, 1, 1, 1, 1);
        assertThat(inspect(recording(timesS, List.of(new Segment(0, 6)), altitude, pressure))
                        .ascentMetres())
                .hasValue(4 + 4 + 12);
    }

    @Test
    void aRatioOfUnitsBetweenTwoDistancesIsNamed() {
        double[] timesS = seconds(101);
        double[] speed = new double[101];
        double[] distance = new double[101];
        Arrays.fill(speed, 5);
        Arrays.setAll(distance, i -> i * 5 * 1.609344);
        Inspection ride = inspect(recording(
                timesS,
                List.of(new Segment(0, 100)),
                channel(ChannelKind.SPEED, timesS, speed),
                channel(ChannelKind.DISTANCE, timesS, distance)));
        assertThat(ride.findings())
                .anyMatch(finding -> finding.code().equals("distances-disagree")
                        && finding.message().contains("miles"));
    }

    @Test
    void aSpeedThatNeverChangesIsSaidToBeHeld() {
        double[] timesS = seconds(30);
        double[] speed = new double[30];
        Arrays.setAll(speed, i -> i < 10 ? 5 + i * 0.1 : i < 25 ? 6.0 : 7 - i * 0.01);
        Inspection ride =
                inspect(recording(timesS, List.of(new Segment(0, 29)), channel(ChannelKind.SPEED, timesS, speed)));
        assertThat(ride.findings())
                .anyMatch(finding -> finding.code().equals("stale-speed")
                        && finding.message().contains("14 s")
                        && finding.place().where().equals("10.0 s"));
    }
}
