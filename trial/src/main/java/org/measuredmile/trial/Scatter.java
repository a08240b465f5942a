package org.measuredmile.trial;

/// How much a figure scatters from run to run and from day to day.
///
/// Unit: standard deviations, relative to the figure's value when `relative`, else in its SI unit.
/// Shape: degrees of freedom say how well each is known.
public record Scatter(
        double betweenRuns,
        double runDegreesOfFreedom,
        double betweenDays,
        double dayDegreesOfFreedom,
        boolean relative) {
    /// The standard deviation between runs of a figure of the given value, in its SI unit.
    public double betweenRunsAt(double value) {
        return relative ? betweenRuns * Math.abs(value) : betweenRuns;
    }

    /// The standard deviation between days of a figure of the given value, in its SI unit.
    public double betweenDaysAt(double value) {
        return relative ? betweenDays * Math.abs(value) : betweenDays;
    }

    /// The same where each run's value is itself known no better than a standard deviation in its
    /// SI unit.
    Scatter withRunsKnownWithin(double sd, double value) {
        double runs = StrictMath.hypot(betweenRunsAt(value), sd);
        return new Scatter(
                relative ? runs / Math.abs(value) : runs,
                runDegreesOfFreedom,
                betweenDays,
                dayDegreesOfFreedom,
                relative);
    }
}
