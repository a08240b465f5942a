package org.measuredmile.recording.reader;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.recording.Track;
import org.measuredmile.recording.reader.Decoding.Decoded;

/// Makes the recording of what a FIT file held: one time base over all its streams of samples, or the reason why there
/// is no recording.
final class FitAssembly {
    private static final double NANOS = 1e9;

    private final FitContent content;
    private final Remarks remarks;
    private final OptionalLong stoppedAt;
    private final FitFindings findings;

    FitAssembly(FitContent content, Remarks remarks, OptionalLong stoppedAt) {
        this.content = content;
        this.remarks = remarks;
        this.stoppedAt = stoppedAt;
        findings = new FitFindings(content, remarks);
    }

    /// A table of samples with what measured them and its rows in order of time.
    private record Ordered(FitSensors.Stream stream, TimeOrder order) {
        long timeNs(int index) {
            return stream.table().timeNs(order.rows()[index]);
        }

        int size() {
            return order.rows().length;
        }
    }

    Decoding finish() {
        Optional<Decoding> refusal = refusal();
        if (refusal.isPresent()) {
            return refusal.get();
        }
        List<FitSensors.Stream> streams = new ArrayList<>(content.sensors().filled());
        streams.add(new FitSensors.Stream("", content.records().table(), new int[0]));
        FitEra era = FitEra.of(content.clock(), streams);
        era.retime(streams);
        List<Ordered> ordered = new ArrayList<>();
        for (FitSensors.Stream stream : streams) {
            TimeOrder order = TimeOrder.of(stream.table());
            RecordingAssembly.note(order, stream.table(), remarks);
            ordered.add(new Ordered(stream, order));
        }
        // The finer of two streams that tell the same comes first: a camera's ten epochs a second before its records.
        ordered.sort((one, other) -> Integer.compare(rank(other), rank(one)));
        long[] timesNs = union(ordered);
        if (timesNs.length == 0) {
            return FitTold.NO_TIMES.refuse(
                    remarks, Place.in(remarks.source()), "none of " + content.samples() + " samples has a time");
        }
        Positions positions = positions(ordered);
        List<Channel> channels = channels(ordered, timesNs);
        if (channels.isEmpty()) {
            return FitTold.NO_SAMPLES.refuse(
                    remarks,
                    Place.in(remarks.source()),
                    "none of " + content.samples() + " samples has a value that can be read");
        }
        findings.tell(era, timesNs[0], channels);
        return new Decoded(recording(era, timesNs, channels, positions.track(channels)));
    }

    /// Rows where a stream may hold what another one tells as well; the rest keeps its place behind.
    private int rank(Ordered each) {
        boolean satellite =
                each.stream.table() == content.sensors().streams().getFirst().table();
        boolean records = each.stream.device().isEmpty();
        return satellite || records ? each.size() : -1;
    }

    private Optional<Decoding> refusal() {
        if (content.samples() >= 1 && (content.samples() >= 2 || stoppedAt.isEmpty())) {
            return Optional.empty();
        }
        int type = content.parts().isEmpty() ? -1 : content.parts().getFirst().type();
        if (content.planned() > 0 || !FitContent.mayBeActivity(type)) {
            String planned = content.planned() > 0 ? " of " + content.planned() + " points, which nobody rode" : "";
            return Optional.of(FitTold.NOT_AN_ACTIVITY.refuse(
                    remarks,
                    Place.in(remarks.source()),
                    "the file holds " + FitContent.typeName(type) + planned + ", not an activity"));
        }
        if (stoppedAt.isPresent()) {
            return Optional.of(FitTold.CUT_OFF.refuse(
                    remarks,
                    Place.atByte(remarks.source(), stoppedAt.getAsLong()),
                    "the file breaks off there, after " + content.samples() + " samples"));
        }
        return Optional.of(FitTold.NO_SAMPLES.refuse(
                remarks, Place.in(remarks.source()), "the file is closed and whole, but holds no sample"));
    }

