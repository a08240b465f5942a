package org.measuredmile.recording.reader;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Spent;

/// Files made to harm whoever opens them are refused, and cost no more than honest ones of their size.
class HostileFilesTest {
    private static final int MB = 1_000_000;
    private static final int UNPACKED = 30 * MB;

    private static String gpx(String before, String inside) {
        return "<?xml version=\"1.0\"?>" + before + "<gpx creator=\"x\"><trk><trkseg>" + point(0, inside) + point(1, "")
                + "</trkseg></trk></gpx>";
    }

    private static String tcx(String before, String inside) {
        return "<?xml version=\"1.0\"?>" + before
                + "<TrainingCenterDatabase><Activities><Activity Sport=\"Biking\"><Lap><Track>"
                + "<Trackpoint><Time>2031-05-04T10:15:30Z</Time>" + inside + "</Trackpoint>"
                + "<Trackpoint><Time>2031-05-04T10:15:31Z</Time></Trackpoint></Track></Lap></Activity></Activities>"
                + "</TrainingCenterDatabase>";
    }

    private static String point(int second, String inside) {
        return "<trkpt lat=\"1\" lon=\"2\"><time>2031-05-04T10:15:3" + second + "Z</time>" + inside + "</trkpt>";
    }

    private static String attributes() {
        StringBuilder all = new StringBuilder();
        for (int i = 0; i < 100_000; i++) {
            all.append(" b").append(i).append("=\"1\"");
        }
        return all.toString();
    }

    /// Ten to the ninth words, if entities were expanded.
    private static String laughs() {
        StringBuilder type = new StringBuilder("<!DOCTYPE r [<!ENTITY l0 \"ha\">");
        for (int i = 1; i <= 9; i++) {
            type.append("<!ENTITY l").append(i).append(" \"");
            type.append(("&l" + (i - 1) + ";").repeat(10)).append("\">");
        }
        return type.append("]>").toString();
    }

    @Test
    void entitiesThatGrowAreNeverExpanded() throws IOException {
        for (String file : List.of(gpx(laughs(), "<hr>&l9;</hr>"), tcx(laughs(), "<Cadence>&l9;</Cadence>"))) {
            assertThat(codes("r", file.getBytes(UTF_8))).containsExactly("ill-formed");
            assertThat(codes("r.gz", gzip(file.getBytes(UTF_8)))).containsExactly("ill-formed");
            assertThat(codes("r.zip", zip("r", file.getBytes(UTF_8)))).containsExactly("ill-formed");
        }
    }

    @Test
    void whatAnEntityPointsAtIsNeverOpened(@TempDir Path folder) throws IOException {
        Path secret = Files.writeString(folder.resolve("secret"), "72");
        Path type = Files.writeString(folder.resolve("type"), "<!ENTITY x \"72\">");
        for (String declared : List.of(
                "<!DOCTYPE gpx [<!ENTITY x SYSTEM \"" + secret.toUri() + "\">]>",
                "<!DOCTYPE gpx [<!ENTITY % t SYSTEM \"" + type.toUri() + "\">%t;]>",
                "<!DOCTYPE gpx SYSTEM \"" + type.toUri() + "\">",
                "<!DOCTYPE gpx PUBLIC \"x\" \"" + type.toUri() + "\">")) {
            assertThat(codes("r.gpx", gpx(declared, "<hr>&x;</hr>").getBytes(UTF_8)))
                    .containsExactly("ill-formed");
            assertThat(codes("r.tcx", tcx(declared, "<Cadence>&x;</Cadence>").getBytes(UTF_8)))
                    .containsExactly("ill-formed");
        }
    }

    @Test
    void elementsAndAttributesWithoutEndAreRefused() throws IOException {
        String deep = gpx("", "<a>".repeat(100_000));
        String wide = gpx("", "<a" + attributes() + "/>");
        String longValue = gpx("", "<a b=\"" + "x".repeat(10 * MB) + "\"/>");
        for (String file : List.of(deep, wide, longValue)) {
            assertThat(codes("r.gpx", file.getBytes(UTF_8))).containsExactly("ill-formed");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"\0", " ", "<a>", "\n", "0,", "x\n"})
    void packedFilesThatGrowAsNoRecordingDoesAreRefused(String repeated) throws IOException {
        byte[] bomb = gzip("", repeated, UNPACKED);
        assertThat(bomb.length).isLessThan(UNPACKED / 100);
        // What is no recording from its first bytes on is not unpacked to where it would be called a bomb.
        String[] refusals = {"bomb", "not-text", "empty", "no-table", "markup", "ill-formed", "cut-off", "no-cue"};
        assertThat(codes("r.gz", bomb)).isSubsetOf(refusals);
        assertThat(codes("r.zip", zip("", repeated, UNPACKED))).isSubsetOf(refusals);
    }

