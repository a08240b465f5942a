package org.measuredmile.comparison.standing;

import java.util.TreeSet;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.statistics.StudentT;

/// The difference between two bikes' results, with what both share taken out.
///
/// Unit: the SI unit of the figure.
/// Source: JCGM 100:2008, 5.2.2 (a shared input enters a difference with the difference of its two contributions).
public record Contrast(double difference, double standardUncertainty, double degreesOfFreedom) {
    /// First minus second.
    public static Contrast between(Entrant first, Entrant second) {
        var budget = Budget.of(own("the first bike's own", first), own("the second bike's own", second));
        var firstShared = first.shared();
        var secondShared = second.shared();
        var names = new TreeSet<>(firstShared.keySet());
        names.addAll(secondShared.keySet());
        for (String name : names) {
            double left = firstShared.getOrDefault(name, 0.0) - secondShared.getOrDefault(name, 0.0);
            budget = budget.plus(Contribution.typeB(name, Math.abs(left)));
        }
        return new Contrast(
                first.value() - second.value(), budget.standardUncertainty(), budget.effectiveDegreesOfFreedom());
    }

    private static Contribution own(String name, Entrant entrant) {
        return Contribution.typeA(name, entrant.ownUncertainty(), entrant.ownDegreesOfFreedom());
    }

    /// The 95 % interval of the difference.
    public Interval interval95() {
        return Interval.around(difference, StudentT.twoSided95(Math.max(1, degreesOfFreedom)) * standardUncertainty);
    }

    /// Whether the data tell the two apart: zero lies outside the interval of the difference.
    public boolean tellsApart() {
        return !interval95().contains(0);
    }
}
