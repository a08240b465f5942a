package org.measuredmile.recording.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.recording.check.Instrumented.NINE;
import static org.measuredmile.recording.check.Instrumented.SECONDS;
import static org.measuredmile.recording.check.Instrumented.check;
import static org.measuredmile.recording.check.Instrumented.day;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.recording.day.RecordingEntry;

/// A made ride, written down by several instruments, in one test day.
class DayChecksTest {
    private static List<String> codes(DayChecks checks, String file) {
        return checks.byFile().getOrDefault(file, List.of()).stream()
                .map(Finding::code)
                .toList();
    }

    private static Finding only(DayChecks checks, String file) {
        assertThat(codes(checks, file)).hasSize(1);
        return checks.byFile().getOrDefault(file, List.of()).getFirst();
    }

    @Test
    void aRideInTwoFormatsIsUsedOnceAndTheBetterFileServes() {
        Instrumented poor = new Instrumented("a.gpx");
        poor.speed = false;
        Instrumented rich = new Instrumented("b.tcx");
        rich.power = true;
        DayChecks checks = check(day(), poor.recording(), rich.recording());
        assertThat(checks.leftOut()).containsExactly("a.gpx");
        assertThat(only(checks, "a.gpx").level()).isEqualTo(Finding.Level.WARNING);
        assertThat(only(checks, "a.gpx").message()).contains("\"b.tcx\" has a speed of its own");
        assertThat(only(checks, "b.tcx").message()).contains("\"a.gpx\"").contains("this one is used");
    }

    @Test
    void aPersonsChoiceInRecordingsCsvComesFirst() {
        Instrumented poor = new Instrumented("a.gpx");
        poor.speed = false;
        DayChecks checks = check(
                day(new RecordingEntry("a.gpx", "", List.of("b1"), 0, "")),
                poor.recording(),
                new Instrumented("b.tcx").recording());
        assertThat(checks.leftOut()).containsExactly("b.tcx");
        assertThat(only(checks, "b.tcx").message()).contains("has runs named in recordings.csv");
    }

    @Test
    void filesThatAPersonGaveOtherRunsAreBothUsed() {
        DayChecks checks = check(
                day(
                        new RecordingEntry("a.gpx", "", List.of("b1"), 0, ""),
                        new RecordingEntry("b.tcx", "", List.of("b2"), 0, "")),
                new Instrumented("a.gpx").recording(),
                new Instrumented("b.tcx").recording());
        assertThat(checks.leftOut()).isEmpty();
        assertThat(codes(checks, "b.tcx")).containsExactly("same-ride");
    }

    @Test
    void aConversionThatWroteLocalTimeIsStillTheSameRide() {
        Instrumented local = new Instrumented("b.csv");
        local.clockS = 3600;
        local.speed = false;
        DayChecks checks = check(day(), new Instrumented("a.gpx").recording(), local.recording());
        assertThat(checks.leftOut()).containsExactly("b.csv");
        assertThat(only(checks, "b.csv").message()).contains("3600 s apart: whole hours");
    }

    @Test
    void aPartCutOutOfARideIsLeftOutEvenIfItHasMoreChannels() {
        Instrumented part = new Instrumented("part.tcx");
        part.fromS = 300;
        part.toS = 600;
        part.power = true;
        DayChecks checks = check(day(), new Instrumented("whole.gpx").recording(), part.recording());
        assertThat(checks.leftOut()).containsExactly("part.tcx");
        assertThat(only(checks, "part.tcx").message()).contains("lasts longer");
    }

    @Test
    void filesThatShareOnlyAPartAreBothUsedAndItIsSaid() {
        Instrumented early = new Instrumented("early.gpx");
        early.toS = 600;
        Instrumented late = new Instrumented("late.gpx");
        late.fromS = 300;
        DayChecks checks = check(day(), early.recording(), late.recording());
        assertThat(checks.leftOut()).isEmpty();
        assertThat(only(checks, "late.gpx").code()).isEqualTo("overlapping-recordings");
        assertThat(only(checks, "late.gpx").message())
                .contains("09:05:00 to 09:09:59 (299 s)")
                .contains("\"early.gpx\"")
                .contains("with the same samples");
    }

    @Test
    void twoReceiversOnOneBikeAreTwoRecordings() {
        Instrumented phone = new Instrumented("b-phone.gpx");
        phone.noiseM = 1.5;
        DayChecks checks = check(day(), new Instrumented("a.gpx").recording(), phone.recording());
        assertThat(checks.leftOut()).isEmpty();
        Finding overlap = only(checks, "b-phone.gpx");
        assertThat(overlap.code()).isEqualTo("overlapping-recordings");
        assertThat(overlap.level()).isEqualTo(Finding.Level.WARNING);
        // Nine o'clock of British Summer Time and 900 samples of a second each.
        assertThat(overlap.message()).contains("09:00:00 to 09:14:59 (899 s)").contains("\"a.gpx\"");
        assertThat(checks.besides()).containsExactly(new Beside("b-phone.gpx", "a.gpx", 0, SECONDS - 1));
    }

