package org.measuredmile.recording.reader;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.recording.Track;

/// Makes the recording of a table of samples: strictly increasing time base, channels without holes filled, segments.
final class RecordingAssembly {
    private static final double NANOS = 1e9;

    private RecordingAssembly() {}

    /// What the table itself does not say.
    ///
    /// `absolute` says whether times count from 1970 once `offsetNs` is added, or from the
    /// instrument's own zero. `trackIsThatOfChannels` says that every position has a time and stands in its
    /// channels, in one segment; `track` is then not looked at.
    record Head(
            Format format,
            String device,
            boolean absolute,
            long offsetNs,
            boolean zoneStated,
            long samples,
            SortedMap<String, Long> counts,
            Track track,
            boolean trackIsThatOfChannels) {
        Head(
                Format format,
                String device,
                boolean absolute,
                long offsetNs,
                boolean zoneStated,
                long samples,
                SortedMap<String, Long> counts,
                Track track) {
            this(format, device, absolute, offsetNs, zoneStated, samples, counts, track, false);
        }
    }

    static Recording assemble(Head head, SampleTable table, TimeOrder order, Remarks remarks) {
        note(order, table, remarks);
        int[] rows = order.rows();
        long zeroNs = rows.length == 0 ? 0 : table.timeNs(rows[0]);
        double[] timesS = new double[rows.length];
        int size = 0;
        for (int row : rows) {
            double timeS = (table.timeNs(row) - zeroNs) / NANOS;
            // After a century of seconds two nanoseconds are one double.
            if (size == 0 || timeS > timesS[size - 1]) {
                rows[size] = row;
                timesS[size++] = timeS;
            }
        }
        if (size < rows.length) {
            rows = Arrays.copyOf(rows, size);
            timesS = Arrays.copyOf(timesS, size);
        }
        Optional<Instant> start = head.absolute && rows.length > 0
                ? Optional.of(Instant.EPOCH.plusNanos(zeroNs).plusNanos(head.offsetNs))
                : Optional.empty();
        List<Segment> segments = segments(table, rows, timesS);
        List<Channel> channels = channels(table, rows, timesS);
        return new Recording(
                remarks.source(),
                head.format,
                head.device,
                start,
                head.zoneStated,
                head.samples,
                timesS,
                segments,
                channels,
                head.counts,
                remarks.findings(),
                head.trackIsThatOfChannels ? shared(channels) : head.track);
    }

    /// The positions of the channels themselves, not copied.
    private static Track shared(List<Channel> channels) {
        Optional<Channel> latitude = first(channels, ChannelKind.LATITUDE);
        Optional<Channel> longitude = first(channels, ChannelKind.LONGITUDE);
        return latitude.isEmpty() || longitude.isEmpty()
                ? Track.NONE
                : new Track(latitude.get().values(), longitude.get().values(), new int[] {0});
    }

    private static Optional<Channel> first(List<Channel> channels, ChannelKind kind) {
        return channels.stream().filter(channel -> channel.kind() == kind).findFirst();
    }

    static void note(TimeOrder order, SampleTable table, Remarks remarks) {
        for (int row : order.repeated()) {
            remarks.count(Remark.REPEATED_TIME, table.line(row));
        }
        for (int row : order.backwards()) {
            remarks.count(Remark.TIME_BACKWARDS, table.line(row));
        }
        if (!order.backwards().isEmpty()) {
            ClockStepsBack.of(table, remarks.source()).ifPresent(remarks::add);
        }
        for (int i = 0; i < order.movedBlocks(); i++) {
            remarks.count(Remark.BLOCKS_REORDERED, 0);
        }
    }

    private static List<Segment> segments(SampleTable table, int[] rows, double[] timesS) {
        List<Segment> segments = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= rows.length; i++) {
            if (i == rows.length || table.segment(rows[i]) != table.segment(rows[i - 1])) {
                segments.add(new Segment(timesS[from], timesS[i - 1]));
                from = i;
            }
        }
        return rows.length == 0 ? List.of() : segments;
    }

    /// Channels that have a value in every row share one array of times. A column gives its memory back as soon
    /// as it is a channel, so that a long file is never held twice.
    private static List<Channel> channels(SampleTable table, int[] rows, double[] timesS) {
        List<Channel> channels = new ArrayList<>();
        for (int column = 0; column < table.columns().size(); column++) {
            double[] values = inOrder(table, column, rows);
            table.columns().get(column).values().clear();
            int size = 0;
            for (double value : values) {
                size += Double.isFinite(value) ? 1 : 0;
            }
            if (size > 0) {
                SampleTable.Column heading = table.columns().get(column);
                Channel.Series series =
                        size == values.length ? new Channel.Series(timesS, values) : series(values, size, timesS);
                channels.add(new Channel(heading.kind(), heading.name(), heading.writtenUnit(), series));
            }
        }
        return channels;
    }

    /// The values of a column in the rows that are kept; NaN where there is none.
    private static double[] inOrder(SampleTable table, int column, int[] rows) {
        DoubleColumn values = table.values(column);
        if (rows.length == table.rows() && values.size() == rows.length && isInOrder(rows)) {
            return values.toArray();
        }
        double[] ordered = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            ordered[i] = table.get(column, rows[i]);
        }
        return ordered;
    }

    private static boolean isInOrder(int[] rows) {
        for (int i = 0; i < rows.length; i++) {
            if (rows[i] != i) {
                return false;
            }
        }
        return true;
    }

    private static Channel.Series series(double[] all, int size, double[] timesS) {
        double[] times = new double[size];
        double[] values = new double[size];
        int at = 0;
        for (int i = 0; i < all.length; i++) {
            if (Double.isFinite(all[i])) {
                times[at] = timesS[i];
                values[at++] = all[i];
            }
        }
        return new Channel.Series(times, values);
    }
}
