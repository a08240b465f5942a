package org.measuredmile.recording.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.recording.Place;

class DayReaderTest {
    private static final String RUNS = """
            # measured-mile runs 1
            run,trial,variant,rider,start,course,direction,state,reason,note
            b-01,braking,method=tape surface=dry,T1,10:27:41,promenade,out,confirmed,,"first, cold"
            b-02,braking,method=tape,T1,2031-04-14T10:31:00+01:00,promenade,back,void,traffic,
            """;

    @Test
    void aDayIsReadWithItsRunsAndReadings() {
        var read = FolderOf.day()
                .with("runs.csv", RUNS)
                .with("readings.csv", "run,reading,value,unit\nb-01,entry-speed,20.3,mph\n,wind-speed,2 m/s,\n")
                .readable();

        assertThat(read.day().date()).isEqualTo(LocalDate.of(2031, 4, 14));
        assertThat(read.day().timeZone()).isEqualTo(ZoneId.of("Europe/London"));
        assertThat(read.day().riders()).containsExactly(new Rider("T1", OptionalDouble.of(82.4)));
        Run first = read.day().runs().getFirst();
        assertThat(first.variant().text()).isEqualTo("method=tape surface=dry");
        // British summer time is an hour ahead of UTC.
        assertThat(first.start()).contains(Instant.parse("2031-04-14T09:27:41Z"));
        assertThat(first.note()).isEqualTo("first, cold");
        assertThat(first.place()).isEqualTo(Place.atLine("runs.csv", 3));
        assertThat(read.day().runs().get(1).start()).contains(Instant.parse("2031-04-14T09:31:00Z"));
        assertThat(read.day().runs().get(1).reason()).isEqualTo("traffic");
        assertThat(read.day().readings().getFirst().written()).isEqualTo("20.3 mph");
        assertThat(read.day().readings().get(1).run()).isEmpty();
        assertThat(read.day().instruments().getFirst().resolution()).hasValue(0.01);
    }

    @Test
    void aDayWithoutDateAndBikeIsRefusedAndNamesEveryFaultOfEveryFileAtOnce() {
        var folder = FolderOf.empty()
                .with("day.yaml", "place: Wendlesea\nriders:\n  - {massAsRidden: heavy}\n")
                .with("runs.csv", "run,trial,state\nb-01,,confirmed\nb-01,braking,maybe\n")
                .with("readings.csv", "run,reading,value\nb-09,entry-speed,20.3 mph\n,,7\n");

        assertThat(folder.read()).isInstanceOf(DayRead.Unusable.class);
        assertThat(folder.faults())
                .containsExactly(
                        "date-missing @ day.yaml: line 1, date",
                        "bike-missing @ day.yaml: line 1, bike",
                        "zone-missing @ day.yaml: line 1, timeZone",
                        "not-a-quantity @ day.yaml: line 3, riders.massAsRidden",
                        "key-missing @ day.yaml: line 3, riders.code",
                        "cell-missing @ runs.csv: line 2, trial",
                        "run-twice @ runs.csv: line 3, run",
                        "run-unknown @ readings.csv: line 2, run",
                        "cell-missing @ readings.csv: line 3, reading");
    }

    @Test
    void aFolderWithoutDayYamlIsRefusedAndItsOtherFilesAreStillLookedAt() {
        var folder = FolderOf.empty().with("runs.csv", "run,trial,state,start\nb-01,braking,confirmed,25:10\n");

        assertThat(folder.faults()).containsExactly("day-missing @ day-001", "not-a-time @ runs.csv: line 2, start");
    }

    @Test
    void brokenYamlIsNamedByItsLine() {
        var folder = FolderOf.empty().with("day.yaml", "date: 2031-04-14\nriders: [T1, T2\nbike: b\n");

        assertThat(folder.faults()).containsExactly("day-unreadable @ day.yaml", "not-yaml @ day.yaml: line 3");
        assertThat(FolderOf.empty()
                        .with("day.yaml", "date: 2031-04-14\n\tbike: b\n")
                        .faults())
                .contains("not-yaml @ day.yaml: line 2");
    }

