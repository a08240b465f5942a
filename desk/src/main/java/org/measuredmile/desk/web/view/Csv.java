package org.measuredmile.desk.web.view;

/// Delimited text that a spreadsheet neither splits nor takes for a formula.
final class Csv {
    private Csv() {}

    static String cell(String text) {
        String safe = text.matches("[=+@-].*") ? "'" + text : text;
        return safe.matches("(?s).*[\",\\n\\r].*") ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
    }
}
