package org.measuredmile.recording.reader;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.measuredmile.recording.Spent;

/// Any bytes at all, one target a decoder: an ordinary test run replays the stored inputs, `./fuzz` searches for new
/// ones. What a decoder answers keeps [ReaderContract], within time and memory that go with the size of its input.
class ReadersFuzzTest {
    @FuzzTest
    void gpxAnswers(byte[] bytes) throws IOException {
        answers(new GpxReader(), "x.gpx", bytes);
    }

    @FuzzTest
    void tcxAnswers(byte[] bytes) throws IOException {
        answers(new TcxReader(), "x.tcx", bytes);
    }

    @FuzzTest
    void fitAnswers(byte[] bytes) throws IOException {
        answers(new FitReader(), "x.fit", bytes);
    }

    @FuzzTest
    void nmeaAnswers(byte[] bytes) throws IOException {
        answers(new NmeaReader(), "x.nmea", bytes);
    }

    @FuzzTest
    void delimitedTextAnswers(byte[] bytes) throws IOException {
        answers(new DelimitedReader(), "x.csv", bytes);
    }

    @FuzzTest
    void captionsAnswer(byte[] bytes) throws IOException {
        answers(new CaptionReader(), "x.vtt", bytes);
    }

    private static void answers(RecordingReader reader, String name, byte[] bytes) throws IOException {
        Decoding decoding = Spent.within(bytes.length, () -> {
            reader.recognises(Arrays.copyOf(bytes, Math.min(bytes.length, Readers.HEAD)));
            return reader.read(name, new ByteArrayInputStream(bytes));
        });
        ReaderContract.holds(decoding);
        ReaderContract.saysWhere(decoding);
    }

    /// Whatever the format, packed files among them.
    @FuzzTest
    void anyFileAnswers(byte[] bytes) throws IOException {
        allAnswer("x", bytes);
        ReaderContract.holds(Readers.decode("x", new ByteArrayInputStream(bytes)));
    }

    /// The first byte chooses how the others are packed, so that searching need not learn checksums.
    @FuzzTest
    void whateverIsPackedAnswers(byte[] bytes) throws IOException {
        if (bytes.length > 0) {
            byte[] content = Arrays.copyOfRange(bytes, 1, bytes.length);
            switch (bytes[0] & 3) {
                case 0 -> allAnswer("x.gz", gzip(content));
                case 1 -> allAnswer("x.zip", zip(content, ZipEntry.DEFLATED));
                case 2 -> allAnswer("x.zip", zip(content, ZipEntry.STORED));
                default -> {
                    byte[] packed = gzip(content);
                    allAnswer("x.gz", Arrays.copyOf(packed, packed.length - Math.min(8, content.length)));
                }
            }
        }
    }

    private static void allAnswer(String name, byte[] bytes) throws IOException {
        List<Decoding> all = Spent.within(bytes.length, () -> Readers.decodeAll(name, new ByteArrayInputStream(bytes)));
        for (Decoding decoding : all) {
            ReaderContract.holds(decoding);
            ReaderContract.saysWhere(decoding);
        }
    }

    private static byte[] gzip(byte[] content) throws IOException {
        var packed = new ByteArrayOutputStream();
        try (OutputStream out = new GZIPOutputStream(packed)) {
            out.write(content);
        }
        return packed.toByteArray();
    }

    /// Two entries: half of the bytes each.
    private static byte[] zip(byte[] content, int method) throws IOException {
        var packed = new ByteArrayOutputStream();
        int middle = content.length / 2;
        try (ZipOutputStream out = new ZipOutputStream(packed)) {
            add(out, "a/first", Arrays.copyOf(content, middle), method);
            add(out, "b", Arrays.copyOfRange(content, middle, content.length), method);
        }
        return packed.toByteArray();
    }

    private static void add(ZipOutputStream out, String name, byte[] content, int method) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setMethod(method);
        entry.setTime(0);
        if (method == ZipEntry.STORED) {
            CRC32 sum = new CRC32();
            sum.update(content);
            entry.setSize(content.length);
            entry.setCompressedSize(content.length);
            entry.setCrc(sum.getValue());
        }
        out.putNextEntry(entry);
        out.write(content);
        out.closeEntry();
    }
}
