package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.ColumnSettings;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Track;
import org.measuredmile.recording.reader.Decoding.Decoded;

/// A table while it is read: the first rows decide what the columns mean, then every row goes into numbers.
final class DelimitedTable {
    /// How many rows are looked at before the columns' meaning is settled.
    private static final int ROWS_LOOKED_AT = 2000;

    private final TableShape shape;
    private final Remarks remarks;
    private final TableColumns columns;
    private final SampleTable table = new SampleTable();
    private final LongColumn marker = new LongColumn();
    private final TreeMap<String, Long> counts = new TreeMap<>();
    private final List<String[]> first = new ArrayList<>();
    private final List<Long> firstLines = new ArrayList<>();
    private Optional<Taking> taking = Optional.empty();
    private boolean settled;
    private boolean zoneWasStated;
    private long samples;
    private long lastLine;
    private OptionalLong startNs = OptionalLong.empty();
    private OptionalLong startAtNs = OptionalLong.empty();

    /// What turns a row into numbers, once the columns are settled.
    private record Taking(ClockChoice clocks, RowTimes times, Optional<RowTimes> markerTimes, CellReader cells) {}

    DelimitedTable(TableShape shape, ColumnSettings settings, Remarks remarks) {
        this.shape = shape;
        this.remarks = remarks;
        this.columns = new TableColumns(shape, settings, remarks);
    }

    TableShape shape() {
        return shape;
    }

    boolean isFull() {
        return table.isFull();
    }

    long lastLine() {
        return lastLine;
    }

    void row(CellRow row, long line) {
        lastLine = line;
        if (!isOfThisTable(row)) {
            return;
        }
        samples++;
        if (settled) {
            take(row, line);
            return;
        }
        first.add(row.texts());
        firstLines.add(line);
        if (first.size() >= ROWS_LOOKED_AT) {
            settle();
            row.expect(columns.expectedAt(shape.lineType().isEmpty() ? 0 : 1), shape.decimalMark());
        }
    }

    private boolean isOfThisTable(CellRow row) {
        if (row.isBlank() || row.isComment()) {
            return false;
        }
        if (shape.lineType().isEmpty()) {
            return true;
        }
        if (!row.is(0, shape.lineType())) {
            String type = row.cell(0);
            String named = type.matches("[A-Za-z]{1,16}") ? type : "other";
            counts.merge("lines-" + named.toLowerCase(Locale.ROOT), 1L, Long::sum);
            return false;
        }
        row.skipFirst();
        return true;
    }

    private void settle() {
        settled = true;
        columns.settle(first);
        for (ColumnMeaning meaning : columns.values()) {
            table.addColumn(meaning.kind(), meaning.name(), meaning.writtenUnit());
        }
        taking = columns.clocks()
                .map(clocks -> new Taking(
                        clocks,
                        new RowTimes(clocks.clock(), shape.decimalMark()),
                        clocks.marker().map(clock -> new RowTimes(clock, shape.decimalMark())),
                        new CellReader(columns, table, shape.decimalMark(), remarks)));
        if (taking.isPresent()) {
            zoneWasStated = taking.get().clocks().clock().statesZone(first);
            CellRow row = new CellRow();
            for (int i = 0; i < first.size(); i++) {
                row.load(first.get(i), firstLines.get(i));
                take(row, firstLines.get(i));
            }
        }
        first.clear();
        firstLines.clear();
    }

    private void take(CellRow row, long line) {
        if (taking.isEmpty() || table.isFull()) {
            return;
        }
        Taking now = taking.get();
        int extra = row.count() - shape.names().size();
        if (extra < 0 || (extra > 0 && !row.isEmpty(row.count() - 1))) {
            remarks.count(Remark.SHORT_ROW, line);
        }
        long timeNs = now.times.ns(row);
        if (timeNs == SampleTable.UNTIMED) {
            String text = row.cell(now.clocks.clock().timeColumn());
            remarks.count(text.isEmpty() ? Remark.NO_TIME : Remark.BAD_TIME, line, text);
        }
        now.cells.read(row, line, table.addRow(timeNs, line, 0));
        now.markerTimes.ifPresent(times -> marker.add(times.ns(row)));
        if (startNs.isEmpty() && now.clocks.start().isPresent() && timeNs != SampleTable.UNTIMED) {
            startNs = now.clocks.start().get().read(row.texts(), shape.decimalMark());
            startAtNs = startNs.isPresent() ? OptionalLong.of(timeNs) : OptionalLong.empty();
        }
        if (table.isFull()) {
            remarks.count(Remark.TOO_LONG, line, Long.toString(line));
        }
    }

