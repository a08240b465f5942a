package org.measuredmile.comparison.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.statistics.StudentT;
import org.measuredmile.trial.Figure;

/// How much more of the same would decide a claim, should the value stay what it is.
///
/// Formula: the scatter of n runs becomes that of n + m, u·√(n/(n + m)); with k more days alike, both the
/// scatter and what lies between days are divided by √(1 + k). What is common to all runs stays. The smallest m
/// or k is taken for which t·u no longer reaches from the value to the claim.
/// Source: JCGM 100:2008, 4.2.3; the rule is JCGM 106:2012, 8.3 with a guard band of U.
public record MoreRuns(int runs, int days) {
    private static final int MOST_RUNS = 30;
    private static final int MOST_DAYS = 6;
    private static final String SCATTER = "scatter of ";
    private static final String BETWEEN_DAYS = "between days";

    /// What would decide; empty where no sensible number of runs or days does.
    ///
    /// @param scale by what the figure was multiplied to get to the value
    /// @param moreSd what the step to other conditions added, in SI
    /// @param distanceSi from the value to the nearest end of the claim
    static Optional<MoreRuns> of(Figure figure, double scale, double moreSd, double distanceSi) {
        long counted = figure.counted();
        var scatter = figure.budget().stream()
                .filter(one -> one.input().startsWith(SCATTER))
                .findFirst();
        if (scatter.isEmpty() || counted == 0) {
            return Optional.empty();
        }
        for (int more = 1; more <= MOST_RUNS; more++) {
            double share = Math.sqrt((double) counted / (counted + more));
            if (reach(figure, share, 1, more, scale, moreSd) < distanceSi) {
                return Optional.of(new MoreRuns(more, 0));
            }
        }
        for (int more = 1; more <= MOST_DAYS; more++) {
            double share = Math.sqrt(1.0 / (1 + more));
            if (reach(figure, share, share, more, scale, moreSd) < distanceSi) {
                return Optional.of(new MoreRuns(0, more));
            }
        }
        return Optional.empty();
    }

    private static double reach(
            Figure figure, double ofRuns, double ofDays, int moreDegrees, double scale, double moreSd) {
        List<Contribution> then = new ArrayList<>();
        for (var one : figure.budget()) {
            boolean isScatter = one.input().startsWith(SCATTER);
            double factor = isScatter ? ofRuns : one.input().equals(BETWEEN_DAYS) ? ofDays : 1;
            then.add(new Contribution(
                    one.input(),
                    one.evaluation(),
                    one.standardUncertainty() * factor * scale,
                    one.degreesOfFreedom() + (isScatter ? moreDegrees : 0),
                    one.shared()));
        }
        if (moreSd > 0) {
            then.add(Contribution.typeB("brought to the claim's conditions", moreSd));
        }
        var budget = new Budget(then);
        return StudentT.twoSided95(budget.effectiveDegreesOfFreedom()) * budget.standardUncertainty();
    }
}
