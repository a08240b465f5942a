package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.ColumnMeaning.Role;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.reader.Decoding.Decoded;

/// A table while it is read: the first rows decide what the columns mean, then every row goes into numbers.
final class DelimitedTable {
    /// How many rows are looked at before the columns' meaning is settled.
    private static final int ROWS_LOOKED_AT = 2000;

    private static final int MOST_COLUMNS = 1000;

    private final TableShape shape;
    private final Remarks remarks;
    private final SampleTable table = new SampleTable();
    private final LongColumn marker = new LongColumn();
    private final TreeMap<String, Long> counts = new TreeMap<>();
    private final List<String[]> first = new ArrayList<>();
    private final List<Long> firstLines = new ArrayList<>();
    private final List<ColumnMeaning> values = new ArrayList<>();
    private List<ColumnMeaning> meanings = List.of();
    private Optional<ClockChoice> choice = Optional.empty();
    private Optional<CellReader> cells = Optional.empty();
    private boolean settled;
    private boolean zoneWasStated;
    private long samples;
    private long lastLine;
    private long dayNs;
    private long beforeNs = Long.MIN_VALUE;
    private OptionalLong startNs = OptionalLong.empty();
    private OptionalLong startAtNs = OptionalLong.empty();

    DelimitedTable(TableShape shape, Remarks remarks) {
        this.shape = shape;
        this.remarks = remarks;
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

    void row(String[] record, long line) {
        lastLine = line;
        Optional<String[]> row = ofThisTable(record);
        if (row.isEmpty()) {
            return;
        }
        samples++;
        if (settled) {
            take(row.get(), line);
            return;
        }
        first.add(row.get());
        firstLines.add(line);
        if (first.size() >= ROWS_LOOKED_AT) {
            settle();
        }
    }

    private Optional<String[]> ofThisTable(String[] record) {
        if (record.length == 0 || (record.length == 1 && record[0].isBlank())) {
            return Optional.empty();
        }
        if (TableShape.isComment(record[0])) {
            return Optional.empty();
        }
        if (shape.lineType().isEmpty()) {
            return Optional.of(record);
        }
        String type = record[0].strip();
        if (!type.equals(shape.lineType())) {
            String named = type.matches("[A-Za-z]{1,16}") ? type : "other";
            counts.merge("lines-" + named.toLowerCase(java.util.Locale.ROOT), 1L, Long::sum);
            return Optional.empty();
        }
        return Optional.of(java.util.Arrays.copyOfRange(record, 1, record.length));
    }

    private void settle() {
        settled = true;
        List<ColumnName> names =
                shape.names().stream().limit(MOST_COLUMNS).map(ColumnName::of).toList();
        var sample = new ClockChoice.Sample(remarks.source(), names, first, shape.decimalMark());
        choice = ClockChoice.of(sample);
        zoneWasStated = choice.isPresent() && choice.get().clock().statesZone(first);
        meanings = ColumnProposal.of(sample);
        List<ColumnMeaning> hemispheres = new ArrayList<>();
        for (ColumnMeaning meaning : meanings) {
            if (meaning.role() == Role.VALUE) {
                values.add(meaning);
                table.addColumn(meaning.kind(), meaning.name(), meaning.writtenUnit());
            } else if (meaning.role() == Role.HEMISPHERE) {
                hemispheres.add(meaning);
            }
        }
        cells = Optional.of(new CellReader(values, hemispheres, shape.decimalMark(), remarks));
        if (choice.isPresent()) {
            for (int i = 0; i < first.size(); i++) {
                take(first.get(i), firstLines.get(i));
            }
        }
        first.clear();
        firstLines.clear();
    }

    private void take(String[] record, long line) {
        if (choice.isEmpty() || table.isFull()) {
            return;
        }
        ClockChoice clocks = choice.get();
        int extra = record.length - shape.names().size();
        if (extra < 0 || (extra > 0 && !record[record.length - 1].isBlank())) {
            remarks.count(Remark.SHORT_ROW, line);
        }
        long timeNs = time(clocks, record, line);
        int row = table.addRow(timeNs, line, 0);
        cells.orElseThrow().read(record, table, row);
        if (clocks.marker().isPresent()) {
            marker.add(clocks.marker().get().read(record, shape.decimalMark()).orElse(SampleTable.UNTIMED));
        }
        if (startNs.isEmpty() && clocks.start().isPresent() && timeNs != SampleTable.UNTIMED) {
            startNs = clocks.start().get().read(record, shape.decimalMark());
            startAtNs = startNs.isPresent() ? OptionalLong.of(timeNs) : OptionalLong.empty();
        }
        if (table.isFull()) {
            remarks.count(Remark.TOO_LONG, line, Long.toString(line));
        }
    }

    private long time(ClockChoice clocks, String[] record, long line) {
        OptionalLong ns = clocks.clock().read(record, shape.decimalMark());
        if (ns.isEmpty()) {
            String text = Clock.cell(record, clocks.clock().timeColumn());
            remarks.count(text.isEmpty() ? Remark.NO_TIME : Remark.BAD_TIME, line, text);
            return SampleTable.UNTIMED;
        }
        if (clocks.clock().form() != Clock.Form.TIME_OF_DAY) {
            return ns.getAsLong();
        }
        if (beforeNs != Long.MIN_VALUE && ns.getAsLong() < beforeNs - TimeText.DAY_NS / 2) {
            dayNs += TimeText.DAY_NS;
        }
        beforeNs = ns.getAsLong();
        return dayNs + ns.getAsLong();
    }

    Decoding finish() {
        if (!settled) {
            settle();
        }
        Optional<Decoding> refusal = refusal();
        if (refusal.isPresent()) {
            return refusal.get();
        }
        ClockChoice clocks = choice.orElseThrow();
        clocks.findings().forEach(remarks::add);
        leaveOutZeros();
        HeldValues.takeOut(table, marker, remarks);
        settleUnits();
        boolean zoneStated = clocks.clock().isAbsolute()
                ? zoneWasStated
                : clocks.start().isEmpty() || clocks.start().get().form() == Clock.Form.EPOCH;
        if (!zoneStated) {
            remarks.count(Remark.ZONE_NOT_STATED, 0);
        }
        counts.put("rows", samples);
        boolean dated = clocks.clock().isAbsolute() || startNs.isPresent();
        var head = new RecordingAssembly.Head(
                Format.DELIMITED,
                "",
                dated,
                startNs.isPresent() ? startNs.getAsLong() - startAtNs.orElse(0) : 0,
                zoneStated,
                samples,
                counts,
                track());
        return new Decoded(RecordingAssembly.assemble(head, table, TimeOrder.of(table), remarks));
    }

    private Optional<Decoding> refusal() {
        Place file = Place.in(remarks.source());
        if (samples == 0) {
            return Optional.of(remarks.refuse(
                    "no-rows", file, "there is a head but no row below it", "copy the file from the instrument again"));
        }
        if (choice.isEmpty()) {
            String names = shape.names().stream().limit(12).map(Remarks::quoted).collect(Collectors.joining(", "));
            return Optional.of(remarks.refuse(
                    "no-times",
                    file,
                    "none of the columns (" + names + ") holds times: the table is no recording",
                    "export it with a column of times; results of earlier years go into the ledger"));
        }
        boolean timed = false;
        for (int row = 0; row < table.rows() && !timed; row++) {
            timed = table.timeNs(row) != SampleTable.UNTIMED;
        }
        if (!timed || values.isEmpty()) {
            return Optional.of(remarks.refuse(
                    "no-samples",
                    file,
                    timed ? "no column holds numbers" : "none of " + samples + " rows has a time that can be read",
                    "look at the columns named below"));
        }
        return Optional.empty();
    }

    private int columnOf(ChannelKind kind) {
        for (int column = 0; column < values.size(); column++) {
            if (values.get(column).kind() == kind) {
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

    private void settleUnits() {
        ColumnUnits units = new ColumnUnits(new TableDistances(table, values), remarks);
        List<ColumnMeaning> decided = new ArrayList<>();
        for (int column = 0; column < values.size(); column++) {
            decided.add(units.settle(values.get(column), column));
        }
        for (int column = 0; column < decided.size(); column++) {
            ColumnMeaning meaning = decided.get(column);
            SampleTable.Column old = table.columns().get(column);
            DoubleColumn scaled = old.values();
            if (meaning.unit().isPresent()) {
                Unit unit = meaning.unit().get();
                for (int row = 0; row < scaled.size(); row++) {
                    scaled.set(row, unit.toSi(scaled.get(row)));
                }
            }
            String written = meaning.unit().map(Unit::symbol).orElse(meaning.writtenUnit());
            table.replace(column, new SampleTable.Column(meaning.kind(), meaning.name(), written, scaled));
        }
        tell(decided);
    }

    private void tell(List<ColumnMeaning> decided) {
        List<ColumnMeaning> all = new ArrayList<>(decided);
        meanings.stream().filter(meaning -> meaning.role() != Role.VALUE).forEach(all::add);
        all.sort(java.util.Comparator.comparingInt(ColumnMeaning::index));
        String told = all.stream()
                .filter(meaning -> meaning.role() != Role.EMPTY)
                .limit(80)
                .map(ColumnMeaning::phrase)
                .collect(Collectors.joining("; "));
        remarks.add(Finding.note("columns", Place.in(remarks.source()), "columns read as: " + told));
        if (shape.separator() != ',' || shape.decimalMark() != '.') {
            String separator = shape.separator() == '\t' ? "tab" : "\"" + shape.separator() + "\"";
            remarks.add(Finding.note(
                    "separator",
                    Place.in(remarks.source()),
                    "columns are parted by " + separator + ", decimals by \"" + shape.decimalMark() + "\""));
        }
        if (!shape.lineType().isEmpty()) {
            remarks.add(Finding.note(
                    "line-types",
                    Place.in(remarks.source()),
                    "of several types of lines those beginning with \"" + Remarks.quoted(shape.lineType())
                            + "\" were read"));
        }
    }

    private org.measuredmile.recording.Track track() {
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
