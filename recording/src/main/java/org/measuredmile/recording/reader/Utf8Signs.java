package org.measuredmile.recording.reader;

import java.io.CharConversionException;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/// The signs of a UTF-8 stream, strictly: bytes that are none end it with a [CharConversionException], after every sign
/// that stands before them was given, so that the fault has its true line.
///
/// The library's decoder takes stretches of ASCII many bytes at a time, which an XML parser's own does not.
final class Utf8Signs extends Reader {
    private static final int BUFFER = 8192;

    private final InputStream from;
    private final CharsetDecoder decoder = StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    private final ByteBuffer bytes = ByteBuffer.allocate(BUFFER).flip();
    /// The second half of a sign of which only the first was asked for.
    private final CharBuffer left = CharBuffer.allocate(2).flip();
    private boolean ended;

    Utf8Signs(InputStream from) {
        this.from = from;
    }

    @Override
    public int read(char[] buffer, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        if (left.hasRemaining()) {
            buffer[offset] = left.get();
            return 1;
        }
        if (length == 1) {
            int got = decode(left.clear());
            left.flip();
            if (got > 0) {
                buffer[offset] = left.get();
            }
            return Math.min(got, 1);
        }
        return decode(CharBuffer.wrap(buffer, offset, length));
    }

    private int decode(CharBuffer into) throws IOException {
        int before = into.position();
        while (true) {
            CoderResult result = decoder.decode(bytes, into, ended);
            if (into.position() > before) {
                return into.position() - before;
            }
            if (result.isError()) {
                throw new CharConversionException("a byte that is no UTF-8");
            }
            if (ended) {
                return -1;
            }
            fill();
        }
    }

    private void fill() throws IOException {
        bytes.compact();
        int got = from.read(bytes.array(), bytes.position(), bytes.remaining());
        ended = got < 0;
        bytes.position(bytes.position() + Math.max(got, 0));
        bytes.flip();
    }

    @Override
    public void close() throws IOException {
        from.close();
    }
}