    /// The positions of the records: those of their channels where every one of them is there in the file's
    /// order, else (one axis and the other) copies of their own.
    private record Positions(boolean shared, double[] north, double[] east, int[] starts) {
        Track track(List<Channel> channels) {
            if (!shared) {
                return new Track(north, east, starts);
            }
            double[] latitudes = values(channels, "position_lat");
            double[] longitudes = values(channels, "position_long");
            return latitudes.length == longitudes.length ? new Track(latitudes, longitudes, starts) : Track.NONE;
        }

        private static double[] values(List<Channel> channels, String name) {
            return channels.stream()
                    .filter(channel ->
                            channel.name().equals(name) && channel.source().isEmpty())
                    .findFirst()
                    .map(Channel::values)
                    .orElse(new double[0]);
        }
    }

    private Positions positions(List<Ordered> ordered) {
        FitRecords records = content.records();
        int[] rows = records.positionRows();
        int[] starts = records.segmentStarts(rows);
        boolean whole = ordered.stream()
                .filter(each -> each.stream.table() == records.table())
                .allMatch(each -> each.size() == records.table().rows() && each.order.movedBlocks() == 0);
        return whole
                ? new Positions(true, new double[0], new double[0], starts)
                : new Positions(false, records.degrees(rows, 0), records.degrees(rows, 1), starts);
    }

    private static long[] union(List<Ordered> ordered) {
        int size = ordered.stream().mapToInt(Ordered::size).sum();
        long[] all = new long[size];
        int filled = 0;
        for (Ordered each : ordered) {
            for (int i = 0; i < each.size(); i++) {
                all[filled++] = each.timeNs(i);
            }
        }
        if (ordered.size() > 1) {
            Arrays.sort(all);
        }
        int kept = 0;
        for (int i = 0; i < size; i++) {
            // After a century of seconds two nanoseconds are one double.
            if (kept == 0 || (all[i] - all[0]) / NANOS > (all[kept - 1] - all[0]) / NANOS) {
                all[kept++] = all[i];
            }
        }
        return kept == size ? all : Arrays.copyOf(all, kept);
    }

    private List<Channel> channels(List<Ordered> ordered, long[] timesNs) {
        List<Channel> channels = new ArrayList<>();
        List<Channel> ofApplications = new ArrayList<>();
        FitRecords records = content.records();
        for (Ordered each : ordered) {
            Rows rows = rows(each, timesNs[0]);
            boolean ofRecords = each.stream.table() == records.table();
            for (int column = 0; column < each.stream.table().columns().size(); column++) {
                Optional<Channel.Series> series = series(each.stream.table(), column, rows);
                if (series.isPresent()) {
                    SampleTable.Column heading = each.stream.table().columns().get(column);
                    String application = ofRecords ? records.application(column) : "";
                    ChannelKind kind = ofRecords ? findings.kind(heading) : heading.kind();
                    String device =
                            ofRecords ? content.devices().source(kind, records.positions() > 0) : each.stream.device();
                    (application.isEmpty() ? channels : ofApplications)
                            .add(new Channel(
                                    kind,
                                    heading.name(),
                                    heading.writtenUnit(),
                                    application.isEmpty() ? device : application,
                                    findings.scaled(heading, kind, series.get())));
                }
            }
        }
        channels.addAll(ofApplications);
        return channels;
    }

    /// Rows whose times rise, and those times in seconds.
    private record Rows(int[] rows, double[] timesS) {}

    private static Rows rows(Ordered each, long zeroNs) {
        int[] rows = each.order.rows();
        double[] timesS = new double[rows.length];
        int size = 0;
        for (int i = 0; i < rows.length; i++) {
            double timeS = (each.timeNs(i) - zeroNs) / NANOS;
            if (size == 0 || timeS > timesS[size - 1]) {
                rows[size] = rows[i];
                timesS[size++] = timeS;
            }
        }
        return size == rows.length
                ? new Rows(rows, timesS)
                : new Rows(Arrays.copyOf(rows, size), Arrays.copyOf(timesS, size));
    }

