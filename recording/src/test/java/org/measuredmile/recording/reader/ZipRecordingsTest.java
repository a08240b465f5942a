package org.measuredmile.recording.reader;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Decoding.Refused;

class ZipRecordingsTest {
    private static final byte[] TABLE = "time (s),speed (m/s)\n0,1\n1,2\n".getBytes(UTF_8);

    private static byte[] zip(Map<String, byte[]> entries) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (var entry : entries.entrySet()) {
                zip.putNextEntry(new ZipEntry(entry.getKey()));
                zip.write(entry.getValue());
                zip.closeEntry();
            }
        }
        return out.toByteArray();
    }

    private static Map<String, byte[]> entries(Object... namesAndBytes) {
        Map<String, byte[]> entries = new LinkedHashMap<>();
        for (int i = 0; i < namesAndBytes.length; i += 2) {
            entries.put((String) namesAndBytes[i], (byte[]) namesAndBytes[i + 1]);
        }
        return entries;
    }

    private static List<Decoding> all(byte[] bytes) throws IOException {
        return Readers.decodeAll("drop.zip", new ByteArrayInputStream(bytes));
    }

    private static String code(Decoding decoding) {
        return ((Refused) decoding).findings().getFirst().code();
    }

    @Test
    void everyEntryIsDecodedOrRefusedUnderItsNameBehindTheFilesOwn() throws IOException {
        byte[] nmea = Decode.resource("phone_log_prefixed_lines.nmea");
        byte[] picture = {(byte) 0x89, 'P', 'N', 'G', 0, 1, 2, 3, 0, 0};
        List<Decoding> all = all(zip(entries("day/a.csv", TABLE, "day/b.nmea", nmea, "photo.png", picture)));
        assertThat(all)
                .extracting(Decoding::name)
                .containsExactly("drop.zip/day/a.csv", "drop.zip/day/b.nmea", "drop.zip/photo.png");
        assertThat(all.get(0)).isInstanceOf(Decoded.class);
        assertThat(all.get(1)).isInstanceOf(Decoded.class);
        assertThat(all.get(2)).isInstanceOf(Refused.class);
        all.forEach(ReaderContract::holds);
    }

    @Test
    void aPlainFileIsOneAnswer() throws IOException {
        assertThat(Readers.decodeAll("ride.csv", new ByteArrayInputStream(TABLE)))
                .extracting(Decoding::name)
                .containsExactly("ride.csv");
    }

    @Test
    void theOneRecordingOfAFileIsThatFilesRecording() throws IOException {
        byte[] packed = zip(entries("notes.txt", "bumpy\n".getBytes(UTF_8), "a.csv", TABLE));
        assertThat(Decode.recording(Decode.bytes("drop.zip", packed)).name()).isEqualTo("drop.zip/a.csv");
    }

    @Test
    void severalRecordingsAreNoOneRecordingAndAreNamed() throws IOException {
        Finding refusal = Decode.refusal(Decode.bytes("drop.zip", zip(entries("a.csv", TABLE, "b.csv", TABLE))));
        assertThat(refusal.code()).isEqualTo("several-recordings");
        assertThat(refusal.message()).contains("drop.zip/a.csv, drop.zip/b.csv");
    }

    @Test
    void aFileOfWhichNothingCanBeReadHasOneAnswerThatSaysWhy() throws IOException {
        byte[] text = "just words\n".getBytes(UTF_8);
        List<Decoding> all = all(zip(entries("a.txt", text, "b.txt", text)));
        assertThat(all).hasSize(1);
        assertThat(all.getFirst().name()).isEqualTo("drop.zip");
        assertThat(all.getFirst().findings())
                .extracting(Finding::code)
                .containsExactly("no-recording-inside", "no-table", "no-table");
        assertThat(code(all(zip(Map.of())).getFirst())).isEqualTo("empty");
        assertThat(code(all(zip(entries("folder/", new byte[0]))).getFirst())).isEqualTo("no-recording-inside");
    }

    @Test
    void namesAreLabelsAndNeverPathsAndEachIsThereOnce() throws IOException {
        byte[] packed = zip(entries(
                "../../etc/passwd", TABLE, "/abs/a.csv", TABLE, "C:\\b\\..\\c.csv", TABLE, "x/../etc/passwd", TABLE));
        assertThat(all(packed))
                .extracting(Decoding::name)
                .containsExactly(
                        "drop.zip/etc/passwd", "drop.zip/abs/a.csv", "drop.zip/C_/b/c.csv", "drop.zip/x/etc/passwd");
        assertThat(all(zip(entries("a.csv", TABLE, "./a.csv", TABLE, "..", TABLE))))
                .extracting(Decoding::name)
                .containsExactly("drop.zip/a.csv", "drop.zip/a.csv (2)", "drop.zip/entry");
    }

    @Test
    void whatAFileSystemLeavesBehindIsPassedOver() throws IOException {
        byte[] junk = {0, 5, 22, 7};
        assertThat(all(zip(entries("__MACOSX/._a.csv", junk, ".DS_Store", junk, "a.csv", TABLE))))
                .extracting(Decoding::name)
                .containsExactly("drop.zip/a.csv");
    }

    @Test
    void aPackedFileWithinAPackedFileIsRefused() throws IOException {
        byte[] inner = zip(entries("a.csv", TABLE));
        List<Decoding> all = all(zip(entries("b.csv", TABLE, "inner.zip", inner, "c.csv", TABLE)));
        assertThat(all).hasSize(3);
        assertThat(code(all.get(1))).isEqualTo("nested-archive");
        assertThat(all.get(2)).isInstanceOf(Decoded.class);
    }

    @Test
    void anEntryLockedWithAPasswordIsRefusedAndWhatCameBeforeIsKept() throws IOException {
        byte[] packed = zip(entries("a.csv", TABLE, "b.csv", TABLE));
        // APPNOTE.TXT 4.4.4: bit 0 of the general purpose flag, six bytes into a local header, says encrypted.
        int second = new String(packed, ISO_8859_1).indexOf("PK\u0003\u0004", 4);
        packed[second + 6] |= 1;
        List<Decoding> all = all(packed);
        assertThat(all.get(0)).isInstanceOf(Decoded.class);
        assertThat(all.get(1).name()).isEqualTo("drop.zip");
        assertThat(code(all.get(1))).isEqualTo("encrypted");
    }

    @Test
    void aFileThatIsCutOffKeepsTheEntriesBefore() throws IOException {
        byte[] packed = zip(entries("a.csv", TABLE, "b.nmea", Decode.resource("phone_log_prefixed_lines.nmea")));
        List<Decoding> all = all(Arrays.copyOf(packed, packed.length / 2));
        assertThat(all.get(0)).isInstanceOf(Decoded.class);
        assertThat(code(all.getLast())).isEqualTo("broken-zip");
        assertThat(code(all(Arrays.copyOf(packed, 10)).getFirst())).isEqualTo("broken-zip");
        int directory = new String(packed, ISO_8859_1).indexOf("PK\u0001\u0002");
        List<Decoding> withoutDirectory = all(Arrays.copyOf(packed, directory));
        assertThat(withoutDirectory).hasSize(3);
        assertThat(code(withoutDirectory.get(2))).isEqualTo("broken-zip");
    }

    @Test
    void moreEntriesThanAnyCrewHasAreNotRead() throws IOException {
        Map<String, byte[]> many = new LinkedHashMap<>();
        for (int i = 0; i <= ZipRecordings.MOST_ENTRIES; i++) {
            many.put(i + ".csv", i == 0 ? TABLE : new byte[0]);
        }
        List<Decoding> all = all(zip(many));
        assertThat(all).hasSize(ZipRecordings.MOST_ENTRIES + 1);
        assertThat(code(all.getLast())).isEqualTo("too-many-entries");
    }

    @Test
    void bytesThatGrowAsNoRecordingDoesAreRefusedWhateverTheyHold() throws IOException {
        byte[] zeros = new byte[30_000_000];
        byte[] rows = new byte[30_000_000];
        Arrays.fill(rows, (byte) '\n');
        System.arraycopy(TABLE, 0, rows, 0, TABLE.length);
        byte[] xml = new byte[30_000_000];
        Arrays.fill(xml, (byte) ' ');
        System.arraycopy("<gpx>".getBytes(UTF_8), 0, xml, 0, 5);
        for (byte[] bomb : List.of(zeros, rows, xml)) {
            List<Decoding> all = all(zip(entries("a.csv", TABLE, "bomb.csv", bomb)));
            assertThat(all.getFirst()).isInstanceOf(Decoded.class);
            assertThat(code(all.getLast())).isEqualTo("bomb");
        }
    }

    @Test
    void aPackedSingleFileThatGrowsAsNoRecordingDoesIsRefused() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (var gzip = new java.util.zip.GZIPOutputStream(out)) {
            gzip.write(TABLE);
            byte[] lines = new byte[30_000_000];
            Arrays.fill(lines, (byte) '\n');
            gzip.write(lines);
        }
        assertThat(Decode.refusal(Decode.bytes("a.csv.gz", out.toByteArray())).code())
                .isEqualTo("bomb");
    }
}
