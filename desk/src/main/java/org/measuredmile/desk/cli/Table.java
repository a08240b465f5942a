package org.measuredmile.desk.cli;

import java.util.ArrayList;
import java.util.List;

/// A table in plain text: columns as wide as their widest cell, two spaces between them.
final class Table {
    private final List<String> heads;
    private final List<List<String>> rows = new ArrayList<>();

    Table(String... heads) {
        this.heads = List.of(heads);
    }

    void row(String... cells) {
        if (cells.length != heads.size()) {
            throw new IllegalArgumentException(cells.length + " cells for " + heads.size() + " columns");
        }
        rows.add(List.of(cells));
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    List<String> lines() {
        var widths = new int[heads.size()];
        var all = new ArrayList<List<String>>();
        all.add(heads);
        all.addAll(rows);
        for (var row : all) {
            for (int column = 0; column < widths.length; column++) {
                widths[column] = Math.max(widths[column], width(row.get(column)));
            }
        }
        return all.stream().map(row -> line(row, widths)).toList();
    }

    private static String line(List<String> row, int[] widths) {
        var line = new StringBuilder();
        for (int column = 0; column < widths.length; column++) {
            String cell = row.get(column);
            line.append(cell).append(" ".repeat(widths[column] - width(cell) + 2));
        }
        return line.toString().stripTrailing();
    }

    private static int width(String text) {
        return text.codePointCount(0, text.length());
    }
}
