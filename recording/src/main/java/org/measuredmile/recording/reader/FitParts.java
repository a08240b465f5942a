package org.measuredmile.recording.reader;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import org.measuredmile.recording.Place;

/// Walks the parts of a FIT file and their messages, and tells where the walk met something that cannot be right.
///
/// A part that turns unreadable inside is left for the next one, whose place its header states; a file that ends in the
/// middle ends the walk.
final class FitParts {
    private static final int HEADER_WITH_CHECKSUM = 14;
    private static final long UNKNOWN_SIZE = 0xFFFF_FFFFL;
    private static final int COMPRESSED = 0x80;
    private static final int DEFINITION = 0x40;
    private static final int WITH_DEVELOPER_FIELDS = 0x20;
    private static final int LOCAL_TYPES = 16;
    private static final int LOOK_EVERY = 1024;

    private final FitBytes bytes;
    private final Remarks remarks;
    private final FitContent content;
    private final @Nullable FitDefinition[] definitions = new @Nullable FitDefinition[LOCAL_TYPES];
    private OptionalLong stoppedAt = OptionalLong.empty();
    private long partEnd;
    private boolean sizeKnown;
    private int messages;

    /// How a message came out.
    private enum Outcome {
        TAKEN,
        /// The stream ends inside it.
        CUT,
        /// It cannot be right, and so nobody knows where the next one begins.
        UNREADABLE,
        /// As much is held as can be.
        FULL
    }

    FitParts(FitBytes bytes, Remarks remarks) {
        this.bytes = bytes;
        this.remarks = remarks;
        content = new FitContent(remarks, bytes);
    }

    /// The byte at which the file broke off or turned unreadable; empty where it did not.
    OptionalLong stoppedAt() {
        return stoppedAt;
    }

    /// Whether a header begins at the next byte.
    boolean atHeader() throws IOException {
        return isHeader(0);
    }

    private boolean isHeader(int ahead) throws IOException {
        return bytes.has(ahead + FitReader.SHORTEST_HEADER)
                && bytes.peek(ahead) >= FitReader.SHORTEST_HEADER
                && bytes.peek(ahead + 8) == '.'
                && bytes.peek(ahead + 9) == 'F'
                && bytes.peek(ahead + 10) == 'I'
                && bytes.peek(ahead + 11) == 'T';
    }

    FitContent read() throws IOException {
        boolean more = true;
        while (more && atHeader()) {
            content.count("parts");
            content.startPart();
            more = part();
            content.endPart();
        }
        if (more && bytes.has(1)) {
            remarks.add(FitTold.TRAILING.at(
                    place(), "after the end of the file there are bytes that belong to nothing; they were not read"));
        }
        return content;
    }

    private Place place() {
        return Place.atByte(remarks.source(), bytes.offset());
    }

    /// Reads one part; false when nothing can follow it.
    private boolean part() throws IOException {
        Arrays.fill(definitions, null);
        bytes.restartChecksum();
        int header = bytes.peek(0);
        if (!bytes.has(header)) {
            return cut("in the header");
        }
        long size = word(4) & 0xFFFF_FFFFL;
        header(header);
        sizeKnown = size != UNKNOWN_SIZE && !(size == 0 && !endsHere());
        if (!sizeKnown) {
            remarks.add(FitTold.NOT_CLOSED.at(
                    place(),
                    "the header states no size: the instrument did not close the file; it was read to its last whole"
                            + " message"));
        }
        partEnd = sizeKnown ? bytes.offset() + size : Long.MAX_VALUE;
        return messages();
    }

    /// Whether a part that states no data ends where it says: at its checksum, with nothing or another part behind.
    private boolean endsHere() throws IOException {
        return !bytes.has(3) || isHeader(2);
    }

    private void header(int length) {
        int stored = length >= HEADER_WITH_CHECKSUM ? bytes.peek(12) | (bytes.peek(13) << 8) : 0;
        bytes.take(FitReader.SHORTEST_HEADER);
        int right = bytes.checksum();
        if (stored != 0 && stored != right) {
            remarks.add(FitTold.HEADER_CHECKSUM.at(place(), "the header's checksum is wrong"));
        }
        bytes.take(length - FitReader.SHORTEST_HEADER);
    }

    private int word(int ahead) {
        ByteBuffer view = bytes.view(false);
        return view.getInt(bytes.at() + ahead);
    }