    @Test
    void keysWrittenTwiceAliasesAndDeepNestsAreFaults() {
        assertThat(FolderOf.day()
                        .with("day.yaml", FolderOf.DAY + "place: elsewhere\n")
                        .faults())
                .containsExactly("key-twice @ day.yaml: line 11, place");
        assertThat(FolderOf.empty().with("day.yaml", "a: &x [1]\nb: [*x, *x]\n").faults())
                .contains("yaml-aliases @ day.yaml: line 2");
        assertThat(FolderOf.empty()
                        .with("day.yaml", "a: " + "[".repeat(100_000))
                        .faults())
                .contains("yaml-too-deep @ day.yaml: line 1");
    }

    @Test
    void thirtyFirstOfFebruaryIsNoDate() {
        var folder = FolderOf.day().with("day.yaml", FolderOf.DAY.replace("2031-04-14", "2031-02-31"));

        assertThat(folder.faults())
                .containsExactly("not-a-date @ day.yaml: line 1, date", "date-missing @ day.yaml: line 1, date");
    }

    @Test
    void hoursThatClocksSkipOrRepeatAreNamed() {
        // Europe/London: forward at 01:00 UTC on 30 March 2031, back at 01:00 UTC on 26 October 2031 (last
        // Sundays).
        var runs = "run,trial,state,start\nb-01,braking,confirmed,01:30\n";

        assertThat(FolderOf.day()
                        .with("day.yaml", FolderOf.DAY.replace("2031-04-14", "2031-03-30"))
                        .with("runs.csv", runs)
                        .faults())
                .containsExactly("time-skipped @ runs.csv: line 2, start");
        assertThat(FolderOf.day()
                        .with("day.yaml", FolderOf.DAY.replace("2031-04-14", "2031-10-26"))
                        .with("runs.csv", runs)
                        .faults())
                .containsExactly("time-twice @ runs.csv: line 2, start");
        assertThat(FolderOf.day()
                        .with("runs.csv", "run,trial,state,start\nb-01,braking,confirmed,2031-04-15T10:00:00Z\n")
                        .faults())
                .containsExactly("time-of-other-day @ runs.csv: line 2, start");
    }

    @Test
    void aBadLineIsLeftOutAndAllOthersAreKept() {
        var folder = FolderOf.day()
                .with("runs.csv", """
                        run,trial,variant,state
                        b-01,braking,method=tape,confirmed
                        b-02,braking,method,confirmed
                        b-03,braking,method=tape,confirmed,too,many
                        b-04,braking,"method=tape,confirmed
                        b 5,braking,method=tape,confirmed
                        b-06,braking,method=tape,confirmed
                        """)
                .with("readings.csv", "run,reading,value\nb-02,entry-speed,20 mph\nb-06,entry-speed,20 mph\n");

        assertThat(folder.faults())
                .containsExactly(
                        "not-a-variant @ runs.csv: line 3, variant",
                        "cells-too-many @ runs.csv: line 4",
                        "quote-broken @ runs.csv: line 5",
                        "id-with-blanks @ runs.csv: line 6, run",
                        "run-left-out @ readings.csv: line 2, run");
        assertThat(folder.readable().day().runs()).extracting(Run::id).containsExactly("b-01", "b-06");
        assertThat(folder.readable().day().readings()).hasSize(1);
    }

    @Test
    void aVoidRunWithoutReasonIsKeptAsVoid() {
        var folder = FolderOf.day().with("runs.csv", "run,trial,state,reason\nb-01,braking,void,\n");

        assertThat(folder.faults()).containsExactly("void-without-reason @ runs.csv: line 2, reason");
        assertThat(folder.readable().day().runs().getFirst().state()).isEqualTo(Run.State.VOID);
    }

    @Test
    void aRunWhoseStateNobodyWroteIsOnlyProposed() {
        var folder = FolderOf.day().with("runs.csv", "run,trial,state\nb-01,braking,\nb-02,braking,fine\n");

        assertThat(folder.faults())
                .containsExactly("state-missing @ runs.csv: line 2, state", "state-unknown @ runs.csv: line 3, state");
        assertThat(folder.readable().day().runs()).extracting(Run::state).containsOnly(Run.State.PROPOSED);
    }

