package org.measuredmile.desk.coverage;

import java.util.List;
import org.measuredmile.quantity.Rounding;

/// The results of coverage studies as a table.
///
/// Shape: Markdown, one row a figure and seed, lines ended by a line feed.
public final class CoverageTable {
    private static final String HEAD =
            "| simulated | figure | days | seed | figures | this day held | any day held | bias "
                    + "| this day ± (best) | any day ± (best) |\n"
                    + "| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |\n";

    private CoverageTable() {}

    public static String markdown(List<Coverage> rows) {
        var table = new StringBuilder(HEAD);
        for (var row : rows) {
            table.append("| ").append(row.study());
            table.append(" | ").append((row.figure() + " " + row.variant().text()).strip());
            table.append(" | ").append(row.days());
            table.append(" | ").append(row.seed());
            table.append(" | ").append(row.figures());
            table.append(" | ").append(percent(row.shareThisDay(), 1));
            table.append(" | ").append(percent(row.shareAnyDay(), 1));
            table.append(" | ").append(percent(row.bias(), 2));
            table.append(" | ").append(widths(row.thisDay(), row));
            table.append(" | ").append(widths(row.anyDay(), row)).append(" |\n");
        }
        return table.toString();
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

    private static String widths(Coverage.HalfWidths widths, Coverage row) {
        return Double.isNaN(widths.median())
                ? "none"
                : Rounding.toSignificant(widths.median(), 3).toPlainString() + " ("
                        + Rounding.toSignificant(widths.best(), 3).toPlainString() + ") "
                        + row.kind().si().symbol();
    }
}
