package org.measuredmile.recording.day;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/// Reads readings.csv. What quantity a value is, the trial's declaration knows: it stays as it was written.
final class ReadingLines {
    private ReadingLines() {}

    static List<Reading> read(FileText text, DayYaml.Head head, RunLines.Runs runs, Faults faults) {
        Optional<CsvTable> table = CsvTable.read(text, DayFiles.READING_COLUMNS, List.of("reading", "value"), faults);
        if (table.isEmpty()) {
            return List.of();
        }
        List<Reading> readings = new ArrayList<>();
        for (CsvTable.Row row : table.get().rows()) {
            reading(new Cells(table.get(), row, faults), head, runs).ifPresent(readings::add);
        }
        return readings;
    }

    private static Optional<Reading> reading(Cells cells, DayYaml.Head head, RunLines.Runs runs) {
        Optional<String> name = cells.needed("reading", "what was read, as entry-speed");
        String run = cells.text("run");
        boolean runIsThere = run.isEmpty() || runs.has(run, cells, "run");
        var time =
                FieldText.time(cells.text("time"), new FieldText.Day(head.date(), head.timeZone()), cells.at("time"));
        checkInstrument(cells, head);
        if (name.isEmpty() || !runIsThere) {
            return Optional.empty();
        }
        if (cells.text("value").isEmpty()) {
            cells.add(DayFault.NO_VALUE, "value", Faults.quoted(name.get()));
            return Optional.empty();
        }
        return Optional.of(new Reading(
                run,
                name.get(),
                cells.text("value"),
                cells.text("unit"),
                cells.text("instrument"),
                time,
                cells.text("by"),
                cells.text("note"),
                cells.place()));
    }

    static void checkInstrument(Cells cells, DayYaml.Head head) {
        String instrument = cells.text("instrument");
        if (!instrument.isEmpty()
                && head.instruments().stream().noneMatch(one -> one.id().equals(instrument))) {
            cells.add(DayFault.INSTRUMENT_UNKNOWN, "instrument", Faults.quoted(instrument));
        }
    }
}
