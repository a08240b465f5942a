package org.measuredmile.recording.reader;

import java.io.IOException;
import java.io.Reader;

/// One text after another.
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
                return got;
            }
            firstEnded = true;
        }
        return second.read(buffer, offset, length);
    }

    @Override
    public void close() throws IOException {
        first.close();
        second.close();
    }
}