    /// The samples of a column; where every row has one, the times are those of all. The column gives its
    /// memory back.
    private static Optional<Channel.Series> series(SampleTable table, int column, Rows rows) {
        int size = 0;
        for (int row : rows.rows) {
            size += Double.isFinite(table.get(column, row)) ? 1 : 0;
        }
        double[] values = new double[size];
        double[] times = size == rows.rows.length ? rows.timesS : new double[size];
        int kept = 0;
        for (int i = 0; i < rows.rows.length && size > 0; i++) {
            double value = table.get(column, rows.rows[i]);
            if (Double.isFinite(value)) {
                times[kept] = rows.timesS[i];
                values[kept++] = value;
            }
        }
        table.columns().get(column).values().clear();
        return size == 0 ? Optional.empty() : Optional.of(new Channel.Series(times, values));
    }

    private Recording recording(FitEra era, long[] timesNs, List<Channel> channels, Track track) {
        double[] timesS = new double[timesNs.length];
        for (int i = 0; i < timesS.length; i++) {
            timesS[i] = (timesNs[i] - timesNs[0]) / NANOS;
        }
        Optional<Instant> start = era.isAbsolute()
                ? Optional.of(Instant.ofEpochSecond(FitClock.EPOCH_S).plusNanos(timesNs[0]))
                : Optional.empty();
        List<Segment> segments = segments(era, timesNs, timesS);
        // A camera without records has the track of its satellite epochs.
        Recording recording = track.size() == 0
                ? new Recording(
                        remarks.source(),
                        Format.FIT,
                        content.devices().writer(),
                        start,
                        true,
                        content.samples(),
                        timesS,
                        segments,
                        channels,
                        counts(),
                        remarks.findings())
                : new Recording(
                        remarks.source(),
                        Format.FIT,
                        content.devices().writer(),
                        start,
                        true,
                        content.samples(),
                        timesS,
                        segments,
                        channels,
                        counts(),
                        remarks.findings(),
                        track);
        return recording.marking(marks(era, timesNs));
    }

    private TreeMap<String, Long> counts() {
        TreeMap<String, Long> counts = content.counts();
        counts.put("records", (long) content.records().table().rows());
        counts.put("positions", (long) content.records().positions());
        counts.put("compressed-headers", content.compressed());
        counts.put("laps", (long) content.marks().laps());
        counts.put("sessions", (long) content.marks().sessions().size());
        return counts;
    }

    /// Stretches between one going on after a stop and the next.
    private List<Segment> segments(FitEra era, long[] timesNs, double[] timesS) {
        LongColumn breaks = content.marks().breaks();
        long[] starts = new long[breaks.size()];
        for (int i = 0; i < starts.length; i++) {
            starts[i] = era.trueNs(breaks.get(i));
        }
        Arrays.sort(starts);
        List<Segment> segments = new ArrayList<>();
        int from = 0;
        int next = 0;
        for (int i = 1; i <= timesNs.length; i++) {
            boolean breaksHere = i == timesNs.length;
            while (i < timesNs.length && next < starts.length && starts[next] <= timesNs[i]) {
                breaksHere |= starts[next++] > timesNs[from];
            }
            if (breaksHere) {
                segments.add(new Segment(timesS[from], timesS[i - 1]));
                from = i;
            }
        }
        return segments;
    }

    private List<Mark> marks(FitEra era, long[] timesNs) {
        long endNs = timesNs[timesNs.length - 1];
        List<Mark> marks = new ArrayList<>();
        for (FitMarks.Span span : content.marks().spans()) {
            long fromNs = era.trueNs(span.fromNs());
            long toNs = era.trueNs(span.toNs());
            if (fromNs != SampleTable.UNTIMED && toNs >= timesNs[0] && fromNs <= endNs) {
                marks.add(new Mark(
                        span.kind(),
                        (Math.max(fromNs, timesNs[0]) - timesNs[0]) / NANOS,
                        (Math.min(toNs, endNs) - timesNs[0]) / NANOS,
                        span.text()));
            }
        }
        return marks;
    }
}
