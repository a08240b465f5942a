package org.measuredmile.archive.ledger;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.trial.FigureSpec;

/// The prior uncertainty of a result that nobody recorded: the figure's declared scatter between runs and between days,
/// a
/// method term, and the step it was written to.
///
/// Unit: the SI unit of the figure.
/// Source: scatter as the trial declares it. The method term is as large as the scatter between days, for a procedure
/// that nobody wrote down (house value, no source). The step is rectangular: JCGM 100:2008, 4.3.7.
final class EarlierYears {
    private EarlierYears() {}

    static List<Contribution> budget(FigureSpec figure, double value, double step, int runs) {
        var prior = figure.prior();
        double betweenRuns = prior.betweenRunsAt(value) / Math.sqrt(runs);
        double betweenDays = prior.betweenDaysAt(value);
        var budget = new ArrayList<Contribution>();
        budget.add(Contribution.typeA("scatter of runs, as declared", betweenRuns, prior.runDegreesOfFreedom()));
        budget.add(Contribution.typeA("between days, as declared", betweenDays, prior.dayDegreesOfFreedom()));
        budget.add(Contribution.typeB("method of earlier years, not written down", betweenDays));
        budget.add(Contribution.typeB("step it was written to", step / Math.sqrt(12)));
        return budget;
    }

    /// Whether the figure declares any scatter to start from.
    static boolean isDeclared(FigureSpec figure) {
        return figure.prior().betweenRuns() > 0 || figure.prior().betweenDays() > 0;
    }
}
