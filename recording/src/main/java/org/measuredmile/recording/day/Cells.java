package org.measuredmile.recording.day;

import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Place;

/// The cells of one line, taken by their column.
record Cells(CsvTable table, CsvTable.Row row, Faults faults) {
    String text(String column) {
        return table.cell(row, column).text();
    }

    /// Where the line stands.
    Place place() {
        return Place.atLine(table.file(), row.line());
    }

    Place place(String column) {
        return table.cell(row, column).place();
    }

    FieldText.At at(String column) {
        return new FieldText.At(place(column), faults);
    }

    void add(DayFault fault, String column, Object... what) {
        faults.add(fault, place(column), what);
    }

    /// A text that must be there; nothing, and a fault, when it is not.
    Optional<String> needed(String column, String what) {
        String text = text(column);
        if (text.isEmpty()) {
            add(DayFault.CELL_MISSING, column, what);
            return Optional.empty();
        }
        return Optional.of(text);
    }

    /// A text that must be there and be one word.
    Optional<String> id(String column, String what) {
        Optional<String> id = needed(column, what);
        if (id.isPresent() && id.get().matches("(?s).*[\\s,;].*")) {
            add(DayFault.ID_WITH_BLANKS, column, Faults.quoted(id.get()));
            return Optional.empty();
        }
        return id;
    }

    /// A text that should be one of some words; empty, and a fault, when it is another.
    String word(String column, List<String> allowed) {
        String text = text(column);
        if (text.isEmpty() || allowed.contains(text)) {
            return text;
        }
        add(DayFault.NOT_ONE_OF, column, Faults.quoted(text), String.join(", ", allowed));
        return "";
    }
}
