package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.SharedRecordings.Known;

/// What the collection's EXPECTED.csv says of training files only.
final class TcxKnown {
    private TcxKnown() {}

    /// Compares one value; false for an item that nobody has decided about.
    static boolean check(String item, Known known, Recording recording) {
        switch (item) {
            case "laps / tracks / points" -> {
                String[] parts = known.value().split(" / ");
                assertThat(recording.counts())
                        .containsEntry("laps", Long.parseLong(parts[0]))
                        .containsEntry("tracks", Long.parseLong(parts[1]))
                        .containsEntry("points", Long.parseLong(parts[2]));
                assertThat(recording.samples()).isEqualTo(Long.parseLong(parts[2]));
            }
            case "last distance field" -> {
                Channel distance = recording.channel(ChannelKind.DISTANCE).orElseThrow();
                // Written to the hundredth.
                assertThat(distance.value(distance.size() - 1)).isCloseTo(known.number(), within(0.0051));
            }
            case "points with heart rate" -> samples(ChannelKind.HEART_RATE, known, recording);
            case "points with cadence" -> samples(ChannelKind.CADENCE, known, recording);
            case "points with power" -> samples(ChannelKind.POWER, known, recording);
            case "points with speed" -> samples(ChannelKind.SPEED, known, recording);
            case "points without position" -> without(ChannelKind.LATITUDE, known, recording);
            case "points without altitude" -> without(ChannelKind.ALTITUDE, known, recording);
            case "distance steps back" ->
                assertThat(Decode.finding(recording, "distance-back").message()).startsWith(known.value() + " ");
            case "points with unreadable position" ->
                assertThat(Decode.finding(recording, "bad-coordinates").message())
                        .startsWith(known.value() + " ");
            default -> {
                return false;
            }
        }
        return true;
    }

    private static void samples(ChannelKind kind, Known known, Recording recording) {
        int size = recording.channel(kind).map(Channel::size).orElse(0);
        // Points that share their time with another one are in no channel.
        long shared = recording.samples() - recording.timesS().length;
        assertThat(size + shared).as(known.toString()).isEqualTo(Long.parseLong(known.value()));
    }

    private static void without(ChannelKind kind, Known known, Recording recording) {
        int size = recording.channel(kind).map(Channel::size).orElse(0);
        assertThat(recording.timesS().length - size).as(known.toString()).isEqualTo(Integer.parseInt(known.value()));
    }
}
