package org.measuredmile.recording.reader;

import java.time.Instant;
import java.util.Arrays;

/// The cells of one row as stretches of one buffer, without the blanks around them; used again for the next row.
final class CellRow {
    /// More cells than any instrument writes; what lies beyond is counted, not kept.
    private static final int MOST_CELLS = 4096;
    /// Where the text of a cell would begin that was read as a number.
    private static final int NOT_KEPT = -1;

    private char[] text = new char[1024];
    private int[] from = new int[64];
    private int[] to = new int[64];
    private int size;
    private int count;
    private int skipped;
    private long line;
    private Expected[] expected = {};
    private double[] numbers = {};
    private long[] times = {};
    private char decimalMark;

    /// What a cell holds where all goes well.
    enum Expected {
        NUMBER,
        DATE_AND_TIME,
        TEXT
    }

    /// From now on the cells in these places are read when they come; only what holds something else is
    /// kept as text.
    void expect(Expected[] cells, char mark) {
        expected = cells.clone();
        numbers = new double[cells.length];
        times = new long[cells.length];
        decimalMark = mark;
    }

    void begin(long atLine) {
        line = atLine;
        size = 0;
        count = 0;
        skipped = 0;
    }

    /// Whether the next cell is expected to be a number.
    boolean expectsNumber() {
        return count < expected.length && expected[count] == Expected.NUMBER;
    }

    /// Whether the next cell is expected to be a date with a time.
    boolean expectsTime() {
        return count < expected.length && expected[count] == Expected.DATE_AND_TIME;
    }

    char decimalMark() {
        return decimalMark;
    }

    /// Adds the number of a cell that was expected to be one.
    void addNumber(double number) {
        numbers[count] = number;
        place(NOT_KEPT, NOT_KEPT);
        count++;
    }

    /// Adds the time of a cell that was expected to be one.
    void addTime(long ns) {
        times[count] = ns;
        place(NOT_KEPT, NOT_KEPT);
        count++;
    }

    void add(char[] buffer, int offset, int length) {
        int first = offset;
        int end = offset + length;
        while (first < end && isBlank(buffer[first])) {
            first++;
        }
        while (end > first && isBlank(buffer[end - 1])) {
            end--;
        }
        if (count < expected.length && expected[count] == Expected.NUMBER && first < end) {
            double number = NumberText.parse(buffer, first, end, decimalMark);
            if (!Double.isNaN(number)) {
                addNumber(number);
                return;
            }
        } else if (count < expected.length && expected[count] == Expected.DATE_AND_TIME) {
            long ns = IsoTime.ns(buffer, first, end);
            if (ns != IsoTime.OTHER_FORM) {
                addTime(ns);
                return;
            }
        }
        if (count < MOST_CELLS) {
            keep(buffer, first, end - first);
        }
        count++;
    }

    private void place(int start, int end) {
        if (count == from.length) {
            from = Arrays.copyOf(from, count * 2);
            to = Arrays.copyOf(to, count * 2);
        }
        from[count] = start;
        to[count] = end;
    }

    private static boolean isBlank(char sign) {
        return sign <= ' ' || (sign > 0x7F && Character.isWhitespace(sign));
    }

    private void keep(char[] buffer, int offset, int length) {
        if (size + length > text.length) {
            text = Arrays.copyOf(text, Math.max(text.length * 2, size + length));
        }
        for (int i = 0; i < length; i++) {
            char sign = buffer[offset + i];
            // Some loggers pad their cells with zeros.
            text[size + i] = sign == 0 ? ' ' : sign;
        }
        place(size, size + length);
        size += length;
    }

    /// Takes cells that were kept as texts.
    void load(String[] cells, long atLine) {
        begin(atLine);
        for (String cell : cells) {
            add(cell.toCharArray(), 0, cell.length());
        }
    }

    /// Leaves the first cell out of all that follows.
    void skipFirst() {
        skipped = 1;
    }

    long line() {
        return line;
    }

    int count() {
        return count - skipped;
    }

    private boolean has(int column) {
        return column >= 0 && column + skipped < Math.min(count, MOST_CELLS);
    }

    boolean isEmpty(int column) {
        return !has(column) || (from[column + skipped] == to[column + skipped] && from[column + skipped] != NOT_KEPT);
    }

    /// A cell as text; empty where there is none.
    String cell(int column) {
        if (!has(column)) {
            return "";
        }
        int at = column + skipped;
        return from[at] == NOT_KEPT ? written(at) : new String(text, from[at], to[at] - from[at]);
    }

    private String written(int at) {
        if (expected[at] == Expected.DATE_AND_TIME) {
            return Instant.EPOCH.plusNanos(times[at]).toString();
        }
        double number = numbers[at];
        return number == Math.rint(number) && Math.abs(number) < 1e15
                ? Long.toString((long) number)
                : Double.toString(number);
    }

    /// The number that a cell holds and nothing else; NaN for anything else.
    double number(int column, char mark) {
        if (!has(column)) {
            return Double.NaN;
        }
        int at = column + skipped;
        if (from[at] == NOT_KEPT) {
            return numbers[at];
        }
        return at < expected.length && expected[at] == Expected.NUMBER
                ? Double.NaN
                : NumberText.parse(text, from[at], to[at], mark);
    }

    /// The number of a cell that was expected to be one and is; NaN for anything else.
    double expected(int column) {
        int at = column + skipped;
        return at < numbers.length && at < count && from[at] == NOT_KEPT && expected[at] == Expected.NUMBER
                ? numbers[at]
                : Double.NaN;
    }

    /// A cell's date and time; [IsoTime#OTHER_FORM] where it has another form.
    long isoNs(int column) {
        int at = column + skipped;
        if (!has(column)) {
            return IsoTime.OTHER_FORM;
        }
        return from[at] == NOT_KEPT ? times[at] : IsoTime.ns(text, from[at], to[at]);
    }

    /// A cell's time of day; [IsoTime#OTHER_FORM] where it has another form.
    long clockNs(int column) {
        return has(column) ? IsoTime.clockNs(text, from[column + skipped], to[column + skipped]) : IsoTime.OTHER_FORM;
    }

    /// The time that a cell's number of units makes, in nanoseconds, half to even; [IsoTime#OTHER_FORM] where that
    /// cannot be told without a text.
    long unitsNs(int column, long nsPerUnit, char mark) {
        return has(column)
                ? UnitTime.ns(text, from[column + skipped], to[column + skipped], nsPerUnit, mark)
                : IsoTime.OTHER_FORM;
    }

    /// Whether a cell reads exactly so.
    boolean is(int column, String words) {
        int first = has(column) ? from[column + skipped] : 0;
        int length = has(column) ? to[column + skipped] - first : 0;
        if (first == NOT_KEPT || length != words.length()) {
            return false;
        }
        for (int i = 0; i < length; i++) {
            if (text[first + i] != words.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    /// Whether the row says nothing: no cell, or one without a sign.
    boolean isBlank() {
        return count == 0 || (count == 1 && isEmpty(0));
    }

    boolean isComment() {
        return !isEmpty(0)
                && from[skipped] != NOT_KEPT
                && "#%/".indexOf(text[from[skipped]]) >= 0
                && TableShape.isComment(cell(0));
    }

    String[] texts() {
        String[] cells = new String[Math.min(count(), MOST_CELLS)];
        for (int column = 0; column < cells.length; column++) {
            cells[column] = cell(column);
        }
        return cells;
    }
}
