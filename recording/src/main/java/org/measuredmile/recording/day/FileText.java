package org.measuredmile.recording.day;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.measuredmile.recording.Place;

/// The text of one of the small files that people write.
///
/// Shape: UTF-8, with or without a byte-order mark, or UTF-16 with one. The optional first line
/// `# measured-mile <kind> <version>` stands in the text; [#bodyFrom()] is where what follows it begins.
record FileText(String file, String text, int bodyFrom) {
    static final int LARGEST_BYTES = 8 << 20;
    private static final Pattern FIRST_LINE =
            Pattern.compile("# *measured-mile +([a-z-]+) +(\\d{1,9})[ \\t,;]*(?:\\r\\n|\\n|\\r|$)");

    /// The text of a file, or nothing when its bytes are no text; what is wrong goes to the faults.
    static Optional<FileText> of(String file, byte[] bytes, String kind, Faults faults) {
        if (bytes.length > LARGEST_BYTES) {
            faults.add(DayFault.FILE_TOO_LARGE, Place.in(file), bytes.length, LARGEST_BYTES);
            return Optional.empty();
        }
        Optional<String> decoded = decode(file, bytes, faults);
        if (decoded.isEmpty()) {
            return Optional.empty();
        }
        String text = decoded.get();
        if (text.isBlank()) {
            faults.add(DayFault.FILE_EMPTY, Place.in(file));
            return Optional.empty();
        }
        Matcher first = FIRST_LINE.matcher(text);
        if (!first.lookingAt()) {
            return Optional.of(new FileText(file, text, 0));
        }
        Place place = Place.atLine(file, 1);
        if (!first.group(1).equals(kind)) {
            faults.add(DayFault.FORMAT_OTHER, place, Faults.quoted(first.group(1)), kind);
        }
        if (!first.group(2).equals("1")) {
            faults.add(DayFault.FORMAT_NEWER, place, first.group(2));
        }
        return Optional.of(new FileText(file, text, first.end()));
    }

    /// The first line of a file of ours.
    static String firstLine(String kind) {
        return "# measured-mile " + kind + " 1\n";
    }

    private static Optional<String> decode(String file, byte[] bytes, Faults faults) {
        Charset charset = charset(bytes);
        if (!charset.equals(StandardCharsets.UTF_8)) {
            faults.add(DayFault.READ_AS_UTF_16, Place.in(file), charset.name());
        }
        int from = markLength(bytes);
        if (from == 3) {
            faults.add(DayFault.BYTE_ORDER_MARK, Place.in(file));
        }
        ByteBuffer in = ByteBuffer.wrap(bytes, from, bytes.length - from);
        CharBuffer out = CharBuffer.allocate(bytes.length + 1);
        CoderResult result = charset.newDecoder().decode(in, out, true);
        if (result.isError()) {
            String shown = "0x" + HexFormat.of().withUpperCase().toHexDigits(bytes[in.position()]);
            faults.add(DayFault.NOT_UTF_8, Place.atByte(file, in.position()), shown);
            return Optional.empty();
        }
        return Optional.of(out.flip().toString());
    }

    /// The character encoding that a file's first bytes name; UTF-8 when they name none.
    static Charset charset(byte[] bytes) {
        if (bytes.length >= 2 && bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF) {
            return StandardCharsets.UTF_16BE;
        }
        if (bytes.length >= 2 && bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE) {
            return StandardCharsets.UTF_16LE;
        }
        return StandardCharsets.UTF_8;
    }

    /// How many bytes the byte-order mark takes; 0 when there is none.
    static int markLength(byte[] bytes) {
        if (!charset(bytes).equals(StandardCharsets.UTF_8)) {
            return 2;
        }
        boolean marked =
                bytes.length >= 3 && bytes[0] == (byte) 0xEF && bytes[1] == (byte) 0xBB && bytes[2] == (byte) 0xBF;
        return marked ? 3 : 0;
    }
}
