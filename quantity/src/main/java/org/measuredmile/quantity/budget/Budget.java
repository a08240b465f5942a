package org.measuredmile.quantity.budget;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.statistics.StudentT;

/// The contributions to one figure's uncertainty, and what they come to.
///
/// Shape: contributions keep the order given.
/// Source: JCGM 100:2008, 5.1.2 (root sum of squares), G.4.1 equation (G.2b) (effective degrees of freedom), G.3
/// (t).
public record Budget(List<Contribution> contributions) {
    public Budget {
        contributions = List.copyOf(contributions);
    }

    public static Budget of(Contribution... contributions) {
        return new Budget(List.of(contributions));
    }

    /// This budget with one more contribution at its end.
    public Budget plus(Contribution more) {
        var all = new ArrayList<>(contributions);
        all.add(more);
        return new Budget(all);
    }

    /// The budget of a difference between this budget's figure and another's, whose shared inputs cancel.
    ///
    /// Shape: contributions that share a name are one input that acts on both figures in the same direction; what
    /// is left of it is the difference of their sizes. All others stay as they are.
    /// Source: JCGM 100:2008, 5.2.2, equation (13), with a correlation of 1 for what is shared.
    public Budget minus(Budget other) {
        var left = new ArrayList<Contribution>();
        var matched = new ArrayList<>(other.contributions);
        for (var mine : contributions) {
            Optional<Contribution> theirs = matched.stream()
                    .filter(each -> !mine.shared().isEmpty() && each.shared().equals(mine.shared()))
                    .findFirst();
            theirs.ifPresent(matched::remove);
            double size = mine.standardUncertainty()
                    - theirs.map(Contribution::standardUncertainty).orElse(0.0);
            left.add(new Contribution(
                    mine.input(), mine.evaluation(), Math.abs(size), mine.degreesOfFreedom(), mine.shared()));
        }
        left.addAll(matched);
        return new Budget(left);
    }

    /// The root sum of squares of all contributions.
    public double standardUncertainty() {
        double sumOfSquares = 0;
        for (var contribution : contributions) {
            sumOfSquares += contribution.standardUncertainty() * contribution.standardUncertainty();
        }
        return Math.sqrt(sumOfSquares);
    }

    /// Effective degrees of freedom by Welch and Satterthwaite; infinite when no contribution limits them.
    ///
    /// Valid: for contributions that are independent of one another (JCGM 100:2008, G.4.1).
    public double effectiveDegreesOfFreedom() {
        double combined = standardUncertainty();
        double denominator = 0;
        for (var contribution : contributions) {
            double ratio = combined == 0 ? 0 : contribution.standardUncertainty() / combined;
            denominator += ratio * ratio * ratio * ratio / contribution.degreesOfFreedom();
        }
        return denominator == 0 ? Double.POSITIVE_INFINITY : 1 / denominator;
    }

    /// Standard uncertainty, degrees of freedom and the symmetric 95 % interval around a value.
    public Uncertainty around(double value) {
        double standard = standardUncertainty();
        double degrees = effectiveDegreesOfFreedom();
        double halfWidth = StudentT.twoSided95(degrees) * standard;
        return new Uncertainty(standard, degrees, Interval.around(value, halfWidth));
    }

    /// The share of the combined variance that a contribution makes up; 0 when there is no uncertainty at all.
    public double share(Contribution contribution) {
        double combined = standardUncertainty();
        double ratio = combined == 0 ? 0 : contribution.standardUncertainty() / combined;
        return ratio * ratio;
    }

    /// Largest first, for showing.
    public List<Contribution> byWeight() {
        return contributions.stream()
                .sorted(Comparator.comparingDouble(Contribution::standardUncertainty)
                        .reversed())
                .toList();
    }
}
