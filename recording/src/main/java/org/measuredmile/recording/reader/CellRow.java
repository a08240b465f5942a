package org.measuredmile.recording.reader;

import java.util.Arrays;

/// The cells of one row as stretches of one buffer, without the blanks around them; used again for the next row.
final class CellRow {
    /// More cells than any instrument writes; what lies beyond is counted, not kept.
    private static final int MOST_CELLS = 4096;

    private char[] text = new char[1024];
    private int[] from = new int[64];
    private int[] to = new int[64];
    private int size;
    private int count;
    private int skipped;
    private long line;

    void begin(long atLine) {
        line = atLine;
        size = 0;
        count = 0;
        skipped = 0;
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
        if (count < MOST_CELLS) {
            keep(buffer, first, end - first);
        }
        count++;
    }

    private static boolean isBlank(char sign) {
        return sign <= ' ' || (sign > 0x7F && Character.isWhitespace(sign));
    }

    private void keep(char[] buffer, int offset, int length) {
        if (count == from.length) {
            from = Arrays.copyOf(from, count * 2);
            to = Arrays.copyOf(to, count * 2);
        }
        if (size + length > text.length) {
            text = Arrays.copyOf(text, Math.max(text.length * 2, size + length));
        }
        if (length > 32) {
            System.arraycopy(buffer, offset, text, size, length);
        } else {
            for (int i = 0; i < length; i++) {
                text[size + i] = buffer[offset + i];
            }
        }
        from[count] = size;
        size += length;
        to[count] = size;
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
        return !has(column) || from[column + skipped] == to[column + skipped];
    }

    /// A cell as text; empty where there is none.
    String cell(int column) {
        return has(column)
                ? new String(text, from[column + skipped], to[column + skipped] - from[column + skipped])
                : "";
    }

    /// The number that a cell holds and nothing else; NaN for anything else.
    double number(int column, char decimalMark) {
        return has(column)
                ? NumberText.parse(text, from[column + skipped], to[column + skipped], decimalMark)
                : Double.NaN;
    }

    /// A cell's date and time; [IsoTime#OTHER_FORM] where it has another form.
    long isoNs(int column) {
        return has(column) ? IsoTime.ns(text, from[column + skipped], to[column + skipped]) : IsoTime.OTHER_FORM;
    }

    /// A cell's time of day; [IsoTime#OTHER_FORM] where it has another form.
    long clockNs(int column) {
        return has(column) ? IsoTime.clockNs(text, from[column + skipped], to[column + skipped]) : IsoTime.OTHER_FORM;
    }

    /// The time that a cell's number of units makes, in nanoseconds, half to even; [IsoTime#OTHER_FORM] where that
    /// cannot be told without a text.
    long unitsNs(int column, long nsPerUnit, char decimalMark) {
        return has(column)
                ? UnitTime.ns(text, from[column + skipped], to[column + skipped], nsPerUnit, decimalMark)
                : IsoTime.OTHER_FORM;
    }

    /// Whether a cell reads exactly so.
    boolean is(int column, String words) {
        int first = has(column) ? from[column + skipped] : 0;
        int length = has(column) ? to[column + skipped] - first : 0;
        if (length != words.length()) {
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
        return !isEmpty(0) && "#%/".indexOf(text[from[0]]) >= 0 && TableShape.isComment(cell(0));
    }

    String[] texts() {
        String[] cells = new String[Math.min(count(), MOST_CELLS)];
        for (int column = 0; column < cells.length; column++) {
            cells[column] = cell(column);
        }
        return cells;
    }
}
