package org.measuredmile.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoublePredicate;

/// Part of a recording, as a recording of its own on the same time base: the samples of a stretch, or all others.
///
/// Shape: times stay seconds from the start of the whole, so the first need not be 0; channels without a sample in the
/// part are left out; laps and other marks that reach out of a stretch are left out. What the whole says of itself
/// (device, counts, findings) stays.
public final class RecordingPart {
    private RecordingPart() {}

    /// The samples with `fromS <= time <= toS`.
    public static Recording between(Recording whole, double fromS, double toS) {
        var segments = new ArrayList<Segment>();
        for (Segment one : whole.segments()) {
            if (one.fromS() <= toS && one.toS() >= fromS) {
                segments.add(new Segment(Math.max(one.fromS(), fromS), Math.min(one.toS(), toS)));
            }
        }
        var channels = whole.channels().stream()
                .map(channel -> channel.between(fromS, toS))
                .toList();
        var marks = whole.marks().stream()
                .filter(mark -> mark.fromS() >= fromS && mark.toS() <= toS)
                .toList();
        return with(whole, time -> time >= fromS && time <= toS, segments, channels, marks);
    }

    /// The samples before `fromS` and after `toS`; what lay on both sides is broken there.
    public static Recording without(Recording whole, double fromS, double toS) {
        var segments = new ArrayList<Segment>();
        for (Segment one : whole.segments()) {
            if (one.toS() < fromS || one.fromS() > toS) {
                segments.add(one);
            } else {
                if (one.fromS() < fromS) {
                    segments.add(new Segment(one.fromS(), fromS));
                }
                if (one.toS() > toS) {
                    segments.add(new Segment(toS, one.toS()));
                }
            }
        }
        DoublePredicate outside = time -> time < fromS || time > toS;
        var channels =
                whole.channels().stream().map(channel -> only(channel, outside)).toList();
        return with(whole, outside, segments, channels, whole.marks());
    }

    private static Channel only(Channel channel, DoublePredicate kept) {
        double[] times = new double[channel.size()];
        double[] values = new double[channel.size()];
        int size = 0;
        for (int i = 0; i < channel.size(); i++) {
            if (kept.test(channel.timeS(i))) {
                times[size] = channel.timeS(i);
                values[size++] = channel.value(i);
            }
        }
        return new Channel(
                channel.kind(),
                channel.name(),
                channel.writtenUnit(),
                channel.source(),
                new Channel.Series(Arrays.copyOf(times, size), Arrays.copyOf(values, size)));
    }

    private static Recording with(
            Recording whole, DoublePredicate kept, List<Segment> segments, List<Channel> channels, List<Mark> marks) {
        double[] times = Arrays.stream(whole.timesS()).filter(kept).toArray();
        var held = channels.stream().filter(channel -> !channel.isEmpty()).toList();
        return new Recording(
                whole.name(),
                whole.format(),
                whole.device(),
                whole.start(),
                whole.zoneStated(),
                times.length,
                times,
                segments,
                held,
                whole.counts(),
                whole.findings(),
                Track.of(held, segments),
                marks);
    }
}