    @Test
    void namesThatNothingAnswersToAreFaultsAndTheLinesAreKept() {
        var folder = FolderOf.day()
                .with("runs.csv", "run,trial,state,rider,course,direction\nb-01,braking,confirmed,T9,pier,up\n")
                .with("readings.csv", "run,reading,value,instrument\nb-01,entry-speed,20 mph,radar\n")
                .with("recordings.csv", "file,instrument,runs,clock-offset-s\nlost.csv,,b-01 b-77,0.5\nx.csv,,,soon\n")
                .withRecording("found.csv");

        assertThat(folder.faults())
                .containsExactly(
                        "not-one-of @ runs.csv: line 2, direction",
                        "rider-unknown @ runs.csv: line 2, rider",
                        "course-unknown @ runs.csv: line 2, course",
                        "instrument-unknown @ readings.csv: line 2, instrument",
                        "run-unknown @ recordings.csv: line 2, runs",
                        "recording-missing @ recordings.csv: line 2, file",
                        "not-a-quantity @ recordings.csv: line 3, clock-offset-s");
        assertThat(folder.notes()).contains("recording-not-listed @ recordings/found.csv");
        TestDay day = folder.readable().day();
        assertThat(day.runs()).hasSize(1);
        assertThat(day.readings()).hasSize(1);
        assertThat(day.recordings().getFirst().runs()).containsExactly("b-01");
        assertThat(day.recordings().getFirst().clockOffsetS()).isEqualTo(0.5);
    }

    @Test
    void theBikeOfTheFolderIsTheOneTheDayNames() {
        var bike = "id: ostrelle-lamplight\nmaker: Ostrelle\nmodel: Lamplight\nlevels: many\ndrive: steam\n";
        var folder = FolderOf.day().with("bike/bike.yaml", bike).with("bike/spec.csv", "item,claimed\nmass,\n,5 kg\n");

        assertThat(folder.faults())
                .containsExactly(
                        "cell-missing @ bike/spec.csv: line 3, item",
                        "not-a-whole-number @ bike/bike.yaml: line 4, levels",
                        "not-one-of @ bike/bike.yaml: line 5, drive");
        assertThat(folder.readable().bike().title()).isEqualTo("Ostrelle Lamplight");
        assertThat(folder.with("bike/bike.yaml", "id: other\n").read()).isInstanceOf(DayRead.Unusable.class);
        var byPath = folder.with("day.yaml", FolderOf.DAY.replace("ostrelle-lamplight", "../bikes/lamplight-2"));
        assertThat(byPath.readable().day().bike()).isEqualTo("ostrelle-lamplight");
    }

    @Test
    void coursesComeFromTheirFilesToo() {
        var folder = FolderOf.day()
                .with("day.yaml", FolderOf.DAY + "  - hill\n  - lane\n")
                .with("courses/hill.yaml", """
                        id: hill
                        kind: climb
                        length: {value: 402.3 m, standardUncertainty: 0.1 m}
                        gates:
                          start: {latitude: 95, longitude: -1.2, bearing: 40}
                        surveyed: {date: 2030-09-01, method: wheel, twice}
                        """);

        assertThat(folder.faults())
                .containsExactly(
                        "out-of-range @ courses/hill.yaml: line 5, gates.start.latitude",
                        "course-not-described @ day.yaml: line 12, courses");
        Course hill = folder.readable().day().course("hill").orElseThrow();
        assertThat(hill.length()).contains(new Course.Surveyed(402.3, 0.1));
        assertThat(hill.start()).isEmpty();
        assertThat(folder.notes()).contains("key-unknown @ courses/hill.yaml: line 6, surveyed.twice");
    }

