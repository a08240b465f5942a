package org.measuredmile.recording.reader;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.measuredmile.recording.ColumnSettings;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Decoding.Refused;

/// All readers, and the choice among them: by what a file holds first, by what it is called only
/// when that says nothing.
///
/// Files packed with gzip or zip are unpacked on the way, within limits.
public final class Readers {
    static final int HEAD = 8192;
    private static final List<RecordingReader> ALL = List.of(
            new FitReader(),
            new GpxReader(),
            new TcxReader(),
            new CaptionReader(),
            new NmeaReader(),
            new DelimitedReader());

    private static final int MOST_NAMED = 20;

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

    /// Decodes a file in whatever format it is; the stream stays open, for whoever opened it to
    /// close.
    ///
    /// Of a zip file that holds one recording, that one; one that holds several is refused and
    /// names them: they are for [#decodeAll].
    /// Error: IOException only when the stream itself fails.
    public static Decoding decode(String name, InputStream bytes) throws IOException {
        List<Decoding> all = decodeAll(name, bytes);
        if (all.size() == 1) {
            return all.getFirst();
        }
        List<Decoding> decoded = all.stream().filter(Decoded.class::isInstance).toList();
        if (decoded.size() == 1) {
            return decoded.getFirst();
        }
        return new Remarks(name)
                .refuse(
                        "several-recordings",
                        Place.in(name),
                        "the file holds " + decoded.size() + " recordings: "
                                + Remarks.shortened(
                                        decoded.stream().map(Decoding::name).collect(Collectors.joining(", ")), 400),
                        "unpack it, and give the one that is meant");
    }

    /// Decodes a file and whatever recordings are packed in it: one answer for a plain file, one
    /// for each entry of a zip file, named `outer.zip/inner`.
    ///
    /// Shape: never empty. A zip file of which nothing can be decoded has one answer.
    /// Error: IOException only when the stream itself fails.
    public static List<Decoding> decodeAll(String name, InputStream bytes) throws IOException {
        return decodeAll(name, bytes, each -> ColumnSettings.NONE);
    }

    /// The same where it is set what the columns of instruments' tables mean; asked with the name of
    /// each recording, that of the packed file before its own.
    public static List<Decoding> decodeAll(String name, InputStream bytes, Function<String, ColumnSettings> settings)
            throws IOException {
        byte[] head = bytes.readNBytes(HEAD);
        InputStream whole = new SequenceInputStream(new ByteArrayInputStream(head), new LeftOpen(bytes));
        if (ZipRecordings.recognises(head)) {
            List<Decoding> entries = ZipRecordings.decodeAll(name, whole, settings);
            return entries.stream().anyMatch(Decoded.class::isInstance) ? entries : List.of(nothingIn(name, entries));
        }
        ColumnSettings own = settings.apply(name);
        return List.of(isGzip(head) ? unpacked(name, whole, own) : plain(name, head, whole, own));
    }

    private static Decoding nothingIn(String name, List<Decoding> entries) {
        List<Finding> why = entries.stream()
                .flatMap(entry -> entry.findings().stream().limit(1))
                .limit(MOST_NAMED)
                .toList();
        if (entries.size() == 1) {
            return new Refused(name, why);
        }
        List<Finding> all = new ArrayList<>();
        all.add(Finding.refused(
                "no-recording-inside",
                Place.in(name),
                entries.isEmpty()
                        ? "the packed file holds no file"
                        : "none of the " + entries.size() + " files in it can be read as a recording",
                "pack the recordings themselves"));
        all.addAll(why);
        return new Refused(name, all);
    }

    static boolean isGzip(byte[] head) {
        return head.length > 2 && (head[0] & 0xFF) == 0x1F && (head[1] & 0xFF) == 0x8B;
    }

    private static Decoding unpacked(String name, InputStream packed, ColumnSettings settings) throws IOException {
        Remarks remarks = new Remarks(name);
        try {
            CountedStream counted = new CountedStream(packed);
            LimitedStream limited = new LimitedStream(new GZIPInputStream(counted), LimitedStream.MOST_BYTES, counted);
            byte[] head = limited.readNBytes(HEAD);
            String inner = name.toLowerCase(Locale.ROOT).endsWith(".gz") ? name.substring(0, name.length() - 3) : name;
            return plain(inner, head, new SequenceInputStream(new ByteArrayInputStream(head), limited), settings);
        } catch (LimitedStream.TooLarge tooLarge) {
            return remarks.refuse(
                    "too-large",
                    Place.in(name),
                    "unpacked, the file holds more than " + LimitedStream.MOST_BYTES / 1_000_000 + " MB",
                    "unpack it yourself and cut it into parts");
        } catch (LimitedStream.Bomb bomb) {
            return remarks.refuse(
                    "bomb",
                    Place.in(name),
                    String.valueOf(bomb.getMessage()),
                    "unpack it yourself if you know where it comes from");
        } catch (ZipException | EOFException broken) {
            return remarks.refuse(
                    "broken-gzip",
                    Place.in(name),
                    "the packed file is damaged or cut off",
                    "copy it from the instrument again, or unpack what can be saved");
        }
    }

    static Decoding plain(String name, byte[] head, InputStream whole, ColumnSettings settings) throws IOException {
        Optional<RecordingReader> reader = choose(name, head);
        if (reader.isPresent()) {
            return reader.get().read(name, whole, settings);
        }
        // The delimited reader says why a text is no table, why bytes are no text, and that an empty file is
        // empty.
        return new DelimitedReader().read(name, whole, settings);
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
}
