package org.measuredmile.recording.reader;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.TimeText.DateOrder;

/// Gathers the track points of an XML file one by one into columns, whatever their elements are called.
///
/// Each point is begun, given its time, position and values in any order, and ended.
final class PointTable {
    private static final int KINDS = ChannelKind.values().length;

    private final Remarks remarks;
    private final SampleTable table = new SampleTable();
    private final TrackColumns track = new TrackColumns();
    private final TreeMap<String, Long> counts = new TreeMap<>();
    private final int[] columns = new int[KINDS];
    private final double[] point = new double[KINDS];
    private final int[] given = new int[KINDS];
    private int givenCount;
    private long points;
    private long pointLine;
    private long pointTimeNs;
    private int segment = -1;
    private long segmentBegan;
    private boolean zoneStated = true;
    private boolean full;

    PointTable(Remarks remarks) {
        this.remarks = remarks;
        Arrays.fill(columns, -1);
        Arrays.fill(point, Double.NaN);
        column(ChannelKind.LATITUDE);
        column(ChannelKind.LONGITUDE);
    }

    private int column(ChannelKind kind) {
        int known = columns[kind.ordinal()];
        if (known < 0) {
            boolean place = kind == ChannelKind.LATITUDE || kind == ChannelKind.LONGITUDE;
            known = table.addColumn(kind, place ? kind.id().substring(0, 3) : kind.id(), "");
            columns[kind.ordinal()] = known;
        }
        return known;
    }

    void count(String what) {
        counts.merge(what, 1L, Long::sum);
    }

    /// Puts a count there that may stay 0.
    void countFromZero(String what) {
        counts.put(what, 0L);
    }

    long counted(String what) {
        return counts.getOrDefault(what, 0L);
    }

    long points() {
        return points;
    }

    int timedPoints() {
        return table.rows();
    }

    boolean isFull() {
        return full;
    }

    void beginSegment() {
        segment++;
        segmentBegan = points;
        track.startSegment();
    }

    void endSegment() {
        if (points == segmentBegan) {
            remarks.count(Remark.EMPTY_SEGMENT, 0);
        }
    }

    void begin(long line) {
        points++;
        pointLine = line;
        pointTimeNs = SampleTable.UNTIMED;
        for (int i = 0; i < givenCount; i++) {
            point[given[i]] = Double.NaN;
        }
        givenCount = 0;
    }

    long line() {
        return pointLine;
    }

    /// The time of the point, or [SampleTable#UNTIMED].
    long timeNs() {
        return pointTimeNs;
    }

    /// Whether the point has nothing but a time.
    boolean isBare() {
        return givenCount == 0;
    }

    /// Gives the point its position; one that is none is noticed with its text.
    void position(double north, double east, Supplier<String> text) {
        if (!(Math.abs(north) <= 90) || !(Math.abs(east) <= 180)) {
            remarks.count(Remark.BAD_COORDINATES, pointLine, text.get());
        } else if (north == 0 && east == 0) {
            remarks.count(Remark.ZERO_COORDINATES, pointLine);
        } else {
            give(ChannelKind.LATITUDE, north);
            give(ChannelKind.LONGITUDE, east);
            track.add(north, east);
        }
    }

    /// Gives the point a value, the first of its kind counting.
    void value(PointValue what, String element, XmlText text) {
        double value = text.number();
        boolean height = what.kind() == ChannelKind.ALTITUDE;
        if (Double.isNaN(value)) {
            if (height || !text.isEmpty()) {
                remarks.count(height ? Remark.EMPTY_ELEVATION : Remark.NOT_A_NUMBER, pointLine, text.toString());
            }
        } else if (NoDataMark.is(what.kind(), value)) {
            remarks.count(Remark.NO_DATA_MARK, pointLine, element + " " + text);
        } else if (Double.isNaN(point[what.kind().ordinal()])) {
            give(what.kind(), what.unit().toSi(value));
        }
    }

    private void give(ChannelKind kind, double value) {
        int at = kind.ordinal();
        if (Double.isNaN(point[at])) {
            given[givenCount++] = at;
        }
        point[at] = value;
    }

    /// Whether the point was given a value of this kind.
    boolean has(ChannelKind kind) {
        return !Double.isNaN(point[kind.ordinal()]);
    }

