package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.recording.ChannelKind;

/// The samples of a file as rows and columns of plain numbers, in the file's own order.
///
/// Shape: a value that is not there is NaN; a row without a time has [#UNTIMED]. Unit: nanoseconds since 1970 or since
/// the instrument's own zero, so that decimals of a second stay exact.
final class SampleTable {
    static final long UNTIMED = Long.MIN_VALUE;

    /// The most cells that are kept of one file, times included: an hour at 400 Hz in fourteen columns, or
    /// three days at 25 Hz in two, within a heap of 256 MB; a bomb does not fit.
    static final long MOST_CELLS = 22_000_000;

    private final LongColumn timesNs = new LongColumn();
    private final SteppedColumn lines = new SteppedColumn();
    private final SteppedColumn segments = new SteppedColumn();
    private final List<Column> columns = new ArrayList<>();

    /// One column; `writtenUnit` is empty where the format fixes the unit.
    record Column(ChannelKind kind, String name, String writtenUnit, DoubleColumn values) {}

    int addColumn(ChannelKind kind, String name, String writtenUnit) {
        columns.add(new Column(kind, name, writtenUnit, new DoubleColumn()));
        return columns.size() - 1;
    }

    /// Adds a row and answers its index.
    int addRow(long timeNs, long line, int segment) {
        timesNs.add(timeNs);
        lines.add(line);
        segments.add(segment);
        return timesNs.size() - 1;
    }

    /// Sets a value of a row; rows of a column that were never set hold NaN.
    void set(int column, int row, double value) {
        columns.get(column).values().put(row, value);
    }

    /// The values of a column, which may still be shorter than the table.
    DoubleColumn values(int column) {
        return columns.get(column).values();
    }

    double get(int column, int row) {
        DoubleColumn values = columns.get(column).values();
        return row < values.size() ? values.get(row) : Double.NaN;
    }

    boolean isFull() {
        return (long) timesNs.size() * (columns.size() + 1) >= MOST_CELLS;
    }

    int rows() {
        return timesNs.size();
    }

    long timeNs(int row) {
        return timesNs.get(row);
    }

    /// Puts a row on another clock, or takes its time away.
    void retime(int row, long timeNs) {
        timesNs.set(row, timeNs);
    }

    /// Where a row stands in its file: a line, or a byte.
    long line(int row) {
        return lines.get(row);
    }

    int segment(int row) {
        return (int) segments.get(row);
    }

    List<Column> columns() {
        return columns;
    }

    /// Puts another kind, unit and values in a column's place.
    void replace(int column, Column by) {
        columns.set(column, by);
    }
}
