package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Decoding.Refused;

/// Real files cut off at every byte, and with bits turned over: an answer each time, and never a value made up.
class FitBrokenFilesTest {
    private static final List<String> FILES = List.of(
            "fit/bike_short_hrv_15_records.fit",
            "fit/trainer_devfields_unterminated_strings.fit",
            "fit/bike_bigendian_devfields_132_records.fit");

    /// No message of these files is longer, in bytes: the place is where the broken message begins.
    private static final int LONGEST_MESSAGE = 300;

    static List<String> files() {
        return FILES;
    }

    @ParameterizedTest
    @MethodSource("files")
    void cutOffAtAnyByteKeepsWhatCameBefore(String file) {
        byte[] whole = Decode.resource(file);
        double[] times = Decode.recording(Decode.bytes("x.fit", whole)).timesS();
        int kept = 0;
        for (int length = 12; length < whole.length; length++) {
            switch (Decode.bytes("x.fit", Arrays.copyOf(whole, length))) {
                case Decoded(Recording recording) -> {
                    assertThat(recording.timesS()).containsExactly(Arrays.copyOf(times, recording.timesS().length));
                    assertThat(recording.timesS().length).isGreaterThanOrEqualTo(kept);
                    kept = recording.timesS().length;
                    String where = Decode.finding(recording, "cut-off").place().where();
                    assertThat(Integer.parseInt(where.substring("byte ".length())))
                            .isBetween(length - LONGEST_MESSAGE, length);
                }
                case Refused refused -> {
                    assertThat(kept).isZero();
                    assertThat(refused.findings().getFirst().code()).isEqualTo("cut-off");
                    assertThat(refused.findings().getFirst().place().where()).startsWith("byte ");
                }
            }
        }
        assertThat(kept).isEqualTo(times.length);
    }

    @ParameterizedTest
    @MethodSource("files")
    void everyBitTurnedOverIsNoticed(String file) {
        byte[] whole = Decode.resource(file);
        // Every one in a short file; the protocol's sum of 16 bits finds any single bit. The size and the mark of the
        // header decide what is read at all, so that a file may also be refused or end early.
        for (int bit = 0; bit < whole.length * 8; bit += whole.length > 4500 ? 5 : 3) {
            byte[] changed = whole.clone();
            changed[bit / 8] ^= (byte) (1 << bit % 8);
            Decoding decoding = Decode.bytes("x.fit", changed);
            if (decoding instanceof Decoded(Recording recording)) {
                assertThat(recording.findings())
                        .as("bit " + bit)
                        .anyMatch(finding -> finding.level() != org.measuredmile.recording.Finding.Level.NOTE);
            }
            if (bit % 97 == 0) {
                ReaderContract.holds(decoding);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void anyDamageIsAnsweredInTime(int seed) {
        Random random = new Random(seed);
        for (int round = 0; round < 60; round++) {
            byte[] bytes = Decode.resource(FILES.get(random.nextInt(FILES.size())));
            for (int i = random.nextInt(30); i >= 0; i--) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            Decoding decoding = Assertions.assertTimeoutPreemptively(
                    Duration.ofSeconds(20), () -> Decode.bytes("x.fit", bytes), () -> "seed " + seed);
            ReaderContract.holds(decoding);
        }
    }

    @Test
    void whatDoesNotBeginLikeAFitFileIsRefusedAtItsFirstByte() throws java.io.IOException {
        byte[] text = "not at all".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        Decoding decoding = new FitReader().read("x.fit", new java.io.ByteArrayInputStream(text));
        assertThat(Decode.refusal(decoding).code()).isEqualTo("not-fit");
    }

    @ParameterizedTest
    @EnumSource(FitTold.class)
    void everyCodeHasItsRowOnThePage(FitTold told) throws java.io.IOException {
        assertThat(FormatPagesTest.pages()).contains("| " + told.code() + " |");
    }
}
