package org.measuredmile.recording.reader;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/// A window that moves over a stream, so large that a whole message of any kind stands in it at once.
///
/// Shape: `at` is where the next byte to be taken stands in `array`; `offset` is its place in the file. Whatever was
/// taken since the last restart is in the checksum.
final class FitBytes {
    /// A header byte, and 255 fields of 255 bytes each, once the protocol's own and once an application's.
    static final int LONGEST_MESSAGE = 1 + 2 * 255 * 255;

    private static final int WINDOW = 1 << 18;

    private final InputStream in;
    private final byte[] array = new byte[WINDOW];
    private final ByteBuffer little = ByteBuffer.wrap(array).order(ByteOrder.LITTLE_ENDIAN);
    private final ByteBuffer big = ByteBuffer.wrap(array).order(ByteOrder.BIG_ENDIAN);
    private final FitChecksum checksum = new FitChecksum();
    private int at;
    private int end;
    private int summedTo;
    private long before;
    private boolean ended;

    FitBytes(InputStream in) {
        this.in = in;
    }

    byte[] array() {
        return array;
    }

    /// The window, read in one byte order or the other.
    ByteBuffer view(boolean bigEndian) {
        return bigEndian ? big : little;
    }

    int at() {
        return at;
    }

    long offset() {
        return before + at;
    }

    /// Whether so many bytes are left; they then stand in the window.
    boolean has(int count) throws IOException {
        if (end - at < count) {
            fill(count);
        }
        return end - at >= count;
    }

    private void fill(int count) throws IOException {
        if (ended) {
            return;
        }
        sum();
        System.arraycopy(array, at, array, 0, end - at);
        before += at;
        end -= at;
        at = 0;
        summedTo = 0;
        while (end < count && !ended) {
            int got = in.read(array, end, array.length - end);
            ended = got < 0;
            end += Math.max(got, 0);
        }
    }

    /// How many bytes stand in the window still.
    int left() {
        return end - at;
    }

    /// The byte so far ahead, which must stand in the window.
    int peek(int ahead) {
        return array[at + ahead] & 0xFF;
    }

    void take(int count) {
        at += count;
    }

    /// Passes over bytes; false when the stream ends before.
    boolean skip(long count) throws IOException {
        long left = count;
        while (left > 0) {
            if (!has(1)) {
                return false;
            }
            int step = (int) Math.min(left, end - at);
            at += step;
            left -= step;
        }
        return true;
    }

    void restartChecksum() {
        summedTo = at;
        checksum.restart();
    }

    /// The checksum of what was taken since the restart.
    int checksum() {
        sum();
        return checksum.value();
    }

    private void sum() {
        checksum.add(array, summedTo, at);
        summedTo = at;
    }
}
