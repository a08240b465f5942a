package org.measuredmile.recording.reader;

import java.io.IOException;
import java.io.InputStream;

/// The bytes of a zip file, watched for the record that ends every one: without it the file was cut
/// off.
///
/// Source: APPNOTE.TXT, .ZIP File Format Specification, 4.3.16: signature 0x06054b50,
/// little-endian.
final class ZipStream extends CountedStream {
    private static final int END_SIGNATURE = 0x504B0506;

    private int lastFour;
    private long seen;
    private long endAt = -1;

    ZipStream(InputStream in) {
        super(in);
    }

    /// How many bytes came before the last end record began; -1 where none was seen yet.
    long endAt() {
        return endAt;
    }

    @Override
    public int read() throws IOException {
        int one = super.read();
        if (one >= 0) {
            watch(one);
        }
        return one;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int got = super.read(buffer, offset, length);
        for (int i = 0; i < got; i++) {
            watch(buffer[offset + i]);
        }
        return got;
    }

    private void watch(int one) {
        lastFour = (lastFour << 8) | (one & 0xFF);
        seen++;
        if (lastFour == END_SIGNATURE) {
            endAt = seen - 4;
        }
    }
}
