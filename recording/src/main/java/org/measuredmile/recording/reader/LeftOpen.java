package org.measuredmile.recording.reader;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/// Keeps a library that closes what it has read from closing a stream that is not its own.
final class LeftOpen extends FilterInputStream {
    LeftOpen(InputStream in) {
        super(in);
    }

    @Override
    public int read(byte[] buffer, int from, int length) throws IOException {
        return in.read(buffer, from, length);
    }

    @Override
    public void close() {
        // Whoever opened it closes it.
    }
}
