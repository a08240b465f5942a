package org.measuredmile.trial.coastdown;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.recording.motion.SpeedSource;

/// Which way a coast went that nobody wrote down, from positions by hand: a degree of latitude is 111 km, one of
/// longitude that times the cosine of the latitude.
class CoastHeadingsTest {
    private static final double[] TIMES = {0, 1, 2};

    private static TracedCoast coast(double latitude, double north, double east) {
        return coast(
                channel(ChannelKind.LATITUDE, latitude, latitude + north / 2, latitude + north),
                channel(ChannelKind.LONGITUDE, 10, 10 + east / 2, 10 + east));
    }

    private static TracedCoast coast(Channel... positions) {
        var speed = channel(ChannelKind.SPEED, 9, 8.9, 8.8);
        var channels = new java.util.ArrayList<>(List.of(positions));
        channels.add(speed);
        var recording = new Recording(
                "ride.csv",
                Format.DELIMITED,
                "",
                Optional.empty(),
                true,
                TIMES.length,
                TIMES,
                List.of(new Segment(0, 2)),
                channels,
                new TreeMap<>(),
                List.of());
        return new TracedCoast(recording, SpeedSource.best(recording).orElseThrow(), speed, List.of());
    }

    private static Channel channel(ChannelKind kind, double... values) {
        return new Channel(kind, kind.name(), "", new Channel.Series(TIMES, values));
    }

    /// The first coast goes due east; later ones are out while they go on to the east.
    @ParameterizedTest
    @CsvSource({"0, 0.002, out", "0, -0.002, back", "0.002, 0.0005, out", "0.002, -0.0005, back", "-0.002, 0.0005, out"
    })
    void theFirstAskedForIsOutAndOthersGoByIt(double north, double east, String direction) {
        var headings = new CoastHeadings(List.of());
        assertThat(headings.directionOf(coast(45, 0, 0.002))).isEqualTo("out");
        assertThat(headings.directionOf(coast(45, north, east))).isEqualTo(direction);
    }

    /// At 60° north a degree east is half as far as a degree north. Out is 0.001° north and as far east; a
    /// coast that goes 0.001° back south and 0.0018° on east has gone back on the whole (−0.001 · 0.001 +
    /// 0.0009 · 0.001 < 0).
    @Test
    void eastIsShortenedByTheCosineOfTheLatitude() {
        var headings = new CoastHeadings(List.of());
        assertThat(headings.directionOf(coast(60, 0.001, 0.002))).isEqualTo("out");
        assertThat(headings.directionOf(coast(60, -0.001, 0.0018))).isEqualTo("back");
    }

    @Test
    void nothingIsSaidWithoutPositionsOrMovement() {
        var headings = new CoastHeadings(List.of());
        assertThat(headings.directionOf(coast())).isEmpty();
        assertThat(headings.directionOf(coast(channel(ChannelKind.LATITUDE, 45, 45.1, 45.2))))
                .isEmpty();
        // Five metres.
        assertThat(headings.directionOf(coast(45, 0.00005, 0))).isEmpty();
    }
}