    Decoding finish() {
        if (!settled) {
            settle();
        }
        Optional<Decoding> refusal = columns.refusal(samples, anyTime());
        if (refusal.isPresent()) {
            return refusal.get();
        }
        ClockChoice clocks = columns.clocks().orElseThrow();
        clocks.findings().forEach(remarks::add);
        leaveOutZeros();
        HeldValues.takeOut(table, marker, remarks);
        marker.clear();
        List<ColumnMeaning> told = columns.settleUnits(table);
        boolean zoneStated = clocks.clock().isAbsolute()
                ? zoneWasStated
                : clocks.start().isEmpty() || clocks.start().get().form() == Clock.Form.EPOCH;
        if (!zoneStated) {
            remarks.count(Remark.ZONE_NOT_STATED, 0);
        }
        counts.put("rows", samples);
        boolean dated = clocks.clock().isAbsolute() || startNs.isPresent();
        TimeOrder order = TimeOrder.of(table);
        boolean plain = order.rows().length == table.rows() && order.movedBlocks() == 0 && positionsAreWhole();
        var head = new RecordingAssembly.Head(
                Format.DELIMITED,
                "",
                dated,
                startNs.isPresent() ? startNs.getAsLong() - startAtNs.orElse(0) : 0,
                zoneStated,
                samples,
                counts,
                plain ? Track.NONE : track(),
                plain);
        Recording recording = RecordingAssembly.assemble(head, table, order, remarks);
        return new Decoded(recording.reading(told));
    }

    private boolean anyTime() {
        for (int row = 0; row < table.rows(); row++) {
            if (table.timeNs(row) != SampleTable.UNTIMED) {
                return true;
            }
        }
        return false;
    }

    private int columnOf(ChannelKind kind) {
        for (int column = 0; column < columns.values().size(); column++) {
            if (columns.values().get(column).kind() == kind) {
                return column;
            }
        }
        return -1;
    }

    private void leaveOutZeros() {
        int latitude = columnOf(ChannelKind.LATITUDE);
        int longitude = columnOf(ChannelKind.LONGITUDE);
        for (int row = 0; row < table.rows() && latitude >= 0 && longitude >= 0; row++) {
            if (table.get(latitude, row) == 0 && table.get(longitude, row) == 0) {
                remarks.count(Remark.ZERO_COORDINATES, table.line(row));
                table.set(latitude, row, Double.NaN);
                table.set(longitude, row, Double.NaN);
            }
        }
    }

    /// Whether latitude and longitude stand in the same rows, so that their channels hold the whole track.
    private boolean positionsAreWhole() {
        int latitude = columnOf(ChannelKind.LATITUDE);
        int longitude = columnOf(ChannelKind.LONGITUDE);
        if (latitude < 0 || longitude < 0) {
            return true;
        }
        for (int row = 0; row < table.rows(); row++) {
            if (Double.isNaN(table.get(latitude, row)) != Double.isNaN(table.get(longitude, row))) {
                return false;
            }
        }
        return true;
    }

    private Track track() {
        int latitude = columnOf(ChannelKind.LATITUDE);
        int longitude = columnOf(ChannelKind.LONGITUDE);
        TrackColumns track = new TrackColumns();
        for (int row = 0; row < table.rows() && latitude >= 0 && longitude >= 0; row++) {
            double north = table.get(latitude, row);
            double east = table.get(longitude, row);
            if (!Double.isNaN(north) && !Double.isNaN(east)) {
                track.add(north, east);
            }
        }
        return track.track();
    }
}
