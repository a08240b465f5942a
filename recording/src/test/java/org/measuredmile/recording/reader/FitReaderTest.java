package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.recording.reader.FitRead.codes;
import static org.measuredmile.recording.reader.FitRead.named;
import static org.measuredmile.recording.reader.FitRead.read;
import static org.measuredmile.recording.reader.FitWriter.BYTE;
import static org.measuredmile.recording.reader.FitWriter.ENUM;
import static org.measuredmile.recording.reader.FitWriter.FLOAT32;
import static org.measuredmile.recording.reader.FitWriter.FLOAT64;
import static org.measuredmile.recording.reader.FitWriter.SINT16;
import static org.measuredmile.recording.reader.FitWriter.SINT32;
import static org.measuredmile.recording.reader.FitWriter.SINT64;
import static org.measuredmile.recording.reader.FitWriter.SINT8;
import static org.measuredmile.recording.reader.FitWriter.STRING;
import static org.measuredmile.recording.reader.FitWriter.T0;
import static org.measuredmile.recording.reader.FitWriter.UINT16;
import static org.measuredmile.recording.reader.FitWriter.UINT32;
import static org.measuredmile.recording.reader.FitWriter.UINT32Z;
import static org.measuredmile.recording.reader.FitWriter.UINT64;
import static org.measuredmile.recording.reader.FitWriter.UINT8;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;

/// What the protocol's bytes allow, one thing at a time, in files put together byte by byte.
class FitReaderTest {
    @ParameterizedTest
    @ValueSource(ints = {12, 14, 20})
    void aHeaderOfAnyLengthIsRead(int length) {
        Recording ride =
                read(FitWriter.activity().headerLength(length).data(0, T0, 0, 0).data(0, T0 + 1, 500, 5000));
        assertThat(ride.format()).isEqualTo(Format.FIT);
        assertThat(ride.channel(ChannelKind.DISTANCE).orElseThrow().values()).containsExactly(0, 5);
        assertThat(ride.channel(ChannelKind.SPEED).orElseThrow().values()).containsExactly(0, 5);
        assertThat(ride.findings()).isEmpty();
    }

    @Test
    void timesCountFromTheEndOf1989() {
        Recording ride = read(FitWriter.activity().data(0, T0, 0, 0));
        assertThat(ride.start()).contains(Instant.parse("1989-12-31T00:00:00Z").plusSeconds(T0));
        assertThat(ride.zoneStated()).isTrue();
    }

    @Test
    void aHeaderChecksumOfZeroIsNoneAndAnyOtherMustBeRight() {
        byte[] none = FitWriter.activity().data(0, T0, 0, 0).checksumOff(0).bytes();
        none[12] = 0;
        none[13] = 0;
        assertThat(codes(read(none))).doesNotContain("wrong-header-checksum");
        Recording wrong = read(FitWriter.activity().data(0, T0, 0, 0).headerChecksumOff(1));
        assertThat(codes(wrong)).contains("wrong-header-checksum");
    }

    @Test
    void aWrongChecksumIsToldAndTheSamplesAreKept() {
        Recording ride = read(
                FitWriter.activity().data(0, T0, 0, 0).data(0, T0 + 1, 1, 1).checksumOff(1));
        assertThat(codes(ride)).containsExactly("wrong-file-checksum");
        assertThat(ride.timesS()).hasSize(2);
    }

    @Test
    void bothByteOrdersMeanTheSame() {
        FitWriter little = FitWriter.activity();
        FitWriter big = new FitWriter().bigEndian();
        big.define(1, 0, 0, 1, ENUM).data(1, 4).define(0, 20, 253, 4, UINT32, 5, 4, UINT32, 6, 2, UINT16);
        for (FitWriter each : List.of(little, big)) {
            each.data(0, T0, 123_456, 8765).data(0, T0 + 1, 124_000, 9000);
        }
        assertThat(named(read(big), "distance").values())
                .containsExactly(named(read(little), "distance").values());
        assertThat(read(big).counts()).containsEntry("definitions-big-endian", 2L);
    }

    @Test
    void aCompressedTimeGoesOnToTheNextTimeWithThoseFiveBits() {
        // The protocol's own rule: below the last five bits means that they started over. T0 ends in binary 00000.
        FitWriter writer = FitWriter.activity().data(0, T0 + 30, 0, 0);
        writer.define(2, 20, 3, 1, UINT8)
                .compressed(2, 31, 80)
                .compressed(2, 1, 81)
                .compressed(2, 1, 82)
                .compressed(2, 0, 83);
        Recording ride = read(writer);
        assertThat(ride.timesS()).containsExactly(0, 1, 3, 34);
        assertThat(codes(ride)).containsExactly("repeated-time");
    }

