package org.measuredmile.recording.day;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.function.Predicate;

/// Changes single lines of a file of columns and leaves every other byte as it is.
///
/// Shape: works on a view of the bytes in which each byte is one sign (UTF-16 apart), so that even bytes that are no
/// text survive. Line ends, separator, first line and columns stay those of the file.
final class CsvEdit {
    private final Charset charset;
    private final char separator;
    private final String lineEnd;
    private String view;
    private List<CsvTable.Row> rows;
    private List<Integer> starts;

    private CsvEdit(byte[] bytes) {
        Charset marked = FileText.charset(bytes);
        charset = marked.equals(StandardCharsets.UTF_8) ? StandardCharsets.ISO_8859_1 : marked;
        view = new String(bytes, charset);
        String body = view.lines()
                .filter(line -> !line.isBlank() && !unmarked(line).startsWith("#"))
                .findFirst()
                .orElse("");
        separator = CsvTable.separator(body);
        lineEnd = view.contains("\r\n") ? "\r\n" : view.contains("\n") || !view.contains("\r") ? "\n" : "\r";
        rows = List.of();
        starts = List.of();
        look();
    }

    /// The file, or an empty one of ours when there is none.
    static CsvEdit of(Optional<byte[]> bytes, String kind, List<String> columns) {
        boolean isEmpty = bytes.isEmpty() || new String(bytes.get(), StandardCharsets.ISO_8859_1).isBlank();
        return new CsvEdit(
                isEmpty ? CsvText.of(kind, columns).text().getBytes(StandardCharsets.UTF_8) : bytes.orElseThrow());
    }

    byte[] bytes() {
        return view.getBytes(charset);
    }

    private String mark() {
        return view.startsWith("\u00EF\u00BB\u00BF") ? view.substring(0, 3) : view.startsWith("\uFEFF") ? "\uFEFF" : "";
    }

    private static String unmarked(String line) {
        return line.startsWith("\u00EF\u00BB\u00BF") ? line.substring(3) : line.replace("\uFEFF", "");
    }

    private void look() {
        starts = CsvTable.lineStarts(view);
        boolean hasFirstLine = unmarked(view).startsWith("#");
        int bodyFrom = hasFirstLine && starts.size() > 1 ? starts.get(1) : 0;
        var text = new FileText("", mark().isEmpty() || hasFirstLine ? view : unmarked(view), bodyFrom);
        rows = CsvTable.rows(text, separator, new Faults());
    }

    private List<String> header() {
        return rows.isEmpty()
                ? List.of()
                : rows.getFirst().cells().stream()
                        .map(this::text)
                        .map(CsvTable::columnName)
                        .toList();
    }

    /// A cell of the view as the text it stands for.
    private String text(String cell) {
        return charset.equals(StandardCharsets.ISO_8859_1)
                ? new String(cell.getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8)
                : cell;
    }

    private String viewed(String text) {
        return charset.equals(StandardCharsets.ISO_8859_1)
                ? new String(text.getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1)
                : text;
    }

    /// One line by its columns, in the file's own terms.
    record Line(List<String> header, List<String> cells) {
        String text(String column) {
            int index = header.indexOf(column);
            return index < 0 || index >= cells.size() ? "" : cells.get(index);
        }
    }

    /// Writes cells into the first line that matches, or into a new line at the end.
    ///
    /// @param changes by column; columns that the file does not have are added when their cell is not empty
    CsvEdit put(Predicate<Line> which, SortedMap<String, String> changes) {
        addColumns(changes);
        List<String> header = header();
        for (CsvTable.Row row : rows.subList(Math.min(1, rows.size()), rows.size())) {
            var line = new Line(header, row.cells().stream().map(this::text).toList());
            if (which.test(line)) {
                replace(row, changed(header, row.cells(), changes));
                return this;
            }
        }
        append(changed(header, List.of(), changes));
        return this;
    }

    boolean has(Predicate<Line> which) {
        List<String> header = header();
        return rows.stream()
                .skip(1)
                .anyMatch(row -> which.test(
                        new Line(header, row.cells().stream().map(this::text).toList())));
    }

    private void addColumns(SortedMap<String, String> changes) {
        List<String> header = header();
        List<String> missing = changes.keySet().stream()
                .filter(column -> !header.contains(column)
                        && !changes.getOrDefault(column, "").isEmpty())
                .toList();
        if (!missing.isEmpty()) {
            List<String> cells =
                    new ArrayList<>(rows.isEmpty() ? List.of() : rows.getFirst().cells());
            cells.addAll(missing);
            if (rows.isEmpty()) {
                append(cells);
            } else {
                replace(rows.getFirst(), cells);
            }
        }
    }

    private List<String> changed(List<String> header, List<String> old, SortedMap<String, String> changes) {
        List<String> cells = new ArrayList<>(old);
        for (int i = 0; i < header.size(); i++) {
            String text = changes.get(header.get(i));
            // A column that stands twice keeps its second cells: only the first is read.
            if (text != null && header.indexOf(header.get(i)) == i) {
                while (cells.size() <= i) {
                    cells.add("");
                }
                cells.set(i, viewed(text));
            }
        }
        while (cells.size() < header.size() && old.isEmpty()) {
            cells.add("");
        }
        return cells;
    }

    private void replace(CsvTable.Row row, List<String> cells) {
        int from = starts.get((int) row.line() - 1) + (row.line() == 1 ? mark().length() : 0);
        int nextLine = (int) (row.line() - 1 + row.lines());
        int to = nextLine < starts.size() ? starts.get(nextLine) : view.length();
        String old = view.substring(from, to);
        String end = old.endsWith("\r\n") ? "\r\n" : old.endsWith("\n") ? "\n" : old.endsWith("\r") ? "\r" : "";
        view = view.substring(0, from) + CsvText.join(cells, separator) + end + view.substring(to);
        look();
    }

    private void append(List<String> cells) {
        boolean isOpen = !view.isEmpty() && !view.endsWith("\n") && !view.endsWith("\r");
        view = view + (isOpen ? lineEnd : "") + CsvText.join(cells, separator) + lineEnd;
        look();
    }
}
