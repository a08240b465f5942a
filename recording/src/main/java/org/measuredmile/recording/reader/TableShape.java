package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/// Where the table in a text begins and how its cells are parted.
///
/// Shape: `headLine` counts from 0 and is the last line that is not data; `lineType` is the word that data lines begin
/// with where a file holds lines of several types, else empty; names then leave that first column out.
record TableShape(
        char separator, char decimalMark, int headLine, List<String> names, String lineType, boolean isHeadless) {
    private static final char[] SEPARATORS = {';', '\t', '|', ','};
    private static final int LINES_THAT_MUST_AGREE = 3;

    /// The table in the first lines of a text; empty where there is none.
    static Optional<TableShape> find(List<String> lines) {
        Optional<TableShape> typed = typed(lines);
        if (typed.isPresent()) {
            return typed;
        }
        TableShape best = null;
        for (char separator : SEPARATORS) {
            int head = headLine(lines, separator);
            if (head < 0) {
                continue;
            }
            List<String> names = cells(uncommented(lines.get(head)), separator);
            if (best == null || names.size() > best.names.size()) {
                best = new TableShape(separator, decimalMark(lines, head, separator), head, trimmed(names), "", false);
            }
        }
        return Optional.ofNullable(best);
    }

    /// A table that begins with a row of data: its columns are called `column 1`, `column 2` and so on.
    ///
    /// Shape: `headLine` is the line before the first row, −1 where the file begins with it.
    static Optional<TableShape> withoutHead(List<String> lines) {
        TableShape best = null;
        for (char separator : SEPARATORS) {
            int first = firstDataLine(lines, separator);
            if (first < 0) {
                continue;
            }
            int columns = cells(lines.get(first), separator).size();
            if (best == null || columns > best.names.size()) {
                List<String> names = IntStream.rangeClosed(1, columns)
                        .mapToObj(number -> "column " + number)
                        .toList();
                char mark = decimalMark(lines, first - 1, separator);
                best = new TableShape(separator, mark, first - 1, names, "", true);
            }
        }
        return Optional.ofNullable(best);
    }

    private static int firstDataLine(List<String> lines, char separator) {
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).isBlank() || isComment(lines.get(i))) {
                continue;
            }
            int wanted = cells(lines.get(i), separator).size();
            long alike = lines.subList(i, lines.size()).stream()
                    .filter(line -> !line.isBlank() && !isComment(line))
                    .limit(LINES_THAT_MUST_AGREE)
                    .filter(line -> isDataLine(line, separator, wanted))
                    .count();
            return wanted >= 2 && alike >= 2 ? i : -1;
        }
        return -1;
    }

    private static boolean isDataLine(String line, char separator, int columns) {
        List<String> cells = cells(line, separator);
        return cells.size() == columns
                && cells.stream()
                        .anyMatch(cell ->
                                !Double.isNaN(NumberText.leading(cell, '.').value()));
    }

    static boolean isComment(String line) {
        String text = line.stripLeading();
        return text.startsWith("#") || text.startsWith("%") || text.startsWith("//");
    }

    private static String uncommented(String line) {
        String text = line.strip();
        int from = 0;
        while (isComment(line) && from < text.length() && "#%/ ".indexOf(text.charAt(from)) >= 0) {
            from++;
        }
        return text.isEmpty() || from == 0 ? line : text.substring(from);
    }

    /// Lines of several types, each described in a comment that begins with its word.
    private static Optional<TableShape> typed(List<String> lines) {
        TableShape clocked = null;
        for (int i = 0; i < lines.size(); i++) {
            if (!isComment(lines.get(i))) {
                continue;
            }
            List<String> names = cells(uncommented(lines.get(i)), ',');
            String type = names.getFirst().strip();
            if (names.size() < 4 || type.isEmpty() || !hasLineOf(lines, type)) {
                continue;
            }
            var found = new TableShape(',', '.', i, trimmed(names.subList(1, names.size())), type, false);
            if (found.hasKind(org.measuredmile.recording.ChannelKind.LATITUDE)) {
                return Optional.of(found);
            }
            boolean clock =
                    found.names.stream().anyMatch(name -> ColumnName.of(name).mayBeClock());
            clocked = clocked == null && clock ? found : clocked;
        }
        return Optional.ofNullable(clocked);
    }

    private boolean hasKind(org.measuredmile.recording.ChannelKind kind) {
        return names.stream().anyMatch(name -> ColumnName.of(name).kind() == kind);
    }

    private static boolean hasLineOf(List<String> lines, String type) {
        return lines.stream().anyMatch(line -> line.startsWith(type + ","));
    }

    private static int headLine(List<String> lines, char separator) {
        for (int i = 0; i + 1 < lines.size(); i++) {
            String line = lines.get(i);
            if (line.isBlank() || !looksLikeHead(uncommented(line), separator)) {
                continue;
            }
            if (dataFollows(lines, i, separator)) {
                return i;
            }
        }
        return -1;
    }

    private static boolean looksLikeHead(String line, char separator) {
        List<String> cells = cells(line, separator);
        long filled = cells.stream().filter(cell -> !cell.isBlank()).count();
        long words = cells.stream().filter(cell -> isName(cell.strip())).count();
        return filled >= 2 && words * 2 > filled;
    }

    private static boolean isName(String cell) {
        return cell.chars().anyMatch(Character::isLetter)
                && Double.isNaN(NumberText.leading(cell, '.').value());
    }

    private static boolean dataFollows(List<String> lines, int head, char separator) {
        int wanted = cells(uncommented(lines.get(head)), separator).size();
        int seen = 0;
        boolean numbers = false;
        for (int i = head + 1; i < lines.size() && seen < LINES_THAT_MUST_AGREE; i++) {
            if (lines.get(i).isBlank() || isComment(lines.get(i))) {
                continue;
            }
            List<String> cells = cells(lines.get(i), separator);
            if (Math.abs(cells.size() - wanted) > 1 || cells.size() < 2) {
                return false;
            }
            numbers |= cells.stream()
                    .anyMatch(
                            cell -> !Double.isNaN(NumberText.leading(cell, '.').value()));
            seen++;
        }
        return seen > 0 && numbers;
    }

    private static char decimalMark(List<String> lines, int head, char separator) {
        int commas = 0;
        int points = 0;
        for (int i = head + 1; i < lines.size(); i++) {
            for (String cell : cells(lines.get(i), separator)) {
                String text = cell.strip();
                commas += text.indexOf(',') > 0 && NumberText.isPlain(text, ',') ? 1 : 0;
                points += text.indexOf('.') > 0 && NumberText.isPlain(text, '.') ? 1 : 0;
            }
        }
        return commas > points ? ',' : '.';
    }

    private static List<String> trimmed(List<String> names) {
        return names.stream().map(String::strip).toList();
    }

    /// The cells of a line; quoted separators do not part.
    static List<String> cells(String line, char separator) {
        List<String> cells = new ArrayList<>();
        boolean quoted = false;
        int from = 0;
        for (int i = 0; i < line.length(); i++) {
            char sign = line.charAt(i);
            if (sign == '"' && (quoted || line.substring(from, i).isBlank())) {
                quoted = !quoted;
            } else if (sign == separator && !quoted) {
                cells.add(line.substring(from, i));
                from = i + 1;
            }
        }
        cells.add(line.substring(from));
        return cells.stream().map(TableShape::unquoted).toList();
    }

    private static String unquoted(String cell) {
        String text = cell.strip();
        return text.length() >= 2 && text.startsWith("\"") && text.endsWith("\"")
                ? text.substring(1, text.length() - 1)
                : cell;
    }
}
