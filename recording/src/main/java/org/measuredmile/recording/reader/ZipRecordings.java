package org.measuredmile.recording.reader;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import org.jspecify.annotations.Nullable;
import org.measuredmile.recording.ColumnSettings;
import org.measuredmile.recording.Place;

/// The recordings in a zip file, decoded one after the other as they come, within limits.
///
/// An entry's name is a label and never a path: it is shown behind the name of the file it lies in,
/// without steps upwards. Folders, and what a file system leaves behind unasked (names that begin
/// with a dot, `__MACOSX`), are passed over.
final class ZipRecordings {
    static final int MOST_ENTRIES = 1000;
    /// Of all entries together: the recordings of one file are held at the same time.
    static final long MOST_BYTES = 500_000_000L;

    private static final int LONGEST_LABEL = 200;
    private static final int SIGNATURE = 4;
    /// So many bytes may have been taken before an entry that was found began.
    private static final int LOOK_AHEAD = 1024;

    private final String name;
    private final ZipStream packed;
    private final Function<String, ColumnSettings> settings;
    private final List<Decoding> decodings = new ArrayList<>();
    private final Set<String> labels = new HashSet<>();
    private long unpacked;

    private ZipRecordings(String name, InputStream bytes, Function<String, ColumnSettings> settings) {
        this.name = name;
        this.packed = new ZipStream(bytes);
        this.settings = settings;
    }

    /// Whether a file begins as zip files do, empty ones among them.
    static boolean recognises(byte[] head) {
        return head.length >= SIGNATURE
                && head[0] == 'P'
                && head[1] == 'K'
                && ((head[2] == 3 && head[3] == 4) || (head[2] == 5 && head[3] == 6));
    }

    /// Every entry, decoded or refused, in the order of the file; then a refusal of what could not
    /// be reached.
    static List<Decoding> decodeAll(String name, InputStream bytes, Function<String, ColumnSettings> settings)
            throws IOException {
        ZipRecordings zip = new ZipRecordings(name, bytes, settings);
        zip.read();
        return zip.decodings;
    }

    private void read() throws IOException {
        ZipInputStream entries = new ZipInputStream(packed, StandardCharsets.UTF_8);
        int seen = 0;
        long lastAt = 0;
        try {
            for (ZipEntry entry = next(entries); entry != null; entry = next(entries)) {
                if (++seen > MOST_ENTRIES) {
                    refuse(
                            "too-many-entries",
                            "the file holds more than " + MOST_ENTRIES + " entries; what comes after was not read",
                            "pack the recordings in several files");
                    return;
                }
                lastAt = packed.given();
                if (!entry.isDirectory() && !isLeftBehind(entry.getName())) {
                    decode(entry, entries);
                }
            }
        } catch (LimitedStream.TooLarge tooLarge) {
            refuse(
                    "too-large",
                    "unpacked, the file holds more than " + MOST_BYTES / 1_000_000 + " MB" + notRead(),
                    "unpack it yourself, and give the recordings one by one");
            return;
        } catch (LimitedStream.Bomb bomb) {
            refuse("bomb", bomb.getMessage() + notRead(), "unpack it yourself if you know where it comes from");
            return;
        } catch (ZipException | EOFException broken) {
            refuseBroken(String.valueOf(broken.getMessage()));
            return;
        }
        packed.transferTo(OutputStream.nullOutputStream());
        if (packed.endAt() < Math.max(0, lastAt - LOOK_AHEAD)) {
            refuseBroken("its directory is missing");
        } else if (seen == 0) {
            refuse("empty", "the file holds no entry", "pack the recordings into it");
        }
    }

    private static @Nullable ZipEntry next(ZipInputStream entries) throws IOException {
        try {
            return entries.getNextEntry();
        } catch (IllegalArgumentException notUtf8) {
            throw new ZipException("a name in it is not UTF-8");
        }
    }

    private void refuseBroken(String why) {
        if (why.contains("encrypted")) {
            refuse(
                    "encrypted",
                    "an entry is locked with a password" + notRead(),
                    "unpack it yourself, and give the recordings one by one");
        } else {
            refuse(
                    "broken-zip",
                    "the file is damaged or cut off (" + Remarks.quoted(why) + ")" + notRead(),
                    "copy it again, or unpack what can be saved");
        }
    }

    private static String notRead() {
        return "; neither it nor what comes after was read";
    }

    private void refuse(String code, String message, String remedy) {
        decodings.add(new Remarks(name).refuse(code, Place.in(name), message, remedy));
    }

    private void decode(ZipEntry entry, ZipInputStream entries) throws IOException {
        String label = label(entry.getName());
        LimitedStream limited = new LimitedStream(entries, MOST_BYTES - unpacked, packed);
        byte[] head = limited.readNBytes(Readers.HEAD);
        if (recognises(head) || Readers.isGzip(head)) {
            decodings.add(new Remarks(label)
                    .refuse(
                            "nested-archive",
                            Place.in(label),
                            "a packed file within a packed file is not opened",
                            "unpack the outer one, and give what is in it"));
        } else {
            decodings.add(Readers.plain(
                    label,
                    head,
                    new SequenceInputStream(new ByteArrayInputStream(head), new LeftOpen(limited)),
                    settings.apply(label)));
        }
        limited.transferTo(OutputStream.nullOutputStream());
        unpacked += limited.given();
    }

    private static boolean isLeftBehind(String path) {
        for (String part : path.split("[/\\\\]", -1)) {
            if (part.equals("__MACOSX") || (part.startsWith(".") && !part.equals(".") && !part.equals(".."))) {
                return true;
            }
        }
        return false;
    }

    /// The name that an entry is known by: behind the outer file's, never empty, each once.
    private String label(String path) {
        List<String> parts = new ArrayList<>();
        for (String part : path.split("[/\\\\]+", -1)) {
            String plain = part.replaceAll("[\\p{Cntrl}:*?\"<>|]", "_").strip();
            if (!plain.isEmpty() && !plain.equals(".") && !plain.equals("..")) {
                parts.add(plain);
            }
        }
        String inner = String.join("/", parts);
        String kept = inner.length() > LONGEST_LABEL ? inner.substring(inner.length() - LONGEST_LABEL) : inner;
        String wanted = name + "/" + (kept.isEmpty() ? "entry" : kept);
        String free = wanted;
        for (int i = 2; !labels.add(free); i++) {
            free = wanted + " (" + i + ")";
        }
        return free;
    }
}
