package org.measuredmile.recording.day;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/// Which column of a ledger is taken for what: shown to a person before anything is imported.
///
/// Shape: one entry a column, in the file's order; a column that is taken for nothing is kept in the file and not
/// read. Each field is taken from at most one column, the first that is named like it.
public record LedgerMapping(List<Column> columns) {
    public LedgerMapping {
        columns = List.copyOf(columns);
    }

    /// A column's name as written, what it is taken for, and why.
    public record Column(String written, Optional<Field> field, String because) {}

    /// What a ledger's line says. The ids are those of the ledger's own columns.
    public enum Field {
        BIKE("bike", "model", "name", "machine"),
        CATEGORY("category", "class", "type", "kind"),
        TRIAL("trial", "test", "road test"),
        FIGURE("figure", "quantity", "measure", "what"),
        VARIANT("variant", "conditions", "condition", "how"),
        VALUE("value", "result", "measured", "reading", "figure value"),
        UNIT("unit", "units"),
        DATE("date", "tested", "test date", "tested on", "day", "year"),
        RUNS("runs", "n", "count", "number of runs", "repeats"),
        SOURCE("source", "origin", "from", "taken from"),
        NOTE("note", "notes", "remark", "remarks", "comment", "comments");

        private final List<String> names;

        Field(String... names) {
            this.names = List.of(names);
        }

        public String id() {
            return names.getFirst();
        }

        /// The names that a column of this field may have.
        public List<String> names() {
            return names;
        }
    }

    /// The mapping that a header suggests.
    static LedgerMapping of(List<String> header) {
        List<Column> columns = new ArrayList<>();
        Set<Field> taken = EnumSet.noneOf(Field.class);
        for (String written : header) {
            String name = CsvTable.columnName(written).replaceAll("[\\s_-]+", " ");
            Optional<Field> field = field(name);
            if (field.isEmpty()) {
                columns.add(new Column(written, Optional.empty(), "no field is called so"));
            } else if (taken.add(field.get())) {
                boolean own = name.equals(field.get().id());
                columns.add(new Column(written, field, own ? "the field's own name" : "another name of the field"));
            } else {
                columns.add(new Column(written, Optional.empty(), field.get().id() + " is taken from another column"));
            }
        }
        return new LedgerMapping(columns);
    }

    private static Optional<Field> field(String name) {
        for (Field field : Field.values()) {
            if (field.names().contains(name.toLowerCase(Locale.ROOT))) {
                return Optional.of(field);
            }
        }
        return Optional.empty();
    }

    /// The name of the column that a field is taken from, as tables compare names.
    Optional<String> columnOf(Field field) {
        return columns.stream()
                .filter(column -> column.field().equals(Optional.of(field)))
                .map(column -> CsvTable.columnName(column.written()))
                .findFirst();
    }

    /// One line a column: `Tested → date (another name of the field)`.
    public List<String> lines() {
        return columns.stream()
                .map(column -> column.written() + " → "
                        + column.field().map(Field::id).orElse("not read") + " (" + column.because() + ")")
                .toList();
    }
}
