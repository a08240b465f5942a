package org.measuredmile.recording.reader;

import java.io.IOException;
import java.io.Reader;

/// The lines of a text, numbered from 1, none longer than a limit: what exceeds it is cut off, not kept.
final class LineSource {
    private static final int END = -1;

    private final Reader reader;
    private final int longest;
    private final char[] buffer = new char[16_384];
    private final StringBuilder line = new StringBuilder();
    private int size;
    private int at;
    private long number;
    private boolean afterReturn;
    private boolean endsInsideLine;

    LineSource(Reader reader, int longest) {
        this.reader = reader;
        this.longest = longest;
    }

    /// Moves to the next line; false at the end.
    boolean next() throws IOException {
        line.setLength(0);
        boolean any = false;
        while (true) {
            int sign = read();
            if (sign == END) {
                endsInsideLine |= any;
                number += any ? 1 : 0;
                return any;
            }
            boolean secondOfPair = sign == '\n' && afterReturn;
            afterReturn = sign == '\r';
            if (secondOfPair) {
                continue;
            }
            any = true;
            if (sign == '\n' || sign == '\r') {
                number++;
                return true;
            }
            if (line.length() < longest) {
                line.append((char) sign);
            }
        }
    }

    private int read() throws IOException {
        if (at == size) {
            size = reader.read(buffer);
            at = 0;
            if (size <= 0) {
                size = 0;
                return END;
            }
        }
        return buffer[at++];
    }

    String line() {
        return line.toString();
    }

    long number() {
        return number;
    }

    /// Whether the text ended without a line end.
    boolean endsInsideLine() {
        return endsInsideLine;
    }
}
