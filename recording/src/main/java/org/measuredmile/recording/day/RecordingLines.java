package org.measuredmile.recording.day;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Place;

/// Reads recordings.csv.
final class RecordingLines {
    private final DayYaml.Head head;
    private final RunLines.Runs runs;
    private final Set<String> files;
    private final Set<String> seen = new HashSet<>();

    private RecordingLines(DayYaml.Head head, RunLines.Runs runs, Set<String> files) {
        this.head = head;
        this.runs = runs;
        this.files = files;
    }

    /// The entries of a text.
    ///
    /// @param files the names of the files in recordings/
    static List<RecordingEntry> read(FileText text, Named named, Set<String> files, Faults faults) {
        Optional<CsvTable> table = CsvTable.read(text, DayFiles.RECORDING_COLUMNS, List.of("file"), faults);
        if (table.isEmpty()) {
            return List.of();
        }
        var lines = new RecordingLines(named.head(), named.runs(), files);
        List<RecordingEntry> entries = new ArrayList<>();
        for (CsvTable.Row row : table.get().rows()) {
            lines.entry(new Cells(table.get(), row, faults)).ifPresent(entries::add);
        }
        for (String file : files) {
            if (lines.seen.stream().noneMatch(entry -> entry.equals(file) || entry.startsWith(file + "/"))) {
                faults.add(DayFault.RECORDING_NOT_LISTED, Place.in("recordings/" + file));
            }
        }
        return entries;
    }

    /// What entries may name.
    record Named(DayYaml.Head head, RunLines.Runs runs) {}

    private Optional<RecordingEntry> entry(Cells cells) {
        Optional<String> file = cells.needed("file", "the name of the file in recordings/");
        String offset = cells.text("clock-offset-s");
        var offsetS =
                FieldText.quantity(offset, QuantityKind.TIME, Optional.of(Unit.SECOND), cells.at("clock-offset-s"));
        ReadingLines.checkInstrument(cells, head);
        var named = new Holding();
        for (String text : cells.text("runs").split("[\\s,;]+")) {
            if (!text.isEmpty()) {
                name(text, cells, named);
            }
        }
        if (file.isEmpty() || (!offset.isEmpty() && offsetS.isEmpty())) {
            return Optional.empty();
        }
        if (!seen.add(file.get())) {
            cells.add(DayFault.RECORDING_TWICE, "file", Faults.quoted(file.get()));
            return Optional.empty();
        }
        if (!isThere(file.get())) {
            cells.add(DayFault.RECORDING_MISSING, "file", Faults.quoted(file.get()));
        }
        return Optional.of(new RecordingEntry(
                file.get(),
                cells.text("instrument"),
                named.runs,
                named.windows,
                offsetS.orElse(0),
                cells.text("note")));
    }

    /// Whether a file is there, or the packed file that it is said to lie in: `drop.zip/ride.gpx`.
    private boolean isThere(String file) {
        return files.contains(file) || files.stream().anyMatch(one -> file.startsWith(one + "/"));
    }

    private static final class Holding {
        private final List<String> runs = new ArrayList<>();
        private final SortedMap<String, Window> windows = new TreeMap<>();
    }

    /// A run's id, alone or with the ends a person set: `b-03@12.4-31.75`.
    private void name(String text, Cells cells, Holding named) {
        int at = isKnown(text) ? -1 : text.lastIndexOf('@');
        String run = at < 0 ? text : text.substring(0, at);
        if (!isThere(run, cells)) {
            return;
        }
        if (named.runs.contains(run)) {
            cells.add(DayFault.RUN_NAMED_TWICE, "runs", Faults.quoted(run));
            return;
        }
        named.runs.add(run);
        if (at >= 0) {
            switch (Window.read(text.substring(at + 1))) {
                case Window.Read.Good(Window window) -> named.windows.put(run, window);
                case Window.Read.NoWindow() -> cells.add(DayFault.NOT_A_WINDOW, "runs", Faults.quoted(text));
                case Window.Read.Wrong(String why) ->
                    cells.add(DayFault.WINDOW_IMPOSSIBLE, "runs", Faults.quoted(text), why);
            }
        }
    }

    private boolean isKnown(String run) {
        return runs.runs().stream().anyMatch(one -> one.id().equals(run));
    }

    private boolean isThere(String run, Cells cells) {
        if (isKnown(run)) {
            return true;
        }
        if (!runs.written().contains(run)) {
            cells.add(DayFault.RUN_UNKNOWN, "runs", Faults.quoted(run), "its name is left out of the entry");
        }
        return false;
    }
}