    @Test
    void aCompressedTimeBeforeAnyWholeOneIsNoTime() {
        FitWriter writer = new FitWriter().define(2, 20, 3, 1, UINT8).compressed(2, 5, 80);
        writer.define(0, 20, 253, 4, UINT32, 3, 1, UINT8).data(0, T0, 81);
        Recording ride = read(writer);
        assertThat(ride.timesS()).hasSize(1);
        assertThat(codes(ride)).containsExactly("no-time");
    }

    @Test
    void theMarkOfEveryTypeForNoValueIsNoSample() {
        FitWriter writer = new FitWriter()
                .define(
                        0, 20, 253, 4, UINT32, 3, 1, UINT8, 13, 1, SINT8, 7, 2, UINT16, 9, 2, SINT16, 29, 4, UINT32,
                        200, 4, SINT32, 201, 4, UINT32Z, 202, 4, FLOAT32, 203, 8, FLOAT64, 204, 8, SINT64, 205, 8,
                        UINT64, 206, 1, 0x0A, 207, 2, 0x8B, 208, 8, 0x90)
                .data(
                        0,
                        T0,
                        0xFF,
                        0x7F,
                        0xFFFF,
                        0x7FFF,
                        -1L,
                        0x7FFF_FFFFL,
                        0,
                        new byte[] {-1, -1, -1, -1},
                        new byte[] {-1, -1, -1, -1, -1, -1, -1, -1},
                        Long.MAX_VALUE,
                        -1L,
                        0,
                        0,
                        0)
                .data(0, T0 + 1, 60, -5, 0, -250, 7, -7, 9, 1.5, -2.5, -1L << 40, 1L << 63, 10, 11, -1L);
        Recording ride = read(writer);
        assertThat(ride.timesS()).hasSize(2);
        assertThat(ride.channels()).hasSize(14).allMatch(channel -> channel.size() == 1 && channel.timeS(0) == 1);
        assertThat(named(ride, "heart_rate").value(0)).isEqualTo(1);
        assertThat(named(ride, "temperature").value(0)).isCloseTo(268.15, within(1e-9));
        assertThat(named(ride, "power").value(0)).isZero();
        assertThat(named(ride, "grade").value(0)).isEqualTo(-2.5);
        assertThat(named(ride, "field-203").value(0)).isEqualTo(-2.5);
        assertThat(named(ride, "field-204").value(0)).isEqualTo(-1.099511627776e12);
        assertThat(named(ride, "field-205").value(0)).isEqualTo(9.223372036854775808e18);
        assertThat(named(ride, "field-208").value(0)).isCloseTo(1.8446744073709552e19, within(1e4));
    }

    @Test
    void aFinerFieldStandsInThePlainOnesPlace() {
        FitWriter writer = new FitWriter()
                .define(
                        0, 20, 253, 4, UINT32, 73, 4, UINT32, 6, 2, UINT16, 78, 4, UINT32, 2, 2, UINT16, 53, 1, UINT8,
                        4, 1, UINT8)
                .data(0, T0, 70_001, 0xFFFF, 2_505, 0xFFFF, 64, 90)
                .data(0, T0 + 1, -1L, 8000, -1L, 3_000, 0xFF, 91)
                .data(0, T0 + 2, 8_001, 8000, 3_001, 3_000, 64, 0xFF);
        Recording ride = read(writer);
        assertThat(named(ride, "speed").values()).containsExactly(70.001, 8, 8.001);
        assertThat(named(ride, "altitude").values()).containsExactly(1, 100, 3_001 / 5.0 - 500);
        assertThat(named(ride, "cadence").values()).containsExactly(90.5 / 60, 91 / 60.0);
    }

    @Test
    void positionsAreSemicircles() {
        FitWriter writer = new FitWriter()
                .define(0, 20, 253, 4, UINT32, 0, 4, SINT32, 1, 4, SINT32)
                .data(0, T0, 1 << 29, -(1 << 30))
                .data(0, T0 + 1, Integer.MAX_VALUE, Integer.MAX_VALUE)
                .data(0, T0 + 2, 0, 0)
                .data(0, T0 + 3, (1 << 30) + 1, 5)
                .data(0, T0 + 4, 1 << 29, -(1 << 30) + 12);
        Recording ride = read(writer);
        assertThat(ride.channel(ChannelKind.LATITUDE).orElseThrow().values()).containsExactly(45, 45);
        assertThat(ride.channel(ChannelKind.LONGITUDE).orElseThrow().value(0)).isEqualTo(-90);
        assertThat(ride.track().size()).isEqualTo(2);
        assertThat(codes(ride)).containsExactlyInAnyOrder("zero-coordinates", "bad-coordinates");
    }

