package org.measuredmile.recording.reader;

import java.io.CharArrayReader;
import java.io.IOException;
import java.io.Reader;
import java.util.Arrays;

/// The rows of a table up to the first line that holds a quote sign: without one a cell ends at the
/// next separator and a row at the next line end, and numbers can be read while their cells are cut.
///
/// What comes from that line on is for the library, which knows quotes; until then both give the same
/// rows (PlainRowsPropertyTest).
/// Source: RFC 4180, 2, for cells without quotes; a line may end with CR, LF or both.
final class PlainRows {
    private static final int USUAL = 1 << 15;
    private static final char LINE_FEED = '\n';
    private static final char RETURN = '\r';
    /// `2031-05-04T10:15:30`.
    private static final int SHORTEST_TIME = 19;

    private final Reader text;
    private final char separator;
    private final int longestLine;
    private final CellRow row;
    /// One sign more than is read into it: a line end that ends every cell.
    private char[] buffer = new char[USUAL + 1];
    private int lineAt;
    private int end;
    private boolean atEnd;
    private boolean isPlain = true;
    private long line;
    private int timeLength;

    /// Shape: a line longer than `longestLine` is left to the library, which refuses it.
    PlainRows(Reader text, char separator, int longestLine, CellRow row) {
        this.text = text;
        this.separator = separator;
        this.longestLine = longestLine;
        this.row = row;
        buffer[0] = LINE_FEED;
    }

    /// Reads the next row; false at the end, or at the first line that is not plain.
    boolean next() throws IOException {
        while (isPlain) {
            int from = lineAt;
            int after = cut(from);
            if (after > 0) {
                lineAt = after;
                line++;
                if (!isEmptyLine(from)) {
                    return true;
                }
            } else if (isPlain && !more()) {
                return false;
            }
        }
        return false;
    }

    private boolean isEmptyLine(int from) {
        return buffer[from] == LINE_FEED || buffer[from] == RETURN;
    }

    /// How many lines were read.
    long lines() {
        return line;
    }

    /// What was not read: from the beginning of a line on.
    Reader rest() {
        return new JoinedReader(new CharArrayReader(buffer, lineAt, end - lineAt), text);
    }

    /// Cuts one line into cells; answers where the next one begins, or 0 where more has to be read first
    /// or the line is not plain.
    private int cut(int from) {
        row.begin(line + 1);
        int at = from;
        while (true) {
            int stop = readEnd(at);
            char sign = buffer[stop];
            if (stop == end) {
                return atEnd && stop > from ? stop : 0;
            }
            if (sign == separator) {
                at = stop + 1;
            } else if (sign == LINE_FEED) {
                return stop + 1;
            } else if (sign == RETURN) {
                boolean isPair = stop + 1 < end && buffer[stop + 1] == LINE_FEED;
                return stop + 1 < end || atEnd ? stop + (isPair ? 2 : 1) : 0;
            } else {
                isPlain = false;
                return 0;
            }
        }
    }

    /// Adds a cell to the row and answers where it ends.
    private int readEnd(int from) {
        int stop = from;
        if (from < end && row.expectsNumber()) {
            stop = numberEnd(from);
        } else if (row.expectsTime()) {
            stop = timeEnd(from);
        }
        if (stop == from) {
            stop = cellEnd(from);
            row.add(buffer, from, stop - from);
        }
        return stop;
    }

    /// Reads a date with a time that is as long as the one before; answers where its cell ends, or `from`
    /// where it holds anything else.
    private int timeEnd(int from) {
        int stop = from + timeLength;
        boolean isCell = timeLength >= SHORTEST_TIME
                && stop < end
                && isCellEnd(buffer[stop])
                // The one place of a time where a separator could stand, as the mark of its decimals.
                && (buffer[from + SHORTEST_TIME] != separator || timeLength == SHORTEST_TIME);
        long ns = isCell ? IsoTime.ns(buffer, from, stop) : IsoTime.OTHER_FORM;
        if (ns != IsoTime.OTHER_FORM) {
            row.addTime(ns);
            return stop;
        }
        timeLength = cellEnd(from) - from;
        return from;
    }

    private boolean isCellEnd(char sign) {
        return sign == separator || sign == LINE_FEED || sign == RETURN;
    }

    /// Where a cell ends: at the separator, the line's end or a quote sign.
    private int cellEnd(int from) {
        int at = from;
        char sign = buffer[at];
        while (sign != separator && sign != LINE_FEED && sign != RETURN && sign != '"') {
            sign = buffer[++at];
        }
        return at;
    }

    /// Reads the number that fills a cell; answers where the cell ends, or `from` where it holds anything
    /// else.
    private int numberEnd(int from) {
        char[] signs = buffer;
        char mark = row.decimalMark();
        int at = signs[from] == '-' ? from + 1 : from;
        int first = at;
        long digits = 0;
        char digit = (char) (signs[at] - '0');
        while (digit <= 9) {
            digits = digits * 10 + digit;
            digit = (char) (signs[++at] - '0');
        }
        int seen = at - first;
        int decimals = 0;
        if (signs[at] == mark) {
            int point = at;
            digit = (char) (signs[++at] - '0');
            while (digit <= 9) {
                digits = digits * 10 + digit;
                digit = (char) (signs[++at] - '0');
            }
            decimals = at - point - 1;
            seen += decimals;
        }
        char sign = signs[at];
        if (!isCellEnd(sign) || seen == 0 || seen > NumberText.MOST_DIGITS) {
            return from;
        }
        double size = ExactDouble.of(digits, -decimals);
        if (Double.isNaN(size)) {
            return from;
        }
        row.addNumber(first > from ? -size : size);
        return at;
    }

    /// Reads on, keeping the line that was begun; false at the text's end, or where that line is too long.
    private boolean more() throws IOException {
        if (atEnd) {
            return false;
        }
        int kept = end - lineAt;
        if (kept > longestLine) {
            isPlain = false;
            return true;
        }
        if (kept * 2 > buffer.length) {
            buffer = Arrays.copyOf(buffer, buffer.length * 2 - 1);
        }
        System.arraycopy(buffer, lineAt, buffer, 0, kept);
        lineAt = 0;
        end = kept;
        int got = text.read(buffer, end, buffer.length - 1 - end);
        atEnd = got < 0;
        end += Math.max(got, 0);
        buffer[end] = LINE_FEED;
        return !atEnd || end > 0;
    }
}
