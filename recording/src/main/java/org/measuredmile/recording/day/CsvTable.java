package org.measuredmile.recording.day;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.measuredmile.recording.Place;

/// A file of columns: its header and the lines under it that could be read, each with its line number.
///
/// Shape: the separator is the comma, semicolon or tab that the header holds most of. A line may end early: cells that
/// are not there are empty. Names of columns are compared without case and outer blanks.
record CsvTable(String file, List<String> header, Map<String, Integer> columns, List<Row> rows) {
    private static final Pattern DECIMAL_COMMA = Pattern.compile("\\s*[+-]?\\d+,\\d+(\\s*\\D.*)?");
    /// Bounds what one open quotation mark can cost.
    private static final int LONGEST_CELL = 1 << 16;
    private static final Pattern LINE_END = Pattern.compile("\\r\\n|\\n|\\r");

    /// A record: the line of the file it begins on, how many lines it takes, and its cells.
    record Row(long line, long lines, List<String> cells) {}

    /// One cell of one line, and where it stands.
    record Cell(String text, Place place) {
        boolean isEmpty() {
            return text.isEmpty();
        }
    }

    /// The table that a text holds; nothing when it has no header or not the columns that it cannot do without.
    static Optional<CsvTable> read(FileText text, List<String> known, List<String> needed, Faults faults) {
        char separator = separator(text.text().substring(text.bodyFrom()));
        if (separator != ',') {
            String words = separator == ';' ? "semicolons" : "tabs";
            faults.add(DayFault.CELLS_BY, Place.in(text.file()), words);
        }
        List<Row> rows = new ArrayList<>(rows(text, separator, faults));
        if (rows.isEmpty()) {
            faults.add(DayFault.FILE_EMPTY, Place.in(text.file()));
            return Optional.empty();
        }
        Row header = rows.removeFirst();
        var table = new CsvTable(text.file(), header.cells(), columns(text.file(), header, faults), rows);
        table.nameUnknown(header.line(), known, faults);
        for (String one : needed) {
            if (!table.columns.containsKey(one)) {
                faults.add(
                        DayFault.COLUMN_MISSING,
                        Place.atLine(text.file(), header.line()),
                        one,
                        String.join(",", known));
                return Optional.empty();
            }
        }
        return Optional.of(table.withoutCrowdedRows(faults).noting(faults));
    }

    /// The separator that the first line holds most of.
    static char separator(String body) {
        String line = body.lines().filter(one -> !one.isBlank()).findFirst().orElse("");
        char most = ',';
        for (char candidate : new char[] {';', '\t'}) {
            if (count(line, candidate) > count(line, most)) {
                most = candidate;
            }
        }
        return most;
    }

    private static long count(String line, char sign) {
        return line.chars().filter(one -> one == sign).count();
    }

    /// The rows of a text. After a line with a broken quotation mark reading goes on with the line that follows it.
    static List<Row> rows(FileText text, char separator, Faults faults) {
        List<Row> rows = new ArrayList<>();
        List<Integer> starts = lineStarts(text.text());
        int line = text.bodyFrom() == 0 ? 0 : 1;
        while (line < starts.size()) {
            int base = line;
            long next = 1;
            try (var reader = reader(separator).ofCsvRecord(text.text().substring(starts.get(base)))) {
                for (CsvRecord record : reader) {
                    long lines = 1 + lineEnds(record.getFields());
                    rows.add(new Row(base + record.getStartingLineNumber(), lines, stripped(record.getFields())));
                    next = record.getStartingLineNumber() + lines;
                }
                return withoutEmpty(rows);
            } catch (CsvParseException _) {
                int broken = base + (int) next;
                faults.add(DayFault.QUOTE_BROKEN, Place.atLine(text.file(), broken));
                line = broken;
            } catch (java.io.IOException impossible) {
                throw new java.io.UncheckedIOException(impossible);
            }
        }
        return withoutEmpty(rows);
    }

    private static CsvReader.CsvReaderBuilder reader(char separator) {
        return CsvReader.builder()
                .fieldSeparator(separator)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .allowUnclosedQuote(false)
                .maxBufferSize(LONGEST_CELL)
                .skipEmptyLines(false);
    }

    private static List<Row> withoutEmpty(List<Row> rows) {
        return rows.stream()
                .filter(row -> row.cells().stream().anyMatch(cell -> !cell.isEmpty()))
                .toList();
    }

    private static List<String> stripped(List<String> cells) {
        return cells.stream().map(String::strip).toList();
    }

    private static long lineEnds(List<String> cells) {
        return cells.stream()
                .mapToLong(cell -> LINE_END.matcher(cell).results().count())
                .sum();
    }

    static List<Integer> lineStarts(String text) {
        List<Integer> starts = new ArrayList<>(List.of(0));
        LINE_END.matcher(text).results().forEach(end -> starts.add(end.end()));
        return starts;
    }

    private static Map<String, Integer> columns(String file, Row header, Faults faults) {
        Map<String, Integer> columns = new LinkedHashMap<>();
        for (int i = 0; i < header.cells().size(); i++) {
            String name = columnName(header.cells().get(i));
            if (!name.isEmpty() && columns.putIfAbsent(name, i) != null) {
                faults.add(DayFault.COLUMN_TWICE, Place.atLine(file, header.line()), Faults.quoted(name));
            }
        }
        return columns;
    }

    static String columnName(String written) {
        return written.strip().toLowerCase(java.util.Locale.ROOT);
    }

    private void nameUnknown(long line, List<String> known, Faults faults) {
        if (known.isEmpty()) {
            return;
        }
        List<String> unknown =
                columns.keySet().stream().filter(name -> !known.contains(name)).toList();
        if (!unknown.isEmpty()) {
            faults.add(DayFault.COLUMN_UNKNOWN, Place.atLine(file, line), Faults.quoted(String.join(", ", unknown)));
        }
    }

    private CsvTable withoutCrowdedRows(Faults faults) {
        List<Row> kept = new ArrayList<>();
        for (Row row : rows) {
            List<String> beyond = row.cells().size() <= header.size()
                    ? List.of()
                    : row.cells().subList(header.size(), row.cells().size());
            if (beyond.stream().allMatch(String::isEmpty)) {
                kept.add(row);
            } else {
                faults.add(
                        DayFault.CELLS_TOO_MANY,
                        Place.atLine(file, row.line()),
                        row.cells().size(),
                        header.size());
            }
        }
        return new CsvTable(file, header, columns, kept);
    }

    private CsvTable noting(Faults faults) {
        for (Row row : rows) {
            for (String name : Arrays.asList("value", "clock-offset-s")) {
                Cell cell = cell(row, name);
                if (DECIMAL_COMMA.matcher(cell.text()).matches()) {
                    faults.add(DayFault.DECIMAL_COMMA, cell.place());
                    return this;
                }
            }
        }
        return this;
    }

    /// The cell of a line under a column; empty when the file has no such column or the line ends before it.
    Cell cell(Row row, String column) {
        Integer index = columns.get(column);
        String text =
                index == null || index >= row.cells().size() ? "" : row.cells().get(index);
        return new Cell(text, Place.atField(file, row.line(), column));
    }
}
