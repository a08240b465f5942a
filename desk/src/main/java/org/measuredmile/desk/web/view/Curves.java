package org.measuredmile.desk.web.view;

import java.lang.ref.WeakReference;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;

/// The curve that each recording's drawings show, found once as long as the recording is held: finding it reads every
/// sample, and one page asks for several drawings.
final class Curves {
    private static final List<Kept> KEPT = new ArrayList<>();

    private Curves() {}

    /// The channel that a curve shows, what it is, and why it was taken.
    record Curve(Channel channel, String words, String reason) {}

    private record Kept(WeakReference<Recording> recording, Optional<Curve> curve) {}

    /// The recording's best speed, else its first channel that can stand alone; empty where there is none.
    static Optional<Curve> of(Recording recording) {
        synchronized (KEPT) {
            KEPT.removeIf(kept -> kept.recording().refersTo(null));
            for (Kept kept : KEPT) {
                if (kept.recording().refersTo(recording)) {
                    return kept.curve();
                }
            }
        }
        var found = find(recording);
        synchronized (KEPT) {
            KEPT.add(new Kept(new WeakReference<>(recording), found));
        }
        return found;
    }

    private static Optional<Curve> find(Recording recording) {
        var speed = SpeedSource.best(recording).filter(one -> one.channel().size() > 1);
        if (speed.isPresent()) {
            String words = switch (speed.get().kind()) {
                case WHEEL -> "Speed by wheel";
                case RECEIVER -> "Speed";
                case POSITIONS -> "Speed from positions";
            };
            return Optional.of(
                    new Curve(speed.get().channel(), words, speed.get().reason()));
        }
        return recording.channels().stream()
                .filter(channel -> channel.size() > 1 && canStandAlone(channel.kind()))
                .findFirst()
                .map(channel -> new Curve(
                        channel, Printing.capital(channel.kind().id().replace('-', ' ')), "no speed was recorded"));
    }

    private static boolean canStandAlone(ChannelKind kind) {
        return switch (kind) {
            case LATITUDE, LONGITUDE, COURSE, SATELLITES, DILUTION_OF_PRECISION, LEVER, OTHER -> false;
            default -> true;
        };
    }
}
