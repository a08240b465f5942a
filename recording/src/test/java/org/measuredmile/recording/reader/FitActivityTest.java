package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.recording.reader.FitRead.codes;
import static org.measuredmile.recording.reader.FitRead.joined;
import static org.measuredmile.recording.reader.FitRead.named;
import static org.measuredmile.recording.reader.FitRead.read;
import static org.measuredmile.recording.reader.FitWriter.ENUM;
import static org.measuredmile.recording.reader.FitWriter.SINT32;
import static org.measuredmile.recording.reader.FitWriter.T0;
import static org.measuredmile.recording.reader.FitWriter.UINT16;
import static org.measuredmile.recording.reader.FitWriter.UINT32;
import static org.measuredmile.recording.reader.FitWriter.UINT8;

import java.time.Instant;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;

/// What the messages of an activity mean: stops, laps, parts, clocks, sensors, devices, and what is no activity.
class FitActivityTest {
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
