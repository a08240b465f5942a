package org.measuredmile.recording.day;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/// Reads runs.csv.
final class RunLines {
    static final List<String> DIRECTIONS = List.of("out", "back");

    private final DayYaml.Head head;
    private final List<Course> courses;
    private final Faults faults;
    private final Map<String, Long> seen = new HashMap<>();

    private RunLines(DayYaml.Head head, List<Course> courses, Faults faults) {
        this.head = head;
        this.courses = courses;
        this.faults = faults;
    }

    /// The runs that could be used, and the ids of all that were written, used or not.
    record Runs(List<Run> runs, java.util.Set<String> written) {
        static final Runs NONE = new Runs(List.of(), java.util.Set.of());

        /// Whether a line may speak of a run; the faults say so when it may not.
        boolean has(String id, Cells cells, String column) {
            if (runs.stream().anyMatch(run -> run.id().equals(id))) {
                return true;
            }
            if (written.contains(id)) {
                cells.add(DayFault.RUN_LEFT_OUT, column, Faults.quoted(id));
            } else {
                cells.add(DayFault.RUN_UNKNOWN, column, Faults.quoted(id), "the line is left out");
            }
            return false;
        }
    }

    static Runs read(FileText text, DayYaml.Head head, List<Course> courses, Faults faults) {
        Optional<CsvTable> table = CsvTable.read(text, DayFiles.RUN_COLUMNS, List.of("run", "trial"), faults);
        if (table.isEmpty()) {
            return Runs.NONE;
        }
        return new RunLines(head, courses, faults).runs(table.get());
    }

    private Runs runs(CsvTable table) {
        List<Run> runs = new ArrayList<>();
        for (CsvTable.Row row : table.rows()) {
            run(new Cells(table, row, faults)).ifPresent(runs::add);
        }
        return new Runs(List.copyOf(runs), java.util.Set.copyOf(seen.keySet()));
    }

    private Optional<Run> run(Cells cells) {
        Optional<String> id = cells.id("run", "the run's id, as b-03");
        if (id.isPresent() && seen.containsKey(id.get())) {
            cells.add(DayFault.RUN_TWICE, "run", Faults.quoted(id.get()), seen.get(id.get()));
            return Optional.empty();
        }
        id.ifPresent(one -> seen.put(one, cells.row().line()));
        Optional<String> trial = cells.needed("trial", "the trial's id, as braking");
        Optional<Variant> variant = FieldText.variant(cells.text("variant"), cells.at("variant"));
        Run.State state = state(cells);
        String reason = reason(cells, state);
        var start =
                FieldText.time(cells.text("start"), new FieldText.Day(head.date(), head.timeZone()), cells.at("start"));
        String direction = cells.word("direction", DIRECTIONS);
        checkNames(cells);
        if (id.isEmpty() || trial.isEmpty() || variant.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Run(
                id.get(),
                trial.get(),
                variant.get(),
                cells.text("rider"),
                start,
                cells.text("course"),
                direction,
                state,
                reason,
                cells.text("note"),
                cells.place()));
    }

    private static Run.State state(Cells cells) {
        String text = cells.text("state");
        for (Run.State state : Run.State.values()) {
            if (state.name().toLowerCase(Locale.ROOT).equals(text)) {
                return state;
            }
        }
        if (text.isEmpty()) {
            cells.add(DayFault.STATE_MISSING, "state");
        } else {
            cells.add(DayFault.STATE_UNKNOWN, "state", Faults.quoted(text));
        }
        return Run.State.PROPOSED;
    }

    private static String reason(Cells cells, Run.State state) {
        String reason = cells.text("reason");
        if (state == Run.State.VOID) {
            if (reason.isEmpty()) {
                cells.add(DayFault.VOID_WITHOUT_REASON, "reason");
            }
            return reason;
        }
        if (!reason.isEmpty()) {
            cells.add(DayFault.REASON_NOT_USED, "reason", Faults.quoted(reason));
        }
        return "";
    }

    private void checkNames(Cells cells) {
        String rider = cells.text("rider");
        if (!rider.isEmpty()
                && head.riders().stream().noneMatch(one -> one.code().equals(rider))) {
            cells.add(DayFault.RIDER_UNKNOWN, "rider", Faults.quoted(rider));
        }
        String course = cells.text("course");
        if (!course.isEmpty() && courses.stream().noneMatch(one -> one.id().equals(course))) {
            cells.add(DayFault.COURSE_UNKNOWN, "course", Faults.quoted(course));
        }
    }
}
