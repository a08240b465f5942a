package org.measuredmile.recording.day;

import java.util.List;
import java.util.stream.Collectors;

/// Writes lines of cells, quoted only where they must be.
final class CsvText {
    private final StringBuilder text;

    private CsvText(String firstLine) {
        text = new StringBuilder(firstLine);
    }

    /// A file that begins with its kind and its columns.
    static CsvText of(String kind, List<String> columns) {
        return new CsvText(FileText.firstLine(kind)).line(columns);
    }

    CsvText line(List<String> cells) {
        text.append(join(cells, ',')).append('\n');
        return this;
    }

    String text() {
        return text.toString();
    }

    static String join(List<String> cells, char separator) {
        return cells.stream().map(cell -> cell(cell, separator)).collect(Collectors.joining("" + separator));
    }

    private static String cell(String text, char separator) {
        boolean needsQuotes = text.indexOf(separator) >= 0
                || text.indexOf('"') >= 0
                || text.indexOf('\n') >= 0
                || text.indexOf('\r') >= 0
                || text.startsWith("#")
                || !text.equals(text.strip());
        return needsQuotes ? '"' + text.replace("\"", "\"\"") + '"' : text;
    }
}
