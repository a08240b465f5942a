package org.measuredmile.recording.day;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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
            if (!lines.seen.contains(file)) {
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
        List<String> named = new ArrayList<>();
        for (String run : cells.text("runs").split("[\\s,;]+")) {
            if (!run.isEmpty() && isThere(run, cells)) {
                named.add(run);
            }
        }
        if (file.isEmpty() || (!offset.isEmpty() && offsetS.isEmpty())) {
            return Optional.empty();
        }
        if (!seen.add(file.get())) {
            cells.add(DayFault.RECORDING_TWICE, "file", Faults.quoted(file.get()));
            return Optional.empty();
        }
        if (!files.contains(file.get())) {
            cells.add(DayFault.RECORDING_MISSING, "file", Faults.quoted(file.get()));
        }
        return Optional.of(
                new RecordingEntry(file.get(), cells.text("instrument"), named, offsetS.orElse(0), cells.text("note")));
    }

    private boolean isThere(String run, Cells cells) {
        if (runs.runs().stream().anyMatch(one -> one.id().equals(run))) {
            return true;
        }
        if (!runs.written().contains(run)) {
            cells.add(DayFault.RUN_UNKNOWN, "runs", Faults.quoted(run), "its name is left out of the entry");
        }
        return false;
    }
}
