package org.measuredmile.recording.reader;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/// A stream of unpacked bytes that gives up when it has given more than a recording can be, or far
/// more than was packed.
final class LimitedStream extends FilterInputStream {
    /// Twenty hours at 100 Hz with twenty columns stay below it.
    static final long MOST_BYTES = 2_000_000_000L;
    /// Logs of one steady value pack to a hundredth, recordings to a tenth: common practice, no
    /// source.
    static final long MOST_TIMES_PACKED = 400;
    /// So much may come whatever it was packed to.
    static final long FREE_BYTES = 20_000_000;

    private final long mostBytes;
    private final CountedStream packed;
    private final long packedBefore;
    private long given;

    /// Thrown when the limit is passed.
    static final class TooLarge extends IOException {
        private static final long serialVersionUID = 1;
    }

    /// Thrown when the bytes grow as no recording does.
    static final class Bomb extends IOException {
        private static final long serialVersionUID = 1;

        Bomb() {
            super("unpacked, an entry grows to more than " + MOST_TIMES_PACKED
                    + " times its packed size, as no recording does");
        }
    }

    /// @param packed what the bytes of `in` are unpacked from
    LimitedStream(InputStream in, long mostBytes, CountedStream packed) {
        super(in);
        this.mostBytes = mostBytes;
        this.packed = packed;
        this.packedBefore = packed.given();
    }

    long given() {
        return given;
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
        if (given > mostBytes) {
            throw new TooLarge();
        }
        if (given > FREE_BYTES && given / MOST_TIMES_PACKED > packed.given() - packedBefore + 512) {
            throw new Bomb();
        }
    }
}
