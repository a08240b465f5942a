package org.measuredmile.desk.coverage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.measuredmile.quantity.Rounding;

/// The results of coverage studies as a table.
///
/// Shape: Markdown, lines ended by a line feed.
public final class CoverageTable {
    private static final String HEAD = "| figure | days | this day held, % | any day held, % | bias, % | bias / u "
            + "| this day ± (best) | any day ± (best) |\n"
            + "| --- | --- | --- | --- | --- | --- | --- | --- |\n";

    private CoverageTable() {}

    /// A table a study, a row a figure; what differs from seed to seed one after the other, of half-widths the
    /// middle.
    public static String markdown(List<Coverage> rows) {
        var studies = byFigure(rows);
        var table = new StringBuilder();
        studies.forEach((study, figures) -> {
            table.append("### ").append(words(study)).append("\n\n").append(HEAD);
            figures.forEach((figure, seeds) -> append(table, figure, seeds));
            table.append('\n');
        });
        return table.append(outside(studies)).toString();
    }

    /// Whether every figure meets the demand, all its seeds together.
    public static boolean meetsTheDemand(List<Coverage> rows) {
        return byFigure(rows).values().stream()
                .flatMap(figures -> figures.values().stream())
                .allMatch(seeds -> Demand.missed(seeds).isEmpty());
    }

    private static Map<String, Map<String, List<Coverage>>> byFigure(List<Coverage> rows) {
        var studies = new LinkedHashMap<String, Map<String, List<Coverage>>>();
        for (var row : rows) {
            studies.computeIfAbsent(row.study(), _ -> new LinkedHashMap<>())
                    .computeIfAbsent((row.figure() + " " + row.variant().text()).strip(), _ -> new ArrayList<>())
                    .add(row);
        }
        return studies;
    }

    private static String words(String study) {
        return study.substring(0, 1).toUpperCase(Locale.ROOT) + study.substring(1);
    }

    private static void append(StringBuilder table, String figure, List<Coverage> seeds) {
        table.append("| ").append(figure);
        table.append(" | ").append(each(seeds, row -> Integer.toString(row.figures())));
        table.append(" | ").append(each(seeds, row -> decimals(100 * row.shareThisDay(), 1)));
        table.append(" | ").append(each(seeds, row -> decimals(100 * row.shareAnyDay(), 1)));
        table.append(" | ").append(each(seeds, row -> decimals(100 * row.bias(), 2)));
        table.append(" | ").append(each(seeds, row -> decimals(row.biasInUncertainties(), 2)));
        table.append(" | ").append(widths(seeds, Coverage::thisDay));
        table.append(" | ").append(widths(seeds, Coverage::anyDay)).append(" |\n");
    }

    private static String each(List<Coverage> seeds, Function<Coverage, String> text) {
        return seeds.stream().map(text).collect(Collectors.joining(", "));
    }

    private static String outside(Map<String, Map<String, List<Coverage>>> studies) {
        var text = new StringBuilder();
        studies.forEach((study, figures) -> figures.forEach((figure, seeds) -> {
            var missed = Demand.missed(seeds);
            if (!missed.isEmpty()) {
                text.append("- ").append(study).append(", ").append(figure).append(": ");
                text.append(String.join(", ", missed)).append('\n');
            }
        }));
        String demand = "the demand (93 to 97 %, bias within a tenth of u, at most 1.3 times the best width)";
        return text.isEmpty()
                ? "All seeds together, every figure meets " + demand + ".\n"
                : "All seeds together, these miss " + demand + ":\n\n" + text;
    }

    /// How well rides were foretold, one row a kind of ride and seed.
    public static String ofForetold(List<LeaveOneOut.Row> rows) {
        var table = new StringBuilder("| foretold | days | seed | rides | mean error | rms error | held | ± |\n"
                + "| --- | --- | --- | --- | --- | --- | --- | --- |\n");
        for (var row : rows) {
            table.append("| ").append(row.what());
            table.append(" | ").append(row.days());
            table.append(" | ").append(row.seed());
            table.append(" | ").append(row.foretold());
            table.append(" | ").append(percent(row.meanError(), 2));
            table.append(" | ").append(percent(row.rmsError(), 1));
            table.append(" | ").append(percent(row.held(), 1));
            table.append(" | ").append(percent(row.halfWidth(), 1)).append(" |\n");
        }
        return table.toString();
    }

    private static String percent(double share, int decimals) {
        return Double.isNaN(share) ? "none" : Rounding.toDecimals(100 * share, decimals) + " %";
    }

    private static String decimals(double value, int decimals) {
        return Double.isNaN(value)
                ? "none"
                : Rounding.toDecimals(value, decimals).toPlainString();
    }

    private static String widths(List<Coverage> seeds, Function<Coverage, Coverage.HalfWidths> which) {
        var middle = seeds.stream()
                .map(which)
                .filter(widths -> !Double.isNaN(widths.median()))
                .sorted(Comparator.comparingDouble(Coverage.HalfWidths::median))
                .toList();
        if (middle.isEmpty()) {
            return "none";
        }
        var widths = middle.get(middle.size() / 2);
        String unit = seeds.getFirst().kind().si().symbol();
        return (Rounding.toSignificant(widths.median(), 3).toPlainString() + " ("
                        + Rounding.toSignificant(widths.best(), 3).toPlainString() + ") " + unit)
                .strip();
    }
}
