package org.measuredmile.recording.reader;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/// A stream that knows how many bytes it has given.
class CountedStream extends FilterInputStream {
    private long given;

    CountedStream(InputStream in) {
        super(in);
    }

    final long given() {
        return given;
    }

    @Override
    public int read() throws IOException {
        int one = in.read();
        given += one < 0 ? 0 : 1;
        return one;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int got = in.read(buffer, offset, length);
        given += Math.max(got, 0);
        return got;
    }
}
