package org.measuredmile.recording.reader;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import org.measuredmile.recording.Channel;
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
    /// instrument's own zero.
    record Head(
            Format format,
            String device,
            boolean absolute,
            long offsetNs,
            boolean zoneStated,
            long samples,
            SortedMap<String, Long> counts,
            Track track) {}

    static Recording assemble(Head head, SampleTable table, TimeOrder order, Remarks remarks) {
        note(order, table, remarks);
        int[] rows = order.rows();
        long zeroNs = rows.length == 0 ? 0 : table.timeNs(rows[0]);
        double[] timesS = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            timesS[i] = (table.timeNs(rows[i]) - zeroNs) / NANOS;
        }
        Optional<Instant> start = head.absolute && rows.length > 0
                ? Optional.of(Instant.EPOCH.plusNanos(zeroNs).plusNanos(head.offsetNs))
                : Optional.empty();
        return new Recording(
                remarks.source(),
                head.format,
                head.device,
                start,
                head.zoneStated,
                head.samples,
                timesS,
                segments(table, rows, timesS),
                channels(table, rows, timesS),
                head.counts,
                remarks.findings(),
                head.track);
    }

    private static void note(TimeOrder order, SampleTable table, Remarks remarks) {
        for (int row : order.repeated()) {
            remarks.count(Remark.REPEATED_TIME, table.line(row));
        }
        for (int row : order.backwards()) {
            remarks.count(Remark.TIME_BACKWARDS, table.line(row));
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

    private static List<Channel> channels(SampleTable table, int[] rows, double[] timesS) {
        List<Channel> channels = new ArrayList<>();
        for (int column = 0; column < table.columns().size(); column++) {
            double[] times = new double[rows.length];
            double[] values = new double[rows.length];
            int size = 0;
            double before = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < rows.length; i++) {
                double value = table.get(column, rows[i]);
                if (Double.isFinite(value) && timesS[i] > before) {
                    before = timesS[i];
                    times[size] = timesS[i];
                    values[size++] = value;
                }
            }
            if (size > 0) {
                SampleTable.Column heading = table.columns().get(column);
                channels.add(new Channel(
                        heading.kind(),
                        heading.name(),
                        heading.writtenUnit(),
                        new Channel.Series(
                                java.util.Arrays.copyOf(times, size), java.util.Arrays.copyOf(values, size))));
            }
        }
        return channels;
    }
}
