package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
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
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;

/// What the protocol allows, one thing at a time, in files put together byte by byte.
class FitReaderTest {
    private static Recording read(byte[] bytes) {
        Recording recording = Decode.recording(Decode.bytes("ride.fit", bytes));
        ReaderContract.holds(recording);
        return recording;
    }

    private static Recording read(FitWriter writer) {
        return read(writer.bytes());
    }

    private static Channel named(Recording recording, String name) {
        return recording.channels().stream()
                .filter(channel -> channel.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is not among " + recording.channels()));
    }

    private static List<String> codes(Recording recording) {
        return recording.findings().stream().map(finding -> finding.code()).toList();
    }

    private static byte[] joined(byte[]... parts) {
        var all = new java.io.ByteArrayOutputStream();
        Arrays.stream(parts).forEach(all::writeBytes);
        return all.toByteArray();
    }

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

    @Test
    void stopsOfTheTimerArePausesAndBeginSegments() {
        FitWriter writer = FitWriter.activity().define(3, 21, 253, 4, UINT32, 0, 1, ENUM, 1, 1, ENUM, 3, 4, UINT32);
        writer.data(3, T0, 0, 0, 0)
                .data(0, T0, 0, 5000)
                .data(0, T0 + 10, 5000, 5000)
                .data(3, T0 + 10, 0, 4, 1)
                .data(3, T0 + 40, 0, 0, 1)
                .data(0, T0 + 40, 5000, 5000)
                .data(3, T0 + 45, 32, 3, 0)
                .data(0, T0 + 50, 10_000, 5000)
                .data(3, T0 + 50, 0, 9, 0);
        Recording ride = read(writer);
        assertThat(ride.segments()).containsExactly(new Segment(0, 10), new Segment(40, 50));
        assertThat(ride.marks())
                .containsExactly(
                        new Mark(Mark.Kind.PAUSE, 10, 40, "by itself"), new Mark(Mark.Kind.POINT, 45, 45, "marker"));
    }

    @Test
    void lapsAreMarksAndSeveralSportsAreTold() {
        FitWriter writer = FitWriter.activity().data(0, T0, 0, 0).data(0, T0 + 100, 0, 0);
        writer.define(4, 19, 253, 4, UINT32, 2, 4, UINT32, 7, 4, UINT32, 24, 1, ENUM)
                .data(4, T0 + 60, T0, 60_500, 0)
                .data(4, T0 + 100, T0 + 61, -1L, 7);
        writer.define(5, 18, 253, 4, UINT32, 2, 4, UINT32, 7, 4, UINT32, 5, 1, ENUM)
                .data(5, T0 + 60, T0, 60_000, 2)
                .data(5, T0 + 100, T0 + 60, 40_000, 21);
        Recording ride = read(writer);
        assertThat(ride.marks(Mark.Kind.LAP))
                .containsExactly(
                        new Mark(Mark.Kind.LAP, 0, 60.5, "by hand"),
                        new Mark(Mark.Kind.LAP, 61, 100, "end of session"));
        assertThat(Decode.finding(ride, "several-sports").message())
                .contains("cycling 0 to 60 s", "e-biking 60 to 100 s");
    }

    @Test
    void laterPartsWithRecordsAreSegmentsOfTheirOwn() {
        byte[] first =
                FitWriter.activity().data(0, T0, 0, 0).data(0, T0 + 5, 0, 0).bytes();
        byte[] other =
                new FitWriter().define(0, 132, 253, 4, UINT32).data(0, T0).bytes();
        byte[] last = FitWriter.activity()
                .data(0, T0 + 60, 0, 0)
                .data(0, T0 + 65, 0, 0)
                .bytes();
        Recording ride = read(joined(first, other, last));
        assertThat(ride.segments()).containsExactly(new Segment(0, 5), new Segment(60, 65));
        assertThat(Decode.finding(ride, "several-parts").message())
                .contains("1: an activity, 2 records", "2: a file of no stated type, 0 records", "3: an activity");
        assertThat(Decode.finding(ride, "messages-not-taken").message()).contains("heart-rate memory 1");
    }

    @Test
    void aPartThatIsUnreadableInsideIsLeftForTheNextOne() {
        FitWriter broken = FitWriter.activity().data(0, T0, 0, 0).data(0, T0 + 1, 0, 0);
        int place = broken.length();
        broken.put(new byte[] {7, 1, 2, 3});
        byte[] next = FitWriter.activity().data(0, T0 + 60, 0, 0).bytes();
        Recording ride = read(joined(broken.bytes(), next));
        assertThat(ride.timesS()).containsExactly(0, 1, 60);
        assertThat(Decode.finding(ride, "unreadable-inside").place().where()).isEqualTo("byte " + place);
    }

    @Test
    void bytesBehindTheEndAreTold() {
        byte[] whole = FitWriter.activity().data(0, T0, 0, 0).bytes();
        Recording ride = read(joined(whole, new byte[40]));
        assertThat(Decode.finding(ride, "trailing-bytes").place().where()).isEqualTo("byte " + whole.length);
    }

    @Test
    void aFileThatWasNeverClosedIsReadToItsLastMessage() {
        FitWriter writer = FitWriter.activity().data(0, T0, 0, 0).data(0, T0 + 1, 0, 0);
        writer.sizeOff(-(writer.length() - 14));
        byte[] open = Arrays.copyOf(writer.bytes(), writer.length() - 3);
        Recording ride = read(open);
        assertThat(ride.timesS()).hasSize(1);
        assertThat(codes(ride)).contains("not-closed");
    }

    @Test
    void aClockThatWasNeverSetGivesNoStart() {
        // The protocol: below 0x10000000 a time counts from switching on.
        FitWriter writer = FitWriter.activity().data(0, 17_217_869, 0, 0).data(0, 17_217_874, 0, 0);
        Recording ride = read(writer);
        assertThat(ride.start()).isEmpty();
        assertThat(ride.spanS()).isEqualTo(5);
        assertThat(Decode.finding(ride, "clock-not-set").message()).contains("1990-07-18");
    }

    @Test
    void aClockSetMidwayLosesTheTimesBefore() {
        FitWriter writer =
                FitWriter.activity().data(0, 500, 0, 0).data(0, T0, 0, 0).data(0, T0 + 1, 0, 0);
        Recording ride = read(writer);
        assertThat(ride.timesS()).hasSize(2);
        assertThat(ride.start()).isPresent();
        assertThat(Decode.finding(ride, "clock-set-midway").message()).startsWith("1 samples");
    }

    @Test
    void correlatedClocksAndLocalTimeAreApplied() {
        FitWriter writer = FitWriter.activity().data(0, 100, 0, 0).data(0, 101, 0, 0);
        writer.define(3, 162, 253, 4, UINT32, 1, 4, UINT32, 3, 4, UINT32, 4, 2, UINT16, 5, 2, UINT16)
                .data(3, T0 + 200, 150, T0 + 200 + 3600, 250, 50);
        Recording ride = read(writer);
        // 150.05 s on one clock are T0 + 200.25 s on the other.
        assertThat(ride.start())
                .contains(Instant.parse("1989-12-31T00:00:00.2Z").plusSeconds(T0 + 150));
        assertThat(codes(ride)).containsExactly("clock-by-message", "local-time");
        assertThat(Decode.finding(ride, "local-time").message()).contains("1.00 h ahead of UTC");
    }

    @Test
    void aCameraAtRestReadsOneGravity() {
        FitWriter writer = new FitWriter()
                .define(0, 167, 0, 1, ENUM, 1, 4, UINT32, 2, 4, UINT32, 3, 4, UINT32, 4, 12, SINT32, 5, 36, SINT32);
        long[] turned = {0, -65_535, 0, 65_535, 0, 0, 0, 0, 65_535};
        writer.data(0, 0, 1, 2048, 32_768, new long[] {10, 0, 0}, turned);
        writer.define(1, 165, 253, 4, UINT32, 0, 2, UINT16, 1, 4, UINT16, 2, 4, UINT16, 3, 4, UINT16, 4, 4, UINT16);
        writer.data(
                1,
                T0,
                250,
                new long[] {0, 10},
                new long[] {32_778, 32_778 + 1024},
                new long[] {32_768, 32_768},
                new long[] {32_768 + 2048, 32_768});
        Recording camera = read(writer);
        assertThat(camera.timesS()).containsExactly(0, 0.01);
        assertThat(camera.start())
                .contains(Instant.parse("1989-12-31T00:00:00.25Z").plusSeconds(T0));
        assertThat(camera.channel(ChannelKind.ACCELERATION_X).orElseThrow().values())
                .containsExactly(0, 0);
        // The matrix turns the sensor's own x into y.
        assertThat(camera.channel(ChannelKind.ACCELERATION_Y).orElseThrow().value(1))
                .isCloseTo(9.80665 / 2, within(1e-9));
        assertThat(camera.channel(ChannelKind.ACCELERATION_Z).orElseThrow().value(0))
                .isCloseTo(9.80665, within(1e-9));
        assertThat(camera.channel(ChannelKind.ACCELERATION_Z).orElseThrow().source())
                .isEqualTo("accelerometer");
    }

    @Test
    void aSensorWithoutCalibrationHasNoValues() {
        FitWriter writer = FitWriter.activity().data(0, T0, 0, 0);
        writer.define(1, 164, 253, 4, UINT32, 1, 2, UINT16, 2, 2, UINT16, 3, 2, UINT16, 4, 2, UINT16)
                .data(1, T0, 5, 1, 2, 3);
        Recording ride = read(writer);
        assertThat(ride.channel(ChannelKind.TURN_RATE_X)).isEmpty();
        assertThat(codes(ride)).contains("not-calibrated");
    }

    @Test
    void devicesAreNamedForWhatTheyMeasure() {
        FitWriter writer = new FitWriter()
                .define(1, 0, 0, 1, ENUM, 1, 2, UINT16, 2, 2, UINT16)
                .data(1, 4, 17, 5)
                .define(2, 23, 0, 1, UINT8, 1, 1, UINT8, 2, 2, UINT16, 4, 2, UINT16, 25, 1, ENUM)
                .data(2, 1, 120, 13, 2, 1)
                .data(2, 2, 123, 14, 3, 1)
                .data(2, 3, 20, 15, 4, 1)
                .define(0, 20, 253, 4, UINT32, 3, 1, UINT8, 6, 2, UINT16, 81, 1, UINT8)
                .data(0, T0, 60, 5000, 150);
        Recording ride = read(writer);
        assertThat(ride.device()).isEqualTo("manufacturer 17, product 5");
        assertThat(named(ride, "heart_rate").source()).isEqualTo("heart-rate sensor, manufacturer 13, product 2");
        // Without a position nothing but the wheel can have told the speed.
        assertThat(named(ride, "speed").kind()).isEqualTo(ChannelKind.WHEEL_SPEED);
        // With an electric bike among the devices the charge is that bike's.
        assertThat(ride.channel(ChannelKind.STATE_OF_CHARGE).orElseThrow().value(0))
                .isEqualTo(0.75);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 5, 6, 8, 32})
    void whatIsNoActivityIsRefusedByName(int type) {
        byte[] bytes = new FitWriter()
                .define(1, 0, 0, 1, ENUM)
                .data(1, type)
                .define(0, type == 6 ? 20 : 27, 253, 4, UINT32)
                .data(0, T0)
                .bytes();
        assertThat(Decode.refusal(Decode.bytes("plan.fit", bytes)).code()).isEqualTo("not-an-activity");
        assertThat(Decode.refusal(Decode.bytes("plan.fit", bytes)).message()).doesNotContain("of type");
    }

    @Test
    void anActivityWithoutSamplesIsRefused() {
        assertThat(Decode.refusal(Decode.bytes("x.fit", FitWriter.activity().bytes()))
                        .code())
                .isEqualTo("no-samples");
        byte[] untimed = new FitWriter()
                .define(0, 20, 3, 1, UINT8)
                .data(0, 60)
                .data(0, 61)
                .bytes();
        assertThat(Decode.refusal(Decode.bytes("x.fit", untimed)).code()).isEqualTo("no-times");
    }
}
