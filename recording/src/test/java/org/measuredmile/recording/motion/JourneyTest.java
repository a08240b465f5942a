package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;

/// Rides of known length, cut into recordings.
class JourneyTest {
    private static final Instant BEGIN = Instant.parse("2031-05-14T08:00:00Z");
    private static final double METRES_PER_DEGREE_NORTH = 110_574 + 0.0;

    /// A ride at 6 m/s northward from the equator, one sample a second, between two of its seconds.
    private static Recording ride(String name, int fromS, int toS, boolean hasPositions, boolean hasStart) {
        int count = toS - fromS + 1;
        double[] times = new double[count];
        double[] speeds = new double[count];
        double[] north = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = i;
            speeds[i] = 6;
            north[i] = 6.0 * (fromS + i) / METRES_PER_DEGREE_NORTH;
        }
        return recording(name, fromS, times, speeds, hasPositions ? north : new double[0], hasStart);
    }

    private static Recording recording(
            String name, double fromS, double[] times, double[] speeds, double[] north, boolean hasStart) {
        var channels = new ArrayList<Channel>();
        channels.add(new Channel(ChannelKind.SPEED, "speed", "m/s", new Channel.Series(times, speeds)));
        if (north.length > 0) {
            channels.add(new Channel(ChannelKind.LATITUDE, "lat", "°", new Channel.Series(times, north)));
            channels.add(new Channel(
                    ChannelKind.LONGITUDE, "lon", "°", new Channel.Series(times, new double[times.length])));
        }
        return new Recording(
                name,
                Format.DELIMITED,
                "",
                hasStart ? Optional.of(BEGIN.plusMillis(Math.round(fromS * 1000))) : Optional.empty(),
                true,
                times.length,
                times,
                List.of(new Segment(0, times[times.length - 1])),
                channels,
                new TreeMap<>(),
                List.of());
    }

    private static Journey journey(Recording... recordings) {
        return Journey.of(java.util.Arrays.stream(recordings)
                        .map(one -> new Journey.Part(one, 0))
                        .toList())
                .orElseThrow();
    }

    private static List<String> codes(Journey journey) {
        return journey.findings().stream().map(Finding::code).toList();
    }

    @Test
    void recordingsInAnyOrderAreJoinedByTheirDates() {
        var journey = journey(ride("b", 600, 1000, true, true), ride("a", 0, 599, true, true));
        assertThat(journey.legs().getFirst().recording().name()).isEqualTo("a");
        assertThat(journey.sums().wayM()).isCloseTo(6000, within(1e-6));
        assertThat(journey.sums().ridingS()).isCloseTo(1000, within(1e-9));
        assertThat(journey.sums().unrecordedM()).isZero();
        assertThat(journey.sums().meanSquareSpeed()).isCloseTo(36, within(1e-9));
        assertThat(codes(journey)).isEmpty();
    }

    @Test
    void whatTwoRecordingsHoldCountsOnce() {
        var journey = journey(ride("a", 0, 700, true, true), ride("b", 600, 1000, true, true));
        assertThat(journey.sums().wayM()).isCloseTo(6000, within(1e-6));
        assertThat(codes(journey)).containsExactly("legs-overlap");
    }

    @Test
    void aStretchNobodyRecordedIsBridgedByTheStraightLineAndSaidSo() {
        var journey = journey(ride("a", 0, 500, true, true), ride("b", 600, 1000, true, true));
        assertThat(journey.sums().wayM()).isCloseTo(5400, within(1e-6));
        assertThat(journey.sums().unrecordedM()).isCloseTo(600, within(1.0));
        assertThat(codes(journey)).containsExactly("way-not-recorded");
    }

    @Test
    void withoutPositionsALongGapIsNotGuessed() {
        var journey = journey(ride("a", 0, 500, false, true), ride("b", 600, 1000, false, true));
        assertThat(journey.sums().unrecordedM()).isZero();
        assertThat(codes(journey)).containsExactly("gap-without-positions");
    }

    @Test
    void aPauseAddsNoWayAndIsAStop() {
        double[] times = new double[201];
        double[] speeds = new double[201];
        double[] north = new double[201];
        for (int i = 0; i <= 200; i++) {
            times[i] = i <= 100 ? i : i + 900;
            speeds[i] = i == 100 || i == 101 ? 0 : 6;
            north[i] = 6.0 * i / METRES_PER_DEGREE_NORTH;
        }
        var journey = journey(recording("a", 0, times, speeds, north, true));
        assertThat(journey.sums().unrecordedM()).isZero();
        assertThat(journey.sums().stops()).isEqualTo(1);
        assertThat(journey.sums().ridingS()).isCloseTo(199, within(2.0));
        assertThat(codes(journey)).isEmpty();
    }

    @Test
    void oneOfSeveralWithoutADateIsLeftOutAndSaidSo() {
        var journey = journey(ride("a", 0, 500, true, true), ride("b", 501, 1000, true, false));
        assertThat(journey.leftOut()).containsExactly("b");
        assertThat(codes(journey)).containsExactly("no-start-time");
        assertThat(journey(ride("b", 501, 1000, true, false)).leftOut()).isEmpty();
    }
}
