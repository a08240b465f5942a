package org.measuredmile.desk;

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
        String chapter = row.figure().chapter().title();
        String figure = row.figure().id();
        String variant = row.variant().text();
        String unit = row.figure().kind().si().symbol();
        for (int i = 0; i < row.cells().size(); i++) {
            String bike = bike(sides, i);
            switch (row.cells().get(i)) {
                case Cell.Measured(var result) -> {
                    var one = result.figure();
                    csv.line(
                            "value",
                            chapter,
                            figure,
                            variant,
                            unit,
                            bike,
                            "",
                            CsvText.number(one.value()),
                            CsvText.number(one.anyDay().interval95().low()),
                            CsvText.number(one.anyDay().interval95().high()),
                            "",
                            "",
                            "");
                }
                case Cell.NotRidden(String reason) ->
                    csv.line(
                            "value",
                            chapter,
                            figure,
                            variant,
                            unit,
                            bike,
                            "",
                            "",
                            "",
                            "",
                            "",
                            "",
                            "not ridden: " + reason);
                case Cell.NotMeasured() ->
                    csv.line("value", chapter, figure, variant, unit, bike, "", "", "", "", "", "", "not measured");
            }
        }
        for (var one : row.differences()) {
            csv.line(
                    "difference",
                    chapter,
                    figure,
                    variant,
                    unit,
                    bike(sides, one.one()),
                    bike(sides, one.other()),
                    CsvText.number(one.value()),
                    CsvText.number(one.interval95().low()),
                    CsvText.number(one.interval95().high()),
                    CsvText.number(one.adjusted()),
                    one.real() ? "yes" : "no",
                    "");
        }
        csv.line("saying", chapter, figure, variant, "", "", "", "", "", "", "", "", row.saying());
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
