package org.measuredmile.quantity.statistics;

/// The standard deviation of single runs when few were ridden: what earlier days taught, weighed with these runs.
///
/// Unit: `standardDeviation` in that of the runs.
/// Shape: variance (ν₀s₀² + νs²)/(ν₀ + ν) with ν₀ + ν degrees of freedom; a single run adds nothing to the prior.
/// Error: IllegalArgumentException for a prior below 0 or with less than one degree of freedom.
/// Source: JCGM 100:2008, 4.2.4 (a pooled estimate from earlier work).
public record ModeratedScatter(double standardDeviation, double degreesOfFreedom) {
    public ModeratedScatter {
        if (!(standardDeviation >= 0 && standardDeviation < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("standard deviation " + standardDeviation);
        }
        if (!(degreesOfFreedom >= 1 && degreesOfFreedom < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("degrees of freedom " + degreesOfFreedom + ", from 1 up needed");
        }
    }

    /// The scatter of runs, moderated by a prior standard deviation and its degrees of freedom.
    public static ModeratedScatter of(double priorS, double priorDof, Sample runs) {
        var prior = new ModeratedScatter(priorS, priorDof);
        return runs.n() < 2 ? prior : prior.with(runs.standardDeviation(), runs.degreesOfFreedom());
    }

    /// This scatter with more evidence, a standard deviation s of ν degrees of freedom.
    public ModeratedScatter with(double s, double dof) {
        double total = degreesOfFreedom + dof;
        double sumOfSquares = degreesOfFreedom * standardDeviation * standardDeviation + dof * s * s;
        return new ModeratedScatter(Math.sqrt(sumOfSquares / total), total);
    }

    /// The standard uncertainty of the mean of n runs with this scatter.
    public double ofMean(int n) {
        if (n < 1) {
            throw new IllegalArgumentException("mean of " + n + " runs");
        }
        return standardDeviation / Math.sqrt(n);
    }
}
