package org.measuredmile.trial;

import java.util.Collection;
import java.util.List;
import org.measuredmile.quantity.budget.Contribution;

/// How the counted runs of a figure lie: their mean, or the mean of their two directions, and how far they scatter
/// about it.
///
/// Unit: the figure's SI unit, and its square. `perRun` is the variance of the mean for a variance of 1 of a run.
record RunSpread(double mean, double sumOfSquares, int degreesOfFreedom, double perRun, int count, int ways) {
    /// The values of each direction; one collection where runs go one way.
    static RunSpread of(Collection<List<Double>> byDirection) {
        double sumOfMeans = 0;
        double sumOfSquares = 0;
        double perRun = 0;
        int count = 0;
        for (var values : byDirection) {
            double mean = mean(values);
            sumOfMeans += mean;
            for (double value : values) {
                sumOfSquares += (value - mean) * (value - mean);
            }
            perRun += 1.0 / values.size();
            count += values.size();
        }
        int ways = byDirection.size();
        return new RunSpread(sumOfMeans / ways, sumOfSquares, count - ways, perRun / (ways * ways), count, ways);
    }

    private static double mean(List<Double> values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.size();
    }

    /// What scatter adds to the mean, were there so many more runs: the moderated variance of what was stated
    /// and of what these runs show, the blur of single runs in both.
    ///
    /// Source: JCGM 100:2008, G.4.1, for the degrees of freedom of a stated variance that is known in part.
    Contribution typeA(Scatter scatter, double blurSd, int more, String of) {
        double own = scatter.betweenRunsAt(mean);
        double stated = StrictMath.hypot(own, blurSd);
        double share = stated == 0 ? 1 : own * own / (stated * stated);
        double statedDegrees = share == 0 ? Double.POSITIVE_INFINITY : scatter.runDegreesOfFreedom() / (share * share);
        double moderated = Double.isInfinite(statedDegrees)
                ? stated
                : Math.sqrt((statedDegrees * stated * stated + sumOfSquares) / (statedDegrees + degreesOfFreedom));
        int all = count + more;
        return Contribution.typeA(
                "scatter of " + all + " " + of + (all == 1 ? "" : "s"),
                moderated * Math.sqrt(perRun * count / all),
                statedDegrees + degreesOfFreedom + more);
    }
}