    @Test
    void quantitiesOfDayYamlAreCheckedForUnitAndRange() {
        var folder = FolderOf.day().with("day.yaml", FolderOf.DAY + """
                                conditions:
                                  airTemperature: 18.5
                                  relativeHumidity: 140 %
                                  windSpeed: 3 kg
                                  pressure: 1013 hPa
                                checks:
                                  preRide: {by: T1, secondPerson: T1}
                                """);

        assertThat(folder.faults())
                .containsExactly(
                        "not-a-quantity @ day.yaml: line 12, conditions.airTemperature",
                        "out-of-range @ day.yaml: line 13, conditions.relativeHumidity",
                        "not-a-quantity @ day.yaml: line 14, conditions.windSpeed",
                        "check-by-one @ day.yaml: line 17, checks.preRide.secondPerson");
        assertThat(folder.readable().day().conditions().pressurePa()).hasValue(101_300);
        assertThat(folder.readable().day().preRideCheck().orElseThrow().isTicked())
                .isFalse();
    }

    @Test
    void aRecordingInAPackedFileIsNamedBehindIt() {
        var folder = FolderOf.day()
                .with("recordings.csv", "file,note\ndrop.zip/a.gpx,kept\nlost.zip/a.gpx,\n")
                .withRecording("drop.zip");

        assertThat(folder.faults()).containsExactly("recording-missing @ recordings.csv: line 3, file");
        assertThat(folder.notes()).noneMatch(note -> note.startsWith("recording-not-listed"));
        TestDay day = folder.readable().day();
        assertThat(day.recording("drop.zip/a.gpx").orElseThrow().note()).isEqualTo("kept");
        assertThat(day.recording("drop.zip/b.gpx")).isEmpty();
    }

    @Test
    void aRunHasTheEndsThatItsRecordingsLineGives() {
        var read = withNamed("b-01@12.40-31.75 b-02 b-03@0-86400");

        var entry = read.day().recordings().getFirst();
        assertThat(entry.runs()).containsExactly("b-01", "b-02", "b-03");
        assertThat(entry.window("b-01")).contains(new Window(12.4, 31.75));
        assertThat(entry.window("b-02")).isEmpty();
        assertThat(entry.window("b-03")).contains(new Window(0, 86_400));
        assertThat(read.findings()).noneMatch(one -> one.place().source().equals("recordings.csv"));
    }

    @Test
    void anIdThatHoldsTheSignOfEndsIsAnId() {
        var read = withNamed("b@1-2@3-4");

        assertThat(read.day().recordings().getFirst().windows())
                .containsExactly(java.util.Map.entry("b@1-2", new Window(3, 4)));
    }

    @ParameterizedTest
    @CsvSource({
        "b-01@, not-a-window",
        "b-01@12.4, not-a-window",
        "b-01@-3-4, not-a-window",
        "b-01@1e3-2e3, not-a-window",
        "b-01@soon-later, not-a-window",
        "b-01@31.75-12.40, window-impossible",
        "b-01@12.4-12.4, window-impossible",
        "b-01@1-86401.001, window-impossible",
        "b-01@1-2 b-01@3-4, run-named-twice",
        "b-77@1-2, run-unknown",
    })
    void whatCannotBeTheEndsOfARunIsNamedAndCostsNothingElse(String named, String fault) {
        var read = withNamed("b-02@5-6 " + named);

        assertThat(read.findings())
                .filteredOn(one -> one.place().source().equals("recordings.csv"))
                .extracting(one -> one.code() + " @ " + one.place().text())
                .containsExactly(fault + " @ recordings.csv: line 2, runs");
        var entry = read.day().recordings().getFirst();
        assertThat(entry.window("b-02")).contains(new Window(5, 6));
        assertThat(entry.runs().contains("b-01")).isEqualTo(named.startsWith("b-01"));
        assertThat(entry.window("b-01").isPresent()).isEqualTo(fault.equals("run-named-twice"));
    }

    private static DayRead.Read withNamed(String runs) {
        var folder = FolderOf.day()
                .with(
                        "runs.csv",
                        "run,trial,state\nb-01,braking,confirmed\nb-02,braking,confirmed\n"
                                + "b-03,braking,confirmed\nb@1-2,braking,confirmed\n")
                .with("recordings.csv", "file,runs\na.gpx," + runs + "\n")
                .folder();
        var there = DayEdit.withRecording(folder, "a.gpx", java.io.InputStream::nullInputStream);
        return (DayRead.Read) DayReader.read(there);
    }
}
