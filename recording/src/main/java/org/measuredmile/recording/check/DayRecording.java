package org.measuredmile.recording.check;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.TestDay;

/// One file of a day with what the day says of it.
///
/// Unit: seconds since 1970 for `fromS` and `toS`, the stated clock offset added; both NaN where the file has no time
/// of day.
record DayRecording(Recording recording, Optional<RecordingEntry> entry, Optional<Instrument> instrument) {
    private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
    private static final double STANDING_MPS = 0.5;

    /// A stretch of a clock, in seconds since 1970.
    record Stretch(double fromS, double toS) {
        double lengthS() {
            return toS - fromS;
        }

        Stretch movedBy(double seconds) {
            return new Stretch(fromS + seconds, toS + seconds);
        }
    }

    static DayRecording of(Recording recording, TestDay day) {
        Optional<RecordingEntry> entry = day.recording(recording.name());
        return new DayRecording(
                recording, entry, entry.map(RecordingEntry::instrument).flatMap(day::instrument));
    }

    String name() {
        return recording.name();
    }

    double offsetS() {
        return entry.map(RecordingEntry::clockOffsetS).orElse(0.0);
    }

    List<String> runs() {
        return entry.map(RecordingEntry::runs).orElse(List.of());
    }

    /// The runs whose ends a person set in it.
    Set<String> windows() {
        return entry.map(one -> one.windows().keySet()).orElse(Set.of());
    }

    int samples() {
        return recording.timesS().length;
    }

    boolean isDated() {
        return recording.start().isPresent();
    }

    double fromS() {
        return recording
                .start()
                .map(start -> start.getEpochSecond() + start.getNano() / 1e9 + offsetS())
                .orElse(Double.NaN);
    }

    double toS() {
        return fromS() + recording.spanS();
    }

    Instant begins() {
        return recording.start().orElse(Instant.EPOCH).plusMillis(Math.round(1000 * offsetS()));
    }

    Instant ends() {
        return begins().plusMillis(Math.round(1000 * recording.spanS()));
    }

    /// For how many seconds two files run at the same time when the other's clock is moved; never under 0.
    double commonS(DayRecording other, double otherByS) {
        return common(other, otherByS).lengthS();
    }

    /// When two files run at the same time, by this one's clock, when the other's clock is moved; empty (of
    /// length 0) when they never do, or when one has no time of day.
    Stretch common(DayRecording other, double otherByS) {
        if (!isDated() || !other.isDated()) {
            return new Stretch(0, 0);
        }
        double from = Math.max(fromS(), other.fromS() + otherByS);
        return new Stretch(from, Math.max(from, Math.min(toS(), other.toS() + otherByS)));
    }

    /// Seconds since 1970, by the stated clock, as a time on the file's own base.
    double ownS(double clockS) {
        return clockS - fromS();
    }

    /// A stretch of this file's clock in the day's own time: "10:02:00 to 10:07:31".
    String words(ZoneId zone, Stretch stretch) {
        return HOUR.format(instant(stretch.fromS()).atZone(zone)) + " to "
                + HOUR.format(instant(stretch.toS()).atZone(zone));
    }

    private static Instant instant(double clockS) {
        return Instant.ofEpochMilli(Math.round(1000 * clockS));
    }

    /// When it stands first, or last, within a stretch of its clock; empty where it has no speed or never stands.
    OptionalDouble standsS(Stretch within, boolean last) {
        if (ownSpeed().isEmpty()) {
            return OptionalDouble.empty();
        }
        Channel speed = ownSpeed().get();
        double zeroS = ownS(0);
        int from = speed.indexAtOrAfter(within.fromS() + zeroS);
        int to = Math.min(speed.size(), speed.indexAtOrAfter(within.toS() + zeroS));
        for (int i = 0; i < to - from; i++) {
            int at = last ? to - 1 - i : from + i;
            if (speed.value(at) < STANDING_MPS) {
                return OptionalDouble.of(speed.timeS(at) - zeroS);
            }
        }
        return OptionalDouble.empty();
    }

    /// Whether runs can be found in it: it has a speed or positions, and is not a battery's log.
    boolean moves() {
        return !isBatteryLog() && (ownSpeed().isPresent() || hasPositions());
    }

    Optional<Channel> latitude() {
        return recording.channel(ChannelKind.LATITUDE);
    }

    Optional<Channel> longitude() {
        return recording.channel(ChannelKind.LONGITUDE);
    }

    boolean hasPositions() {
        return latitude().isPresent() && longitude().isPresent();
    }

    Optional<Channel> ownSpeed() {
        return recording.channel(ChannelKind.WHEEL_SPEED).or(() -> recording.channel(ChannelKind.SPEED));
    }

    /// Whether it holds a battery's values and neither way nor speed.
    boolean isBatteryLog() {
        boolean battery = recording.channel(ChannelKind.VOLTAGE).isPresent()
                || recording.channel(ChannelKind.CURRENT).isPresent()
                || recording.channel(ChannelKind.STATE_OF_CHARGE).isPresent();
        boolean said = instrument
                .filter(one -> one.kind() == Instrument.Kind.BATTERY_LOG)
                .isPresent();
        return said || (battery && !hasPositions() && ownSpeed().isEmpty());
    }

    long kinds() {
        return recording.channels().stream()
                .filter(channel -> !channel.isEmpty())
                .map(Channel::kind)
                .distinct()
                .count();
    }
}
