package org.measuredmile.recording.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Place;

class DayEditTest {
    private static final String RUNS = """
            # measured-mile runs 1
            run,trial,mood,state,start,note
            b-01,braking,"good, mostly",confirmed,10:27:41,"two
            lines"
            b-02, braking ,fine,proposed,10:31
            b-03,braking,,maybe,soon
            """;

    private static Run run(String id, Run.State state) {
        return new Run(id, "braking", Variant.NONE, "", Optional.empty(), "", "", state, "", "", Place.NOWHERE);
    }

    private static Reading reading(String run, String name, String value) {
        return new Reading(run, name, value, "", "", Optional.empty(), "", "", Place.NOWHERE);
    }

    private static String text(DayFolder folder, String file) {
        return new String(folder.texts().get(file), StandardCharsets.UTF_8);
    }

    @Test
    void aRunsStateChangesInItsOwnLineOnly() {
        var folder = FolderOf.day().with("runs.csv", RUNS).folder();

        var edited = DayEdit.withRunState(folder, "b-02", Run.State.CONFIRMED, "");

        assertThat(text(edited, "runs.csv"))
                .isEqualTo(RUNS.replace("b-02, braking ,fine,proposed,10:31", "b-02,braking,fine,confirmed,10:31"));
    }

    @Test
    void voidingAddsTheReasonsColumnAndLeavesTheLinesAlone() {
        var folder = FolderOf.day().with("runs.csv", RUNS).folder();

        var edited = DayEdit.withRunState(folder, "b-01", Run.State.VOID, "other: gull");

        assertThat(text(edited, "runs.csv")).isEqualTo("""
                        # measured-mile runs 1
                        run,trial,mood,state,start,note,reason
                        b-01,braking,"good, mostly",void,10:27:41,"two
                        lines",other: gull
                        b-02, braking ,fine,proposed,10:31
                        b-03,braking,,maybe,soon
                        """);
    }

    @Test
    void aRunThatIsNoLongerVoidKeepsItsOldReasonInSight() {
        var folder = FolderOf.day()
                .with("runs.csv", "run,trial,state,reason,note\nb-01,braking,void,traffic,slow\n")
                .folder();

        var edited = DayEdit.withRunState(folder, "b-01", Run.State.CONFIRMED, "wrong run");

        assertThat(text(edited, "runs.csv"))
                .contains("b-01,braking,confirmed,,slow was void: traffic; now not: wrong run");
    }

    @Test
    void aRunIsAddedAtTheEndInTheFilesOwnColumns() {
        var folder = FolderOf.day().with("runs.csv", RUNS).folder();

        var edited = DayEdit.withRun(folder, run("b-04", Run.State.CONFIRMED));

        assertThat(text(edited, "runs.csv")).isEqualTo(RUNS + "b-04,braking,,confirmed,,\n");
    }

