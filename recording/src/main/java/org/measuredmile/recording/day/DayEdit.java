package org.measuredmile.recording.day;

import java.nio.charset.Charset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/// Changes a test-day folder as a person at a form would: one line of one file, all else left byte for byte.
///
/// Shape: a folder in, a new folder out. Lines, columns, comments and faults that nobody touched stay as they were;
/// in a changed line only the cells that say something new are rewritten. Nothing is ever deleted.
public final class DayEdit {
    private DayEdit() {}

    /// The folder with a run's line changed, or added.
    public static DayFolder withRun(DayFolder folder, Run run) {
        Optional<List<String>> old = read(folder)
                .flatMap(day -> day.runs().stream()
                        .filter(one -> one.id().equals(run.id()))
                        .findFirst()
                        .map(DayWriter::cells));
        var changes = changes(DayFiles.RUN_COLUMNS, DayWriter.cells(run), old);
        return edit(
                folder,
                DayFiles.RUNS,
                "runs",
                DayFiles.RUN_COLUMNS,
                file -> file.put(line -> line.text("run").equals(run.id()), keyed(changes, "run", run.id())));
    }

    /// The folder with a run's state changed, and its reason where the state needs one.
    ///
    /// Shape: the reason of a run that was void and is no longer stays in its note, so that it can be seen.
    public static DayFolder withRunState(DayFolder folder, String run, Run.State state, String reason) {
        var changes = new TreeMap<String, String>();
        changes.put("state", state.name().toLowerCase(Locale.ROOT));
        changes.put("reason", state == Run.State.VOID ? reason : "");
        var before = read(folder)
                .flatMap(day ->
                        day.runs().stream().filter(one -> one.id().equals(run)).findFirst());
        if (state != Run.State.VOID
                && before.isPresent()
                && !before.get().reason().isEmpty()) {
            String was = "was void: " + before.get().reason() + (reason.isEmpty() ? "" : "; now not: " + reason);
            changes.put("note", (before.get().note() + " " + was).strip());
        }
        return edit(
                folder,
                DayFiles.RUNS,
                "runs",
                DayFiles.RUN_COLUMNS,
                file -> file.has(line -> line.text("run").equals(run))
                        ? file.put(line -> line.text("run").equals(run), changes)
                        : file);
    }

    /// The folder with readings changed, by run and name, or added. A reading without a value empties the cell.
    public static DayFolder withReadings(DayFolder folder, List<Reading> readings) {
        Optional<TestDay> day = read(folder);
        return edit(folder, DayFiles.READINGS, "readings", DayFiles.READING_COLUMNS, file -> {
            for (Reading reading : readings) {
                Optional<List<String>> old = day.flatMap(one -> one.readings().stream()
                        .filter(known -> isSame(known, reading))
                        .findFirst()
                        .map(DayWriter::cells));
                var changes = changes(DayFiles.READING_COLUMNS, DayWriter.cells(reading), old);
                changes.put("run", reading.run());
                changes.put("value", reading.value());
                file.put(
                        line -> line.text("run").equals(reading.run())
                                && line.text("reading").equals(reading.name()),
                        keyed(changes, "reading", reading.name()));
            }
            return file;
        });
    }

    private static boolean isSame(Reading one, Reading other) {
        return one.run().equals(other.run()) && one.name().equals(other.name());
    }

    /// The folder with a file's line in recordings.csv changed, or added.
    public static DayFolder withRecordingEntry(DayFolder folder, RecordingEntry entry) {
        Optional<List<String>> old =
                read(folder).flatMap(day -> day.recording(entry.file())).map(DayWriter::cells);
        var changes = changes(DayFiles.RECORDING_COLUMNS, DayWriter.cells(entry), old);
        return edit(
                folder,
                DayFiles.RECORDINGS,
                "recordings",
                DayFiles.RECORDING_COLUMNS,
                file -> file.put(line -> line.text("file").equals(entry.file()), keyed(changes, "file", entry.file())));
    }

