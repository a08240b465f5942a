package org.measuredmile.desk;

import java.util.stream.Stream;
import org.measuredmile.comparison.sidebyside.Cell;
import org.measuredmile.comparison.sidebyside.FactRow;
import org.measuredmile.comparison.sidebyside.FigureRow;
import org.measuredmile.comparison.sidebyside.SideBySide;

/// Bikes side by side as delimited text: a line a value, a line a difference, a line a fact.
///
/// Unit: SI, every digit.
public final class SideBySideCsv {
    private SideBySideCsv() {}

    public static String write(SideBySide sides) {
        var csv = new CsvText()
                .line(
                        "kind",
                        "chapter",
                        "figure",
                        "variant",
                        "unit",
                        "bike",
                        "other",
                        "value",
                        "interval-low",
                        "interval-high",
                        "adjusted-probability",
                        "real",
                        "words");
        sides.rows().forEach(row -> row(csv, sides, row));
        sides.facts().forEach(fact -> fact(csv, sides, fact));
        return csv.text();
    }

    private static String bike(SideBySide sides, int place) {
        return sides.bikes().get(place).bike().id();
    }

    private static void row(CsvText csv, SideBySide sides, FigureRow row) {
        for (int i = 0; i < row.cells().size(); i++) {
            String bike = bike(sides, i);
            switch (row.cells().get(i)) {
                case Cell.Measured(var result) -> {
                    var known = result.figure().anyDay().interval95();
                    String value = CsvText.number(result.figure().value());
                    String low = CsvText.number(known.low());
                    line(csv, row, "value", bike, "", value, low, CsvText.number(known.high()), "", "", "");
                }
                case Cell.NotRidden(String reason) -> missing(csv, row, bike, "not ridden: " + reason);
                case Cell.NotMeasured() -> missing(csv, row, bike, "not measured");
            }
        }
        for (var one : row.differences()) {
            String value = CsvText.number(one.value());
            String low = CsvText.number(one.interval95().low());
            String high = CsvText.number(one.interval95().high());
            String adjusted = CsvText.number(one.adjusted());
            String real = one.real() ? "yes" : "no";
            String first = bike(sides, one.one());
            line(csv, row, "difference", first, bike(sides, one.other()), value, low, high, adjusted, real, "");
        }
        line(csv, row, "saying", "", "", "", "", "", "", "", row.saying());
    }

    private static void missing(CsvText csv, FigureRow row, String bike, String words) {
        line(csv, row, "value", bike, "", "", "", "", "", "", words);
    }

    /// A line of a row: its kind, then what stands behind the unit.
    private static void line(CsvText csv, FigureRow row, String kind, String... rest) {
        var figure = row.figure();
        String unit = kind.equals("saying") ? "" : figure.kind().si().symbol();
        var head = Stream.of(
                kind, figure.chapter().title(), figure.id(), row.variant().text(), unit);
        csv.line(Stream.concat(head, Stream.of(rest)).toArray(String[]::new));
    }

    private static void fact(CsvText csv, SideBySide sides, FactRow fact) {
        for (int i = 0; i < fact.words().size(); i++) {
            csv.line(
                    "fact",
                    "",
                    fact.item(),
                    "",
                    "",
                    bike(sides, i),
                    "",
                    "",
                    "",
                    "",
                    "",
                    "",
                    fact.words().get(i));
        }
    }
}