    @Test
    void packedSpeedAndDistanceStartOverEvery256Metres() {
        FitWriter writer = new FitWriter()
                .define(0, 20, 253, 4, UINT32, 8, 3, BYTE)
                // 3.54 m/s and 4000 sixteenths; then 0xFFF (no speed) and 100 sixteenths, 196 further on.
                .data(0, T0, new byte[] {(byte) 0x62, (byte) 0x01, (byte) 0xFA})
                .data(0, T0 + 1, new byte[] {(byte) 0xFF, (byte) 0x4F, (byte) 0x06})
                .data(0, T0 + 2, new byte[] {-1, -1, -1});
        Recording ride = read(writer);
        assertThat(named(ride, "speed").values()).containsExactly(3.54);
        assertThat(named(ride, "distance").values()).containsExactly(0, 196 / 16.0);
    }

    @Test
    void fieldsOfApplicationsAreNamedAndKeptWithTheirUnits() {
        FitWriter writer = new FitWriter()
                .define(1, 207, 3, 1, UINT8, 1, 16, BYTE)
                .data(1, 0, new byte[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16});
        describe(writer, 0, UINT16, "Speed", "km/h", 10, 0);
        describe(writer, 1, SINT16, "motor torque", "Nm", 1, 0);
        describe(writer, 2, FLOAT32, "Temperature", "C", 1, 5);
        describe(writer, 3, UINT8, "Distance", "furlongs", 1, 0);
        writer.define(0, 20, new int[] {253, 4, UINT32}, new int[] {0, 2, 0, 1, 2, 0, 2, 4, 0, 3, 1, 0, 9, 2, 0})
                .data(0, T0, 360, -4, 25.0, 3, 77)
                .data(0, T0 + 1, 0xFFFF, 0x7FFF, 26.0, 4, 77);
        Recording ride = read(writer);
        Channel speed = ride.channel(ChannelKind.SPEED).orElseThrow();
        assertThat(speed.values()).hasSize(1);
        assertThat(speed.value(0)).isCloseTo(10, within(1e-12));
        assertThat(speed.source()).isEqualTo("application 0102030405060708090a0b0c0d0e0f10");
        assertThat(named(ride, "motor torque").kind()).isEqualTo(ChannelKind.OTHER);
        assertThat(named(ride, "motor torque").writtenUnit()).isEqualTo("Nm");
        assertThat(named(ride, "motor torque").values()).containsExactly(-4);
        // Stored 25 with an offset of 5: 20 degrees.
        assertThat(ride.channel(ChannelKind.AIR_TEMPERATURE).orElseThrow().value(0))
                .isCloseTo(293.15, within(1e-9));
        assertThat(named(ride, "Distance").kind()).isEqualTo(ChannelKind.OTHER);
        assertThat(Decode.finding(ride, "fields-not-taken").message()).contains("developer-0-9");
    }

    private static void describe(
            FitWriter writer, int number, int type, String name, String unit, int scale, int offset) {
        writer.define(
                        2,
                        206,
                        0,
                        1,
                        UINT8,
                        1,
                        1,
                        UINT8,
                        2,
                        1,
                        UINT8,
                        3,
                        name.length(),
                        STRING,
                        8,
                        unit.length(),
                        STRING,
                        6,
                        1,
                        UINT8,
                        7,
                        1,
                        SINT8)
                .data(2, 0, number, type, name, unit, scale, offset);
    }

    @Test
    void aFieldDescribedAfterItsDefinitionIsTakenFromThenOn() {
        FitWriter writer = new FitWriter()
                .define(0, 20, new int[] {253, 4, UINT32, 3, 1, UINT8}, new int[] {0, 1, 0})
                .data(0, T0, 60, 5);
        describe(writer, 0, UINT8, "gear", "", 1, 0);
        writer.data(0, T0 + 1, 61, 6);
        assertThat(named(read(writer), "gear").values()).containsExactly(6);
    }

    @Test
    void aMessageTypeMayBeDefinedAnew() {
        FitWriter writer = FitWriter.activity().data(0, T0, 100, 1000);
        writer.define(0, 20, 253, 4, UINT32, 3, 1, UINT8).data(0, T0 + 1, 120);
        Recording ride = read(writer);
        assertThat(named(ride, "heart_rate").values()).containsExactly(2);
        assertThat(named(ride, "distance").values()).containsExactly(1);
    }
}
