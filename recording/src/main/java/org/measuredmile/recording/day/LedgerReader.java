package org.measuredmile.recording.day;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.LedgerMapping.Field;

/// Reads results of earlier years from a spreadsheet's text, one result a line.
///
/// Shape: columns are found by name; a value may carry its unit or have it in the unit column, each line in its own
/// spelling; a line without a value is counted and left out. All faults come at once, each with file, line and column.
public final class LedgerReader {
    private static final List<String> OWN_COLUMNS =
            Stream.of(Field.values()).map(Field::id).toList();
    private static final int MOST_RUNS = 9999;
    private static final int MOST_LINES_NAMED = 12;

    private final LedgerMapping mapping;
    private final Function<String, Optional<QuantityKind>> kinds;
    private final Faults faults;
    private final List<Long> blankLines = new ArrayList<>();

    private LedgerReader(LedgerMapping mapping, Function<String, Optional<QuantityKind>> kinds, Faults faults) {
        this.mapping = mapping;
        this.kinds = kinds;
        this.faults = faults;
    }

    /// The results of a file.
    ///
    /// @param file its name, as places in findings give it
    /// @param kinds the quantity of a figure by the figure's id; nothing for an id that is no figure
    public static LedgerRead read(String file, byte[] bytes, Function<String, Optional<QuantityKind>> kinds) {
        var faults = new Faults();
        Optional<CsvTable> table = FileText.of(file, bytes, "ledger", faults)
                .flatMap(text -> CsvTable.read(text, List.of(), List.of(), faults));
        LedgerMapping mapping = LedgerMapping.of(table.map(CsvTable::header).orElse(List.of()));
        if (table.isEmpty() || lacksColumns(file, mapping, faults)) {
            return new LedgerRead(mapping, List.of(), 0, faults.all());
        }
        return new LedgerReader(mapping, kinds, faults).results(table.get());
    }

    private static boolean lacksColumns(String file, LedgerMapping mapping, Faults faults) {
        boolean lacks = false;
        for (Field field : List.of(Field.BIKE, Field.FIGURE, Field.VALUE)) {
            if (mapping.columnOf(field).isEmpty()) {
                faults.add(DayFault.COLUMN_MISSING, Place.in(file), field.id(), String.join(",", OWN_COLUMNS));
                lacks = true;
            }
        }
        return lacks;
    }

    private LedgerRead results(CsvTable table) {
        List<LedgerResult> results = new ArrayList<>();
        for (CsvTable.Row row : table.rows()) {
            result(new Line(mapping, new Cells(table, row, faults))).ifPresent(results::add);
        }
        String unread = mapping.columns().stream()
                .filter(column -> column.field().isEmpty())
                .map(LedgerMapping.Column::written)
                .collect(Collectors.joining(", "));
        if (!unread.isEmpty()) {
            faults.add(DayFault.COLUMN_UNKNOWN, Place.in(table.file()), Faults.quoted(unread));
        }
        if (!blankLines.isEmpty()) {
            String lines = blankLines.stream()
                    .limit(MOST_LINES_NAMED)
                    .map(line -> "line " + line)
                    .collect(Collectors.joining(", ", "", blankLines.size() > MOST_LINES_NAMED ? " …" : ""));
            faults.add(DayFault.LEDGER_BLANK, Place.in(table.file()), blankLines.size(), lines);
        }
        return new LedgerRead(mapping, results, blankLines.size(), faults.all());
    }

    /// A line by its fields rather than its columns.
    private record Line(LedgerMapping mapping, Cells cells) {
        String text(Field field) {
            return mapping.columnOf(field).map(cells::text).orElse("");
        }

        FieldText.At at(Field field) {
            return cells.at(mapping.columnOf(field).orElse(field.id()));
        }
    }

    private Optional<LedgerResult> result(Line line) {
        if (line.text(Field.VALUE).isEmpty()) {
            blankLines.add(line.cells().row().line());
            return Optional.empty();
        }
        String bike = line.text(Field.BIKE);
        if (bike.isEmpty()) {
            line.at(Field.BIKE).add(DayFault.BIKE_WITHOUT_NAME);
        }
        Optional<String> figure = figure(line);
        Optional<Variant> variant = FieldText.variant(line.text(Field.VARIANT), line.at(Field.VARIANT));
        Optional<LocalDate> date = date(line);
        OptionalInt runs = runs(line);
        Optional<Double> si = figure.flatMap(id -> si(line, kinds.apply(id).orElse(QuantityKind.RATIO)));
        if (bike.isEmpty() || variant.isEmpty() || si.isEmpty()) {
            return Optional.empty();
        }
        String unit = line.text(Field.UNIT);
        return Optional.of(new LedgerResult(
                bike,
                line.text(Field.CATEGORY),
                figure.orElseThrow(),
                variant.get(),
                si.get(),
                (line.text(Field.VALUE) + " " + unit).strip(),
                date,
                runs,
                line.text(Field.SOURCE),
                line.text(Field.NOTE),
                line.cells().place()));
    }

    /// The figure's id, as written or after the trial's.
    private Optional<String> figure(Line line) {
        String written = line.text(Field.FIGURE);
        String whole = line.text(Field.TRIAL) + "." + written;
        for (String id : List.of(written, whole)) {
            if (!written.isEmpty() && kinds.apply(id).isPresent()) {
                return Optional.of(id);
            }
        }
        line.at(Field.FIGURE).add(DayFault.FIGURE_UNKNOWN, Faults.quoted(written));
        return Optional.empty();
    }

    /// The value in its own unit, or in that of the unit column.
    private Optional<Double> si(Line line, QuantityKind kind) {
        String value = line.text(Field.VALUE);
        String unit = line.text(Field.UNIT);
        Parsed own = QuantityText.parse(value, kind);
        Parsed parsed =
                own instanceof Parsed.Fault && !unit.isEmpty() ? QuantityText.parse(value + " " + unit, kind) : own;
        return switch (parsed) {
            case Parsed.Value read -> Optional.of(read.si());
            case Parsed.Fault(var message, var remedy) -> {
                line.at(Field.VALUE).add(DayFault.NOT_A_QUANTITY, message, remedy);
                yield Optional.empty();
            }
        };
    }

    /// A date; of a year or month alone its middle, which is said.
    private Optional<LocalDate> date(Line line) {
        String text = line.text(Field.DATE);
        String middle = text.matches("\\d{4}") ? text + "-07-01" : text.matches("\\d{4}-\\d{2}") ? text + "-15" : text;
        Optional<LocalDate> date = FieldText.date(middle, line.at(Field.DATE));
        if (date.isPresent() && !middle.equals(text)) {
            line.at(Field.DATE).add(DayFault.LEDGER_DATE_INCOMPLETE, Faults.quoted(text), middle);
        }
        return date;
    }

    private OptionalInt runs(Line line) {
        String text = line.text(Field.RUNS);
        if (text.isEmpty()) {
            return OptionalInt.empty();
        }
        if (text.matches("\\d{1,4}") && Integer.parseInt(text) >= 1) {
            return OptionalInt.of(Integer.parseInt(text));
        }
        line.at(Field.RUNS).add(DayFault.NOT_A_WHOLE_NUMBER, Faults.quoted(text), 1, MOST_RUNS);
        return OptionalInt.empty();
    }
}