    private boolean messages() throws IOException {
        while (bytes.offset() < partEnd) {
            long from = bytes.offset();
            Outcome outcome = bytes.has(1) ? message() : Outcome.CUT;
            switch (outcome) {
                case TAKEN -> {
                    // On to the next one.
                }
                case CUT -> {
                    return sizeKnown && cut("at a message that begins there");
                }
                case UNREADABLE -> {
                    stoppedAt = OptionalLong.of(from);
                    return sizeKnown && bytes.skip(partEnd - bytes.offset()) && closed();
                }
                case FULL -> {
                    remarks.count(Remark.TOO_LONG, from, Long.toString(from));
                    return false;
                }
            }
        }
        return closed();
    }

    /// The file ends in the middle.
    private boolean cut(String where) {
        stoppedAt = OptionalLong.of(bytes.offset());
        if (content.samples() > 1) {
            remarks.add(FitTold.CUT_OFF.at(
                    place(), "the file ends in the middle, " + where + "; what came before was kept"));
        }
        return false;
    }

    private boolean closed() throws IOException {
        if (!bytes.has(2)) {
            return cut("at its checksum");
        }
        int right = bytes.checksum();
        int stored = bytes.peek(0) | (bytes.peek(1) << 8);
        if (stored != right) {
            remarks.add(FitTold.FILE_CHECKSUM.at(
                    place(), "the checksum is wrong: bytes were changed since the instrument wrote them"));
        }
        bytes.take(2);
        return true;
    }

    private Outcome message() throws IOException {
        if (++messages % LOOK_EVERY == 0 && content.isFull()) {
            return Outcome.FULL;
        }
        int header = bytes.peek(0);
        if ((header & COMPRESSED) != 0) {
            return sample(definitions[(header >> 5) & 3], header);
        }
        if ((header & DEFINITION) != 0) {
            return definition(header);
        }
        return sample(definitions[header & 0xF], header);
    }

    private Outcome unreadable(String what) {
        remarks.add(FitTold.UNREADABLE.at(place(), what + "; what follows it in this part could not be read"));
        return Outcome.UNREADABLE;
    }

    private Outcome definition(int header) throws IOException {
        if (!bytes.has(6)) {
            return Outcome.CUT;
        }
        int order = bytes.peek(2);
        int count = bytes.peek(5);
        int length = 6 + 3 * count;
        if (order > 1) {
            return unreadable("a definition states a byte order that there is not (" + order + ")");
        }
        boolean developed = (header & WITH_DEVELOPER_FIELDS) != 0;
        if (!bytes.has(developed ? length + 1 : length)) {
            return Outcome.CUT;
        }
        int developerCount = developed ? bytes.peek(length) : 0;
        int whole = developed ? length + 1 + 3 * developerCount : length;
        if (!bytes.has(whole)) {
            return Outcome.CUT;
        }
        if (bytes.offset() + whole > partEnd) {
            return unreadable("a definition runs over the end that the header states");
        }
        boolean big = order == 1;
        int number = big ? (bytes.peek(3) << 8) | bytes.peek(4) : (bytes.peek(4) << 8) | bytes.peek(3);
        FitDefinition.Fields fields = FitDefinition.fields(bytes, 6, count, 0);
        FitDefinition.Fields developer = FitDefinition.fields(bytes, length + 1, developerCount, fields.end());
        definitions[header & 0xF] = new FitDefinition(number, big, fields, developer);
        content.count(big ? "definitions-big-endian" : "definitions-little-endian");
        if (developed) {
            content.count("definitions-with-developer-fields");
        }
        bytes.take(whole);
        return Outcome.TAKEN;
    }

    private Outcome sample(@Nullable FitDefinition definition, int header) throws IOException {
        if (definition == null) {
            return unreadable("a message is of a type that nothing defined before");
        }
        int whole = 1 + definition.length();
        if (!bytes.has(whole)) {
            return Outcome.CUT;
        }
        if (bytes.offset() + whole > partEnd) {
            return unreadable("a message runs over the end that the header states");
        }
        boolean byHeader = (header & COMPRESSED) != 0;
        long timeNs = SampleTable.UNTIMED;
        if (byHeader) {
            timeNs = content.clock().compressed(header & 0x1F);
        } else if (definition.stampAt() >= 0) {
            int stamp = bytes.view(definition.bigEndian()).getInt(bytes.at() + 1 + definition.stampAt());
            timeNs = content.clock().stamp(stamp & 0xFFFF_FFFFL);
        }
        if (content.take(definition, bytes, timeNs, byHeader)) {
            forgetPlans();
        }
        bytes.take(whole);
        return Outcome.TAKEN;
    }

    /// A field of an application was described: what a definition means is worked out again.
    private void forgetPlans() {
        for (FitDefinition definition : definitions) {
            if (definition != null) {
                definition.plan(null);
            }
        }
    }
}
