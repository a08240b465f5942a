package org.measuredmile.recording.reader;

import java.io.IOException;
import java.io.Reader;

/// One text after another; zeros, with which some loggers pad their cells, become blanks.
final class JoinedReader extends Reader {
    private final Reader first;
    private final Reader second;
    private boolean firstEnded;

    JoinedReader(Reader first, Reader second) {
        this.first = first;
        this.second = second;
    }

    @Override
    public int read(char[] buffer, int offset, int length) throws IOException {
        if (!firstEnded) {
            int got = first.read(buffer, offset, length);
            if (got >= 0) {
                return blanked(buffer, offset, got);
            }
            firstEnded = true;
        }
        return blanked(buffer, offset, second.read(buffer, offset, length));
    }

    private static int blanked(char[] buffer, int offset, int got) {
        for (int i = offset; i < offset + got; i++) {
            buffer[i] = buffer[i] == 0 ? ' ' : buffer[i];
        }
        return got;
    }

    @Override
    public void close() throws IOException {
        first.close();
        second.close();
    }
}
