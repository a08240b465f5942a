package org.measuredmile.recording.reader;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/// A stream that gives up when it has given more than a recording can be.
final class LimitedStream extends FilterInputStream {
    /// Twenty hours at 100 Hz with twenty columns stay below it.
    static final long MOST_BYTES = 2_000_000_000L;

    private long given;

    /// Thrown when the limit is passed.
    static final class TooLarge extends IOException {
        private static final long serialVersionUID = 1;
    }

    LimitedStream(InputStream in) {
        super(in);
    }

    @Override
    public int read() throws IOException {
        int one = super.read();
        count(one < 0 ? 0 : 1);
        return one;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int got = super.read(buffer, offset, length);
        count(Math.max(got, 0));
        return got;
    }

    private void count(int bytes) throws IOException {
        given += bytes;
        if (given > MOST_BYTES) {
            throw new TooLarge();
        }
    }
}
