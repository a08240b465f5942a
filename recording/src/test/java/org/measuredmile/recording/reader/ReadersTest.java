package org.measuredmile.recording.reader;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Format;

class ReadersTest {
    private static final String TABLE = "time (s),speed (m/s)\n0,1\n1,2\n";

    private static byte[] packed(byte[] bytes) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(bytes);
        }
        return out.toByteArray();
    }

    @Test
    void theContentDecidesAndNotTheName() {
        assertThat(Decode.recording("ride.gpx", TABLE).format()).isEqualTo(Format.DELIMITED);
        String log = new String(Decode.resource("phone_log_prefixed_lines.nmea"), UTF_8);
        assertThat(Decode.recording("ride.csv", log).format()).isEqualTo(Format.NMEA);
    }

    @Test
    void aPackedFileIsUnpackedOnTheWay() throws IOException {
        assertThat(Decode.recording(Decode.bytes("ride.csv.gz", packed(TABLE.getBytes(UTF_8))))
                        .timesS())
                .hasSize(2);
    }

    @Test
    void aDamagedPackedFileIsRefused() throws IOException {
        byte[] whole = packed(Decode.resource("phone_log_prefixed_lines.nmea"));
        byte[] cut = Arrays.copyOf(whole, whole.length / 2);
        assertThat(Decode.refusal(Decode.bytes("l.nmea.gz", cut)).code()).isEqualTo("broken-gzip");
    }

    @Test
    void aBrokenStreamIsAnExceptionAndNotAFinding() {
        InputStream broken = new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("the disk is gone");
            }
        };
        assertThatThrownBy(() -> Readers.decode("ride.csv", broken)).isInstanceOf(IOException.class);
    }

    @Test
    void thereIsOneReaderForEachFormat() {
        assertThat(Readers.all()).extracting(RecordingReader::format).containsExactlyInAnyOrder(Format.values());
    }
}
