package org.measuredmile.recording.reader;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_16;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.CharConversionException;
import java.io.IOException;
import java.io.Reader;
import java.nio.charset.Charset;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class XmlEncodingTest {
    private static final String POINTS = """
            <gpx creator="Zähler €"><trk><trkseg>
            <trkpt lat="1" lon="2"><time>2031-05-04T10:15:30Z</time></trkpt>
            <trkpt lat="1" lon="2.001"><time>2031-05-04T10:15:31Z</time></trkpt>
            </trkseg></trk></gpx>
            """;

    @Test
    void filesOfEveryUsualEncodingSayTheSame() {
        assertThat(device("", POINTS, UTF_8)).isEqualTo("Zähler €");
        assertThat(device("\uFEFF", POINTS, UTF_8)).isEqualTo("Zähler €");
        assertThat(device("<?xml version='1.0'?>", POINTS, UTF_8)).isEqualTo("Zähler €");
        assertThat(device("<?xml version=\"1.0\" encoding=\"utf-8\"?>", POINTS, UTF_8))
                .isEqualTo("Zähler €");
        assertThat(device("\uFEFF<?xml version=\"1.0\" encoding=\"UTF-8\"?>", POINTS, UTF_8))
                .isEqualTo("Zähler €");
        assertThat(device("<?xml version=\"1.0\" encoding=\"UTF-16\"?>", POINTS, UTF_16))
                .isEqualTo("Zähler €");
        assertThat(device("<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>", POINTS.replace(" €", ""), ISO_8859_1))
                .isEqualTo("Zähler");
    }

    private static String device(String declaration, String body, Charset charset) {
        byte[] bytes = (declaration + body).getBytes(charset);
        return Decode.recording(Decode.bytes("r.gpx", bytes)).device();
    }

    @Test
    void aByteThatIsNoUtf8EndsTheFileThereAndWhatStandsBeforeIsKept() {
        String broken = POINTS.replace("</trkseg>", "<trkpt lat=\"1\" lon=\"2.002\">\u0001</trkpt>\n</trkseg>");
        byte[] bytes = broken.getBytes(UTF_8);
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = bytes[i] == 1 ? (byte) 0xFF : bytes[i];
        }
        var recording = Decode.recording(Decode.bytes("r.gpx", bytes));
        var finding = Decode.finding(recording, "ill-formed");
        assertThat(recording.timesS()).hasSize(2);
        assertThat(finding.message()).contains("a byte that is no UTF-8");
        assertThat(finding.place().where()).isEqualTo("line 4");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void signsComeOutAsTheyWentInHoweverManyAreAskedForAtATime(long seed) throws IOException {
        Random random = new Random(seed);
        String[] pieces = {"a", "<trkpt>", "é", "€", "𝓦", "\n", "ß".repeat(9000), "x".repeat(8191)};
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 60; i++) {
            text.append(pieces[random.nextInt(pieces.length)]);
        }
        StringBuilder back = new StringBuilder();
        try (Reader signs =
                new Utf8Signs(new ByteArrayInputStream(text.toString().getBytes(UTF_8)))) {
            char[] some = new char[1 + random.nextInt(5000)];
            int asked = 1 + random.nextInt(random.nextBoolean() ? 2 : some.length);
            for (int got = signs.read(some, 0, Math.min(asked, some.length)); got >= 0; ) {
                assertThat(got).isPositive();
                back.append(some, 0, got);
                got = signs.read(some, 0, Math.min(asked, some.length));
            }
        }
        assertThat(back.toString()).isEqualTo(text.toString());
    }

    @Test
    void whatIsCutInTheMiddleOfASignIsNoUtf8() {
        byte[] cut = {'a', (byte) 0xE2, (byte) 0x82};
        assertThatThrownBy(() -> {
                    try (Reader signs = new Utf8Signs(new ByteArrayInputStream(cut))) {
                        signs.transferTo(java.io.Writer.nullWriter());
                    }
                })
                .isInstanceOf(CharConversionException.class);
    }
}