    @Test
    void aRunThatSaysNothingNewChangesNoCell() {
        var folder = FolderOf.day()
                .with("runs.csv", "state;run;trial;start\nconfirmed;b-01;braking;10:27\n")
                .folder();
        Run same = ((DayRead.Read) DayReader.read(folder)).day().runs().getFirst();

        assertThat(text(DayEdit.withRun(folder, same), "runs.csv")).isEqualTo(text(folder, "runs.csv"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void readingsReplaceTheirLineOrAreAddedWhateverTheLineEnds(String end) {
        String before = String.join(end, "run,reading,value,by,colour", ",mass,24 kg,T1,blau °", ",note,x,,");
        var folder = FolderOf.day().with("readings.csv", before).folder();

        var edited = DayEdit.withReadings(
                folder, List.of(reading("", "mass", "24,5 kg"), reading("", "wind-speed", "2 m/s")));

        assertThat(text(edited, "readings.csv"))
                .isEqualTo(String.join(
                        end,
                        "run,reading,value,by,colour",
                        ",mass,\"24,5 kg\",,blau °",
                        ",note,x,,",
                        ",wind-speed,2 m/s,,",
                        ""));
    }

    @Test
    void bytesThatAreNoTextSurviveAnEdit() {
        byte[] before = ",mass,24 kg,\u00B0\n".getBytes(StandardCharsets.ISO_8859_1);
        byte[] header = "reading,value\n".getBytes(StandardCharsets.ISO_8859_1);
        byte[] all = java.util.Arrays.copyOf(header, header.length + before.length);
        System.arraycopy(before, 0, all, header.length, before.length);
        var folder = FolderOf.day().with("readings.csv", all).folder();

        byte[] edited = DayEdit.withReadings(folder, List.of(reading("", "wind-speed", "2 m/s")))
                .texts()
                .get("readings.csv");

        assertThat(java.util.Arrays.copyOf(edited, all.length)).isEqualTo(all);
    }

    @Test
    void aWideFileStaysWide() {
        byte[] before = "\uFEFFrun,reading,value\n,mass,24 kg\n".getBytes(StandardCharsets.UTF_16LE);
        var folder = FolderOf.day().with("readings.csv", before).folder();

        byte[] edited = DayEdit.withReadings(folder, List.of(reading("", "mass", "25 kg")))
                .texts()
                .get("readings.csv");

        assertThat(new String(edited, StandardCharsets.UTF_16LE)).isEqualTo("\uFEFFrun,reading,value\n,mass,25 kg\n");
    }

    @Test
    void filesThatAreNotThereAreBegun() {
        var folder = FolderOf.day().folder();

        var edited = DayEdit.withReadings(
                DayEdit.withRun(folder, run("b-01", Run.State.CONFIRMED)),
                List.of(reading("b-01", "entry-speed", "20.3 mph")));
        edited = DayEdit.withRecordingEntry(edited, new RecordingEntry("a.gpx", "", List.of("b-01"), 0, ""));
        edited = DayEdit.withRecording(edited, "a.gpx", java.io.InputStream::nullInputStream);

        var read = (DayRead.Read) DayReader.read(edited);
        assertThat(read.findings()).noneMatch(one -> one.level() != org.measuredmile.recording.Finding.Level.NOTE);
        assertThat(read.day().runs()).hasSize(1);
        assertThat(read.day().readings()).hasSize(1);
        assertThat(read.day().recordings()).hasSize(1);
    }

    @Test
    void theEndsOfARunAreWrittenIntoItsRecordingsLineAndNoOtherByteChanges() {
        var folder = FolderOf.day()
                .with("runs.csv", "run,trial,state\nb-01,braking,confirmed\nb-02,braking,confirmed\n")
                .with("recordings.csv", "file;runs;note\na.gpx;b-01 b-02;kept ; as is\nb.gpx;;\n")
                .folder();
        var entry =
                ((DayRead.Read) DayReader.read(folder)).day().recording("b.gpx").orElseThrow();

        byte[] edited = DayEdit.withRecordingEntry(folder, entry.naming("b-02", new Window(12.4, 31.75)))
                .texts()
                .get("recordings.csv");

        assertThat(new String(edited, StandardCharsets.UTF_8))
                .isEqualTo("file;runs;note\na.gpx;b-01 b-02;kept ; as is\nb.gpx;b-02@12.4-31.75;\n");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "date: 2031-04-14 # Monday\nbike: b\n",
                "date: 2031-04-14\nbike: b",
                "checks:\n  preRide:\n    by: T2\n    time: early\n# after\ndate: 2031-04-14\nbike: b\n",
                "checks: {preRide: {by: T2}, other: [1, 2]}\ndate: 2031-04-14\nbike: b\n",
                "checks:\n  other: 1 # kept\ndate: 2031-04-14\nbike: b\n",
                "checks:\ndate: 2031-04-14\nbike: b\n",
                "{date: 2031-04-14, bike: b}\n",
                "place: 𝓦endlesea\r\nchecks: {}\r\ndate: 2031-04-14\r\nbike: b\r\n"
            })
    void thePreRideCheckIsWrittenIntoAnyDayYaml(String yaml) {
        var check = new PreRideCheck("T1", "M \"1\"", "09:40");
        var folder = FolderOf.empty().with("day.yaml", yaml).folder();

        DayFolder edited = DayEdit.withPreRideCheck(folder, check).orElseThrow();

        var read = (DayRead.Read) DayReader.read(edited);
        assertThat(read.day().preRideCheck()).contains(check);
        assertThat(read.day().bike()).isEqualTo("b");
        for (String kept : List.of("# Monday", "# after", "# kept", "other: [1, 2]", "other: 1")) {
            assertThat(text(edited, "day.yaml").contains(kept)).as(kept).isEqualTo(yaml.contains(kept));
        }
    }

    @Test
    void aBrokenDayYamlIsNotTouched() {
        var folder = FolderOf.empty().with("day.yaml", "a: [1\n").folder();

        assertThat(DayEdit.withPreRideCheck(folder, new PreRideCheck("T1", "M1", "")))
                .isEmpty();
    }
}