    /// The folder with a line of the bike's specification changed, or added where there is none like it.
    ///
    /// Shape: `was` is the line as it was read; a bike that nothing is written of gets a bike.yaml with its id.
    public static DayFolder withSpecLine(DayFolder folder, String bike, Optional<SpecLine> was, SpecLine now) {
        var changes = changes(DayFiles.SPEC_COLUMNS, DayWriter.cells(now), was.map(DayWriter::cells));
        var edited = edit(
                folder,
                DayFiles.SPEC,
                "spec",
                DayFiles.SPEC_COLUMNS,
                file -> file.put(line -> was.filter(old -> isLine(line, old)).isPresent(), changes));
        byte[] described = ("id: " + bike + "\n").getBytes(java.nio.charset.StandardCharsets.UTF_8);
        return edited.texts().containsKey(DayFiles.BIKE) ? edited : with(edited, DayFiles.BIKE, described);
    }

    private static boolean isLine(CsvEdit.Line line, SpecLine old) {
        List<String> cells = DayWriter.cells(old);
        for (int i = 0; i < cells.size(); i++) {
            if (!line.text(DayFiles.SPEC_COLUMNS.get(i)).strip().equals(cells.get(i))) {
                return false;
            }
        }
        return true;
    }

    /// The folder with one more recording, or the same one replaced.
    public static DayFolder withRecording(DayFolder folder, String name, DayFolder.ByteSource bytes) {
        var recordings = new TreeMap<>(folder.recordings());
        recordings.put(name, bytes);
        return new DayFolder(folder.name(), folder.texts(), recordings);
    }

    /// The folder with the pre-ride check written into day.yaml; nothing when day.yaml cannot be read.
    public static Optional<DayFolder> withPreRideCheck(DayFolder folder, PreRideCheck check) {
        byte[] bytes = folder.texts().get(DayFiles.DAY);
        if (bytes == null) {
            return Optional.empty();
        }
        return FileText.of(DayFiles.DAY, bytes, "test-day", new Faults())
                .flatMap(text -> YamlEdit.withCheck(text.text(), check))
                .map(text -> with(folder, DayFiles.DAY, encode(text, bytes)));
    }

    private static byte[] encode(String text, byte[] like) {
        Charset charset = FileText.charset(like);
        byte[] body = text.getBytes(charset);
        int mark = FileText.markLength(like);
        byte[] all = java.util.Arrays.copyOf(like, mark + body.length);
        System.arraycopy(body, 0, all, mark, body.length);
        return all;
    }

    private static Optional<TestDay> read(DayFolder folder) {
        return DayReader.read(folder) instanceof DayRead.Read read ? Optional.of(read.day()) : Optional.empty();
    }

    /// The cells that differ from what the line says already; all that are not empty when there is no such line.
    private static SortedMap<String, String> changes(
            List<String> columns, List<String> cells, Optional<List<String>> old) {
        var changes = new TreeMap<String, String>();
        for (int i = 0; i < columns.size(); i++) {
            String before = old.isPresent() ? old.get().get(i) : "";
            if (!cells.get(i).equals(before)) {
                changes.put(columns.get(i), cells.get(i));
            }
        }
        return changes;
    }

    private static SortedMap<String, String> keyed(SortedMap<String, String> changes, String column, String key) {
        var keyed = new TreeMap<>(changes);
        keyed.put(column, key);
        return keyed;
    }

    private interface Change {
        CsvEdit of(CsvEdit file);
    }

    private static DayFolder edit(DayFolder folder, String name, String kind, List<String> columns, Change change) {
        var file = CsvEdit.of(Optional.ofNullable(folder.texts().get(name)), kind, columns);
        return with(folder, name, change.of(file).bytes());
    }

    private static DayFolder with(DayFolder folder, String name, byte[] bytes) {
        var texts = new TreeMap<>(folder.texts());
        texts.put(name, bytes);
        return new DayFolder(folder.name(), texts, folder.recordings());
    }
}
