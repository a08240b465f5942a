package org.measuredmile.recording.reader;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PushbackInputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/// Finds out how a text file is encoded, from its first bytes.
///
/// A byte-order mark decides; else every second byte 0 means UTF-16; else UTF-8 where the head is valid UTF-8, and
/// Windows-1252 where it is not.
final class TextHead {
    private static final int HEAD = 8192;
    private static final Charset WINDOWS = Charset.forName("windows-1252");

    private TextHead() {}

    /// An encoding and how many bytes its mark takes.
    record Encoding(Charset charset, int markLength) {}

    /// The head as text, for telling formats apart.
    static String preview(byte[] head) {
        Encoding encoding = encoding(head, head.length);
        return new String(head, encoding.markLength, head.length - encoding.markLength, encoding.charset);
    }

    /// A reader over the whole stream, without the byte-order mark; signs that cannot be decoded become U+FFFD.
    static Reader open(InputStream bytes) throws IOException {
        PushbackInputStream pushback = new PushbackInputStream(bytes, HEAD);
        byte[] head = pushback.readNBytes(HEAD);
        Encoding encoding = encoding(head, head.length);
        pushback.unread(head, encoding.markLength, head.length - encoding.markLength);
        return new InputStreamReader(
                pushback,
                encoding.charset
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPLACE)
                        .onUnmappableCharacter(CodingErrorAction.REPLACE));
    }

    static Encoding encoding(byte[] head, int length) {
        if (begins(head, length, 0xEF, 0xBB, 0xBF)) {
            return new Encoding(StandardCharsets.UTF_8, 3);
        }
        if (begins(head, length, 0xFE, 0xFF)) {
            return new Encoding(StandardCharsets.UTF_16BE, 2);
        }
        if (begins(head, length, 0xFF, 0xFE)) {
            return new Encoding(StandardCharsets.UTF_16LE, 2);
        }
        int zerosAtEven = zeros(head, length, 0);
        int zerosAtOdd = zeros(head, length, 1);
        int pairs = length / 2;
        if (pairs >= 4 && zerosAtOdd > pairs * 3 / 4 && zerosAtEven < pairs / 4) {
            return new Encoding(StandardCharsets.UTF_16LE, 0);
        }
        if (pairs >= 4 && zerosAtEven > pairs * 3 / 4 && zerosAtOdd < pairs / 4) {
            return new Encoding(StandardCharsets.UTF_16BE, 0);
        }
        return new Encoding(isUtf8(head, length) ? StandardCharsets.UTF_8 : WINDOWS, 0);
    }

    private static boolean begins(byte[] head, int length, int... mark) {
        for (int i = 0; i < mark.length; i++) {
            if (i >= length || (head[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    private static int zeros(byte[] head, int length, int from) {
        int zeros = 0;
        for (int i = from; i < length; i += 2) {
            zeros += head[i] == 0 ? 1 : 0;
        }
        return zeros;
    }

    private static boolean isUtf8(byte[] head, int length) {
        // A sign that the head's end cuts in two is no fault: up to three bytes are let off.
        for (int cut = 0; cut <= 3 && cut <= length; cut++) {
            try {
                StandardCharsets.UTF_8
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .decode(ByteBuffer.wrap(Arrays.copyOf(head, length - cut)));
                return true;
            } catch (CharacterCodingException notYet) {
                // Try with one byte less.
            }
        }
        return false;
    }
}
