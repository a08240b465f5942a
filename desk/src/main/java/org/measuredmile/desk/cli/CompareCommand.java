package org.measuredmile.desk.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.sidebyside.Cell;
import org.measuredmile.comparison.sidebyside.Difference;
import org.measuredmile.comparison.sidebyside.FigureRow;
import org.measuredmile.comparison.sidebyside.SideBySide;
import org.measuredmile.desk.ChosenBikes;
import org.measuredmile.desk.SideBySideCsv;
import org.measuredmile.trial.Chapter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/// `mile compare BIKE BIKE…`: two to six bikes side by side, with their differences and which of them are real.
@Command(
        name = "compare",
        description = "Put two to six bikes side by side: results, differences, and which of them are real.",
        mixinStandardHelpOptions = true)
final class CompareCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Parameters(arity = "1..*", paramLabel = "BIKE", description = "a bike's id, or its maker and model")
    private List<String> names = List.of();

    @Option(names = "--all", description = "with every figure, not only those that speak for their trial")
    private boolean all;

    @Option(names = "--csv", description = "print delimited text, in SI units with every digit")
    private boolean csv;

    @Override
    public Integer call() {
        try (var archive = chosen.open()) {
            var named = ChosenBikes.named(archive, names);
            if (!named.faults().isEmpty()) {
                throw new Trouble(String.join("\n", named.faults()));
            }
            var sides = named.sideBySide(archive);
            if (shown.asJson()) {
                shown.json(Json.array().add(CompareJson.write(sides)));
            } else if (csv) {
                shown.out().print(SideBySideCsv.write(sides));
            } else {
                print(sides);
            }
            return sides.rows().isEmpty() ? Mile.DATA_SAY_NO : Mile.DONE;
        }
    }

    private void print(SideBySide sides) {
        var names = SideBySide.names(sides.bikes());
        facts(sides, names);
        for (Chapter chapter : Chapter.values()) {
            var rows = sides.rows().stream()
                    .filter(row -> row.figure().chapter() == chapter && (all || !row.foldable()))
                    .toList();
            if (!rows.isEmpty()) {
                shown.line("");
                shown.line(chapter.title());
                chapter(rows, names);
            }
        }
        if (sides.rows().isEmpty()) {
            shown.line("No two of them have a result in the same figure and variant.");
            return;
        }
        long folded = sides.rows().stream().filter(FigureRow::foldable).count();
        shown.line("");
        shown.line(
                "± is the 95 % interval of any day; what bikes share drops out of a difference. A difference is real "
                        + "where it stands out at 5 %, adjusted for all pairs of its row (Holm).");
        if (!all && folded > 0) {
            shown.line(folded + (folded == 1 ? " further row" : " further rows") + " with --all");
        }
    }

    private void facts(SideBySide sides, List<String> names) {
        var heads = new ArrayList<>(List.of("as stated"));
        heads.addAll(names);
        var table = new Table(heads.toArray(String[]::new));
        for (var fact : sides.facts()) {
            var cells = new ArrayList<>(List.of(fact.title()));
            fact.words().forEach(words -> cells.add(words.isEmpty() ? "not stated" : words));
            table.row(cells.toArray(String[]::new));
        }
        table.lines().forEach(shown::line);
    }

    private void chapter(List<FigureRow> rows, List<String> names) {
        for (var row : rows) {
            String condition = row.condition();
            shown.line("  " + row.figure().title() + (condition.isEmpty() ? "" : ", " + condition));
            var table = new Table("", "", "", "");
            for (int i = 0; i < row.cells().size(); i++) {
                cell(table, names.get(i), row, row.cells().get(i));
            }
            table.lines().stream().skip(1).forEach(line -> shown.line("  " + line));
            row.differences().forEach(one -> shown.line("    " + difference(row, one, names)));
            shown.line("    " + row.saying());
        }
    }

    private void cell(Table table, String name, FigureRow row, Cell cell) {
        switch (cell) {
            case Cell.Measured(var result) -> {
                var figure = result.figure();
                double halfWidth = figure.anyDay().interval95().halfWidth();
                var both = shown.printer()
                        .figureInBoth(figure.value(), halfWidth, row.figure().kind());
                String first = both.first().text();
                String other = both.other().text();
                table.row(" ", name, first, first.equals(other) ? "" : other);
            }
            case Cell.NotRidden(String reason) -> table.row(" ", name, "not ridden", reason);
            case Cell.NotMeasured() -> table.row(" ", name, "not measured", "");
        }
    }

    private String difference(FigureRow row, Difference one, List<String> names) {
        var printed = shown.printer()
                .difference(
                        one.value(), one.interval95().halfWidth(), row.figure().kind());
        return names.get(one.one()) + " less " + names.get(one.other()) + ": " + printed.text()
                + (one.real() ? ", real" : ", can't be told apart");
    }
}
