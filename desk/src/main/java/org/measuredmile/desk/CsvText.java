package org.measuredmile.desk;

import java.util.Arrays;
import java.util.stream.Collectors;

/// Lines of delimited text for spreadsheets: commas, a line feed at the end of a line.
public final class CsvText {
    private final StringBuilder out = new StringBuilder();

    public CsvText line(String... cells) {
        out.append(Arrays.stream(cells).map(CsvText::cell).collect(Collectors.joining(",")))
                .append('\n');
        return this;
    }

    /// A number with every digit; nothing for one that is not finite.
    public static String number(double value) {
        return Double.isFinite(value) ? Double.toString(value) : "";
    }

    /// A cell that a spreadsheet neither splits nor takes for a formula.
    public static String cell(String text) {
        boolean isNumber = text.matches("-?\\d[\\d.E-]*");
        String safe = !isNumber && text.matches("(?s)[=+@-].*") ? "'" + text : text;
        return safe.matches("(?s).*[\",\\n\\r].*") ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
    }

    public String text() {
        return out.toString();
    }
}
