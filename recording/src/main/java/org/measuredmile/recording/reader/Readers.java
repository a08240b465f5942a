package org.measuredmile.recording.reader;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;

/// All readers, and the choice among them: by what a file holds first, by what it is called only when that says
/// nothing.
///
/// Files packed with gzip are unpacked on the way, within limits.
public final class Readers {
    private static final int HEAD = 8192;
    private static final List<RecordingReader> ALL = List.of(
            new FitReader(),
            new GpxReader(),
            new TcxReader(),
            new CaptionReader(),
            new NmeaReader(),
            new DelimitedReader());

    /// How names end that speak for a format, asked only where the content does not.
    private static final Map<String, Format> ENDINGS = Map.of(
            ".gpx", Format.GPX,
            ".tcx", Format.TCX,
            ".vtt", Format.CAPTIONS,
            ".srt", Format.CAPTIONS,
            ".nmea", Format.NMEA,
            ".nma", Format.NMEA);

    private Readers() {}

    /// The readers, in the order in which they are asked whether a file is theirs.
    public static List<RecordingReader> all() {
        return ALL;
    }

    /// Decodes a file in whatever format it is; the stream stays open, for whoever opened it to close.
    ///
    /// Error: IOException only when the stream itself fails.
    public static Decoding decode(String name, InputStream bytes) throws IOException {
        byte[] head = bytes.readNBytes(HEAD);
        InputStream whole = new SequenceInputStream(new ByteArrayInputStream(head), new LeftOpen(bytes));
        if (head.length > 2 && (head[0] & 0xFF) == 0x1F && (head[1] & 0xFF) == 0x8B) {
            return unpacked(name, whole);
        }
        return plain(name, head, whole);
    }

    private static Decoding unpacked(String name, InputStream packed) throws IOException {
        Remarks remarks = new Remarks(name);
        try {
            LimitedStream limited = new LimitedStream(new GZIPInputStream(packed));
            byte[] head = limited.readNBytes(HEAD);
            String inner = name.toLowerCase(Locale.ROOT).endsWith(".gz") ? name.substring(0, name.length() - 3) : name;
            return plain(inner, head, new SequenceInputStream(new ByteArrayInputStream(head), limited));
        } catch (LimitedStream.TooLarge tooLarge) {
            return remarks.refuse(
                    "too-large",
                    Place.in(name),
                    "unpacked, the file holds more than " + LimitedStream.MOST_BYTES / 1_000_000 + " MB",
                    "unpack it yourself and cut it into parts");
        } catch (ZipException | EOFException broken) {
            return remarks.refuse(
                    "broken-gzip",
                    Place.in(name),
                    "the packed file is damaged or cut off",
                    "copy it from the instrument again, or unpack what can be saved");
        }
    }

    private static Decoding plain(String name, byte[] head, InputStream whole) throws IOException {
        Optional<RecordingReader> reader = choose(name, head);
        if (reader.isPresent()) {
            return reader.get().read(name, whole);
        }
        // The delimited reader says why a text is no table, why bytes are no text, and that an empty file is
        // empty.
        return new DelimitedReader().read(name, whole);
    }

    private static Optional<RecordingReader> choose(String name, byte[] head) {
        for (RecordingReader reader : ALL) {
            if (reader.recognises(head)) {
                return Optional.of(reader);
            }
        }
        String lower = name.toLowerCase(Locale.ROOT);
        boolean text = DelimitedReader.isText(TextHead.preview(head)) && head.length > 0;
        return text
                ? ENDINGS.entrySet().stream()
                        .filter(ending -> lower.endsWith(ending.getKey()))
                        .findFirst()
                        .flatMap(ending -> reader(ending.getValue()))
                : Optional.empty();
    }

    private static Optional<RecordingReader> reader(Format format) {
        return ALL.stream().filter(reader -> reader.format() == format).findFirst();
    }

    /// Keeps a library that closes what it has read from closing a stream that is not its own.
    private static final class LeftOpen extends FilterInputStream {
        LeftOpen(InputStream in) {
            super(in);
        }

        @Override
        public int read(byte[] buffer, int from, int length) throws IOException {
            return in.read(buffer, from, length);
        }

        @Override
        public void close() {}
    }
}
