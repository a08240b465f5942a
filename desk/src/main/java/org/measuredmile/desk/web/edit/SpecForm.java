package org.measuredmile.desk.web.edit;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.SpecLine;

/// One line of a bike's specification as typed: fields named like the columns of spec.csv, `who` and `why`; a changed
/// line is known by `was.` and its columns.
public final class SpecForm {
    private SpecForm() {}

    /// What came of reading the form.
    public sealed interface Read {
        /// A line to keep, and the one that it changes; empty for a new one, or where that one is there no
        /// longer.
        record Kept(Optional<SpecLine> was, SpecLine now) implements Read {}

        record Refused(Typed typed) implements Read {}
    }

    /// Reads the form; all faults at once.
    public static Read read(Typed typed, Bike bike) {
        Map<String, String> faults = new TreeMap<>();
        String item = typed.getOr("other", typed.get("item"));
        if (!item.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
            faults.put("item", "Which item? One of the list, or a word of your own in lower case with hyphens.");
        }
        if (typed.get("claimed").isEmpty() && typed.get("seen").isEmpty()) {
            faults.put("claimed", "Write what is claimed, or what was seen on the bike.");
        }
        if (!typed.get("date").isEmpty() && !isDate(typed.get("date"))) {
            faults.put("date", "Year-month-day, as 2031-04-14.");
        }
        if (typed.get("why").isEmpty()) {
            faults.put("why", "Say why, as read on the maker's page of today.");
        }
        if (!CrewCode.isOne(typed.get("who"))) {
            faults.put("who", "Who writes this? A crew code such as T1.");
        }
        if (!faults.isEmpty()) {
            return new Read.Refused(typed.wrong(faults));
        }
        return new Read.Kept(was(typed, bike), line(typed, item));
    }

    private static boolean isDate(String text) {
        try {
            return LocalDate.parse(text).getYear() > 0;
        } catch (DateTimeException noDate) {
            return false;
        }
    }

    private static Optional<SpecLine> was(Typed typed, Bike bike) {
        return bike.spec().stream()
                .filter(line -> typed.values().containsKey("was.item"))
                .filter(line -> columns(line).entrySet().stream()
                        .allMatch(cell -> typed.get("was." + cell.getKey()).equals(cell.getValue())))
                .findFirst();
    }

    private static SpecLine line(Typed typed, String item) {
        return new SpecLine(
                item,
                typed.get("claimed"),
                typed.get("unit"),
                typed.get("conditions"),
                typed.get("source"),
                typed.get("date"),
                typed.get("seen"),
                typed.get("photo"),
                typed.get("note"),
                Place.NOWHERE);
    }

    /// The cells of a line, by column.
    public static Map<String, String> columns(SpecLine line) {
        var cells = new LinkedHashMap<String, String>();
        cells.put("item", line.item());
        cells.put("claimed", line.claimed());
        cells.put("unit", line.unit());
        cells.put("conditions", line.conditions());
        cells.put("source", line.source());
        cells.put("date", line.date());
        cells.put("seen", line.seen());
        cells.put("photo", line.photo());
        cells.put("note", line.note());
        return cells;
    }

    /// The form with a line in it, ready to be changed.
    public static Typed typed(SpecLine line) {
        var values = new LinkedHashMap<String, String>();
        columns(line).forEach((column, cell) -> {
            values.put(column, cell);
            values.put("was." + column, cell);
        });
        return Typed.of(values);
    }
}
