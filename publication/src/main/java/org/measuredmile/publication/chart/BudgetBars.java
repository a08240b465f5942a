package org.measuredmile.publication.chart;

import java.util.List;
import org.measuredmile.quantity.Printed;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.Rounding;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;

/// What the ± is made of: one bar a contribution, largest first, and the whole in the accent.
///
/// Unit: standard uncertainties in SI. Shape: filled bars were judged or calibrated (type B), open ones come from
/// scatter (type A).
public record BudgetBars(Scale scale, List<Contribution> contributions) {
    private static final double ROW = 36;
    private static final double TOP = 8;

    public BudgetBars {
        contributions = List.copyOf(contributions);
    }

    /// The drawing at a width of 320 and more.
    public String svg(double width) {
        var budget = new Budget(contributions);
        var rows = budget.byWeight().stream()
                .filter(one -> one.standardUncertainty() > 0)
                .toList();
        double whole = scale.unit().differenceFromSi(budget.standardUncertainty());
        double names = Math.min(210, width * 0.42);
        Axis axis = Axis.over(Ticks.covering(0, whole, width < 400 ? 5 : 6), names, width - 52);
        double bottom = TOP + ROW * (rows.size() + 1);
        var svg = new Svg("plot", width, bottom + 46, sentence(rows, budget));
        svg.path("guide", axis.guides(TOP, bottom));
        for (int i = 0; i < rows.size(); i++) {
            row(svg, axis, rows.get(i), TOP + ROW * i);
        }
        double y = TOP + ROW * rows.size();
        svg.path("axis", Svg.line(y, names, axis.at(whole)));
        svg.text("strong right", names - 8, y + 20, "Together");
        svg.rect("subject-dot", new Svg.Box(names, y + 9, Math.max(1, axis.at(whole) - names), 14));
        svg.text("own", axis.at(whole) + 6, y + 20, number(budget.standardUncertainty()));
        for (Ticks.Tick tick : axis.ticks()) {
            svg.text("mid", axis.at(tick.value()), bottom + 18, tick.label());
        }
        svg.text("mid", (names + width - 52) / 2, bottom + 38, "standard uncertainty, " + unitWords());
        return svg.close();
    }

    private void row(Svg svg, Axis axis, Contribution one, double y) {
        double to = axis.at(scale.unit().differenceFromSi(one.standardUncertainty()));
        var lines = Words.wrap(one.input(), axis.fromPx() - 12);
        double first = lines.size() == 1 ? y + 20 : y + 13;
        for (int i = 0; i < lines.size(); i++) {
            svg.text("said right", axis.fromPx() - 8, first + 14 * i, lines.get(i));
        }
        boolean open = one.evaluation() == Contribution.Evaluation.A;
        svg.rect(open ? "bar-open" : "bar", new Svg.Box(axis.fromPx(), y + 9, Math.max(1, to - axis.fromPx()), 14));
        svg.text("said", to + 6, y + 20, number(one.standardUncertainty()));
    }

    private String number(double si) {
        return QuantityPrinter.digits(Rounding.toSignificant(scale.unit().differenceFromSi(si), 2));
    }

    private String unitWords() {
        return scale.symbol().isEmpty() ? "as a ratio" : scale.symbol();
    }

    private String sentence(List<Contribution> rows, Budget budget) {
        var words = new StringBuilder("What the uncertainty is made of, in " + unitWords() + ": ");
        for (Contribution row : rows) {
            words.append(row.input())
                    .append(' ')
                    .append(number(row.standardUncertainty()))
                    .append("; ");
        }
        return words.append("together ")
                .append(new Printed(number(budget.standardUncertainty()), "", scale.symbol()).text())
                .toString();
    }
}