    @Test
    void aBombIsCalledOneWhateverItSaysItIs() throws IOException {
        // Blanks, so that it packs as no recording does.
        String blanks = " ".repeat(20_000);
        for (String[] file : new String[][] {
            {"<gpx><trk><trkseg>", point(0, blanks)},
            {"<TrainingCenterDatabase><Activities><Activity><Lap><Track>", "<Trackpoint>" + blanks + "</Trackpoint>"},
            {"time,speed\n", "2031-05-04T10:15:30Z," + blanks + "1\n"},
            {"", "$GPRMC,,V,,,,,,,,,,N*53\n"}
        }) {
            assertThat(codes("r.gz", gzip(file[0], file[1], UNPACKED))).containsExactly("bomb");
            assertThat(codes("r.zip", zip(file[0], file[1], UNPACKED))).containsExactly("bomb");
        }
    }

    @Test
    void packedFilesWithinPackedFilesAreNotOpened() throws IOException {
        byte[] ride = gpx("", "").getBytes(UTF_8);
        assertThat(codes("r.zip", zip("in.zip", zip("r.gpx", ride)))).containsExactly("nested-archive");
        assertThat(codes("r.zip", zip("in.gz", gzip(ride)))).containsExactly("nested-archive");
        assertThat(Readers.decodeAll("r.gz", new ByteArrayInputStream(gzip(gzip(ride)))))
                .noneMatch(Decoding.Decoded.class::isInstance);
        assertThat(Readers.decodeAll("r.gz", new ByteArrayInputStream(gzip(zip("r.gpx", ride)))))
                .noneMatch(Decoding.Decoded.class::isInstance);
    }

    /// The first finding of each answer, within what an honest file may cost: of its size, of a megabyte when it is
    /// packed, because so much may be unpacked before it is known for what it is.
    private static List<String> codes(String name, byte[] bytes) throws IOException {
        boolean packed = name.endsWith("z") || name.endsWith("zip");
        return firstCodes(Spent.within(packed ? MB : bytes.length, () -> decodings(name, bytes)));
    }

    private static List<Decoding> decodings(String name, byte[] bytes) throws IOException {
        return Readers.decodeAll(name, new ByteArrayInputStream(bytes));
    }

    private static List<String> firstCodes(List<Decoding> decodings) {
        assertThat(decodings).allMatch(Decoding.Refused.class::isInstance);
        return decodings.stream()
                .flatMap(decoding -> decoding.findings().stream()
                        .map(Finding::code)
                        .filter(code -> !code.equals("no-recording-inside"))
                        .limit(1))
                .toList();
    }

    private static byte[] gzip(byte[] content) throws IOException {
        var packed = new ByteArrayOutputStream();
        try (OutputStream out = new GZIPOutputStream(packed)) {
            out.write(content);
        }
        return packed.toByteArray();
    }

    private static byte[] gzip(String first, String repeated, int bytes) throws IOException {
        var packed = new ByteArrayOutputStream();
        try (OutputStream out = new GZIPOutputStream(packed)) {
            repeat(out, first, repeated, bytes);
        }
        return packed.toByteArray();
    }

    private static byte[] zip(String name, byte[] content) throws IOException {
        var packed = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(packed)) {
            out.putNextEntry(new ZipEntry(name));
            out.write(content);
        }
        return packed.toByteArray();
    }

    private static byte[] zip(String first, String repeated, int bytes) throws IOException {
        var packed = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(packed)) {
            out.putNextEntry(new ZipEntry("r"));
            repeat(out, first, repeated, bytes);
        }
        return packed.toByteArray();
    }

    private static void repeat(OutputStream out, String first, String repeated, int bytes) throws IOException {
        out.write(first.getBytes(UTF_8));
        byte[] block = repeated.repeat(1 + 65_536 / repeated.length()).getBytes(UTF_8);
        for (long written = 0; written < bytes; written += block.length) {
            out.write(block);
        }
    }
}