    @Test
    void theSameBytesUnderTwoNamesAreOneFile() {
        var byName = new TreeMap<String, Recording>();
        byName.put("a.gpx", new Instrumented("a.gpx").recording());
        byName.put("copy.gpx", new Instrumented("copy.gpx").recording());
        var hashes = new TreeMap<String, String>();
        hashes.put("a.gpx", "77");
        hashes.put("copy.gpx", "77");
        DayChecks checks = DayChecks.of(day(), byName, hashes);
        assertThat(checks.leftOut()).containsExactly("copy.gpx");
        assertThat(only(checks, "copy.gpx").code()).isEqualTo("same-file");
    }

    @Test
    void valuesWithoutPositionsTellTheSameRideToo() {
        Instrumented one = new Instrumented("a.csv");
        one.positions = false;
        Instrumented two = new Instrumented("b.csv");
        two.positions = false;
        two.power = true;
        assertThat(check(day(), one.recording(), two.recording()).leftOut()).containsExactly("a.csv");
    }

    @ParameterizedTest
    @ValueSource(doubles = {7.4, -31.2, 18, 3600, 3607.5})
    void clocksThatAreApartAreToldAsAProposal(double clockS) {
        Instrumented wheel = new Instrumented("wheel.csv");
        wheel.positions = false;
        wheel.noiseM = 1;
        wheel.clockS = clockS;
        DayChecks checks = check(day(), new Instrumented("a.gpx").recording(), wheel.recording());
        if (clockS == 18 || clockS == 3600) {
            assertThat(codes(checks, "wheel.csv"))
                    .as("exact leaps are found as one ride or proposed")
                    .containsAnyOf("same-ride", "clock-offset-proposed");
            return;
        }
        Finding proposed = checks.byFile().getOrDefault("wheel.csv", List.of()).stream()
                .filter(finding -> finding.code().equals("clock-offset-proposed"))
                .findFirst()
                .orElseThrow();
        assertThat(Double.parseDouble(proposed.remedy().replaceAll(".*clock-offset-s (-?[0-9.]+) .*", "$1")))
                .isCloseTo(-clockS, org.assertj.core.api.Assertions.within(0.15));
    }

    @Test
    void anOffsetThatIsStatedAlreadyIsNotProposedAgain() {
        Instrumented wheel = new Instrumented("wheel.csv");
        wheel.positions = false;
        wheel.noiseM = 1;
        wheel.clockS = 7.4;
        DayChecks checks = check(
                day(new RecordingEntry("wheel.csv", "", List.of(), -7.4, "")),
                new Instrumented("a.gpx").recording(),
                wheel.recording());
        assertThat(codes(checks, "wheel.csv")).doesNotContain("clock-offset-proposed");
    }

    @Test
    void aReceiverThatMiscountedItsWeeksIsOfAnotherDay() {
        Instrumented old = new Instrumented("a.nmea");
        old.start = NINE.minusSeconds(7168 * 86_400L);
        // 1024 weeks are 7168 days (IS-GPS-200).
        Finding other = only(check(day(), old.recording()), "a.nmea");
        assertThat(other.code()).isEqualTo("other-day");
        assertThat(other.message()).contains("7168 days later").contains("1024 weeks");
        assertThat(other.remedy()).contains("619315200 s");
    }

    @Test
    void aFileOfTheDayBeforeIsNamed() {
        Instrumented before = new Instrumented("a.gpx");
        before.start = NINE.minusSeconds(86_400);
        assertThat(only(check(day(), before.recording()), "a.gpx").message()).contains("2031-05-13");
    }

    @Test
    void aClockWithoutZoneGetsTheDaysZoneAsAProposal() {
        Instrumented local = new Instrumented("a.csv");
        local.zoneStated = false;
        Finding zone = only(check(day(), local.recording()), "a.csv");
        assertThat(zone.code()).isEqualTo("zone-proposed");
        // London keeps British Summer Time, one hour ahead of UTC, in May (IANA tz database).
        assertThat(zone.message()).contains("clock-offset-s is -3600");
    }

    @Test
    void aBatteryLogOnAnotherClockIsFound() {
        double[] timesS = new double[SECONDS];
        Arrays.setAll(timesS, i -> i);
        Recording log = new Recording(
                "pack.csv",
                Format.DELIMITED,
                "",
                Optional.of(NINE.plusSeconds(7200)),
                true,
                SECONDS,
                timesS,
                List.of(new Segment(0, SECONDS - 1)),
                List.of(Instrumented.channel(ChannelKind.VOLTAGE, timesS, i -> 39 - i / 1000)),
                new TreeMap<>(),
                List.of());
        Finding clock = only(check(day(), log, new Instrumented("a.gpx").recording()), "pack.csv");
        assertThat(clock.code()).isEqualTo("other-clock");
        assertThat(clock.message()).contains("-7200 s").contains("whole hours");
    }

    @Test
    void ridesOneAfterTheOtherGiveNothing() {
        Instrumented second = new Instrumented("b.gpx");
        second.start = NINE.plusSeconds(4000);
        DayChecks checks = check(day(), new Instrumented("a.gpx").recording(), second.recording());
        assertThat(checks.leftOut()).isEmpty();
        assertThat(checks.byFile()).isEmpty();
    }
}