    /// What the point was given of this kind, NaN where nothing.
    double value(ChannelKind kind) {
        return point[kind.ordinal()];
    }

    /// Takes a value back that turned out to mean nothing.
    void withdraw(ChannelKind kind) {
        for (int i = 0; i < givenCount; i++) {
            if (given[i] == kind.ordinal()) {
                point[given[i]] = Double.NaN;
                given[i] = given[--givenCount];
                return;
            }
        }
    }

    void time(XmlText text) {
        long usualNs = text.usualTimeNs();
        boolean usual = usualNs != IsoTime.OTHER_FORM;
        OptionalLong timeNs = usual ? OptionalLong.empty() : strictTime(text);
        if (!usual && timeNs.isEmpty()) {
            remarks.count(Remark.BAD_TIME, pointLine, text.toString());
            return;
        }
        pointTimeNs = usual ? usualNs : timeNs.getAsLong();
        if (zoneStated && !(usual ? text.endsInZone() : TimeText.statesZone(text.toString()))) {
            zoneStated = false;
            remarks.count(Remark.ZONE_NOT_STATED, pointLine);
        }
    }

    private static OptionalLong strictTime(XmlText text) {
        return TimeText.dateTime(text.toString(), DateOrder.YEAR_FIRST);
    }

    /// A time that is no sample's; one that cannot be read is no time.
    static OptionalLong quietTime(XmlText text) {
        long usualNs = text.usualTimeNs();
        return usualNs != IsoTime.OTHER_FORM ? OptionalLong.of(usualNs) : strictTime(text);
    }

    void end() {
        if (pointTimeNs == SampleTable.UNTIMED) {
            remarks.count(Remark.NO_TIME, pointLine);
            return;
        }
        int row = table.addRow(pointTimeNs, pointLine, Math.max(segment, 0));
        for (int i = 0; i < givenCount; i++) {
            int at = given[i];
            int column = columns[at] >= 0 ? columns[at] : column(ChannelKind.values()[at]);
            table.set(column, row, point[at]);
        }
        full = table.isFull();
        if (full) {
            remarks.count(Remark.TOO_LONG, pointLine, Long.toString(pointLine));
        }
    }

    /// The recording of all points, by the format's own counts.
    Recording recording(Format format, String device) {
        SortedMap<String, Long> all = new TreeMap<>(counts);
        all.put("points", points);
        var head = new RecordingAssembly.Head(
                format, Remarks.quoted(device), true, 0, zoneStated, points, all, track.track());
        return RecordingAssembly.assemble(head, table, TimeOrder.of(table), remarks);
    }

    /// Why nothing can come of the points, where that is so.
    Optional<Decoding> nothingToComputeFrom() {
        Place file = Place.in(remarks.source());
        if (table.rows() == 0) {
            return Optional.of(remarks.refuse(
                    "no-times",
                    file,
                    "none of " + points + " track points has a time: nothing can be computed from them",
                    "export the recording with times"));
        }
        if (track.size() == 0 && table.columns().size() == 2) {
            return Optional.of(remarks.refuse(
                    "no-samples",
                    file,
                    "none of " + points + " track points has a position or a value that can be read",
                    "look at the points named below, and export the recording again"));
        }
        return Optional.empty();
    }

    /// Where the file broke: notices it when what came before is worth keeping, else answers with the refusal.
    Optional<Decoding> broken(Remark remark, long line, String what) {
        if (table.rows() >= 2) {
            remarks.count(remark, line, what);
            return Optional.empty();
        }
        return Optional.of(refused(remark, line, what));
    }

    Decoding refused(Remark remark, long line, String what) {
        boolean cut = remark == Remark.CUT_OFF;
        return remarks.refuse(
                remark.code(),
                line > 0 ? Place.atLine(remarks.source(), line) : Place.in(remarks.source()),
                cut
                        ? "the file ends in the middle (" + what + "), after " + table.rows() + " points with a time"
                        : "not well-formed XML: " + what + " (" + points
                                + " points had been read; none of them was kept)",
                cut
                        ? "copy the file from the instrument again"
                        : "export the recording again, or mend the file at the place named");
    }
}
