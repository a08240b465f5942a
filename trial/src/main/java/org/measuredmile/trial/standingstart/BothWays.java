package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;

/// By how much slope and wind make the mean of both ways late, and how well that is known.
///
/// Their first order cancels in that mean. The second does not: uphill and into the wind a bike loses more time than it
/// wins on the way back, the nearer to its highest speed the more, and wind along the road slows by half its square
/// both ways. How much, the difference between the ways says, as far as it stands out of the scatter.
///
/// Formula: t± = ∫ dv/(a ∓ s − c·(w²/2 ± w·v)) for a slope s and a wind w; late = (t₊ + t₋)/2 − ∫ dv/a, averaged over
/// s and w with their normal densities times that of the observed t₊ − t₋. For a distance v·dv stands for dv.
/// Unit: seconds, or metres for a distance.
/// Source: Bayes' theorem by the rectangle rule on a grid of ± 3 standard deviations, worked out here.
record BothWays(double late, double standardUncertainty) {
    private static final int HALF_POINTS = 8;
    private static final double REACH = 3;

    /// What is known of the road: of the slope as an acceleration in m/s², of the wind along it in m/s, both
    /// around 0, and how an acceleration answers to speed and wind, 1/m.
    record Road(double slopeSdMps2, double windSdMps, double dragPerM) {}

    /// The figure out less that back, and the standard deviation of what scatter and timing make of such a
    /// difference.
    record Difference(double observed, double standardDeviation) {
        private double logLikelihood(double expected) {
            double off = (observed - expected) / standardDeviation;
            return standardDeviation > 0 ? -off * off / 2 : 0;
        }
    }

    /// For a time to a speed, or with `ofDistance` for a distance.
    static BothWays of(SpeedCurve curve, double toMps, boolean ofDistance, Road road, Difference difference) {
        double level = curve.integral(toMps, ofDistance, _ -> 0);
        var points = new ArrayList<Point>();
        for (int i = -HALF_POINTS; i <= HALF_POINTS; i++) {
            for (int j = 0; j <= HALF_POINTS; j++) {
                double slope = REACH * i / HALF_POINTS;
                double wind = REACH * j / HALF_POINTS;
                double mps2 = slope * road.slopeSdMps2();
                double mps = wind * road.windSdMps();
                double square = road.dragPerM() * mps * mps / 2;
                double out = curve.integral(toMps, ofDistance, v -> mps2 + road.dragPerM() * mps * v + square);
                double back = curve.integral(toMps, ofDistance, v -> -mps2 - road.dragPerM() * mps * v + square);
                double late = (out + back) / 2 - level;
                double prior = -(slope * slope + wind * wind) / 2;
                points.add(new Point(late, prior + difference.logLikelihood(out - back)));
                if (j > 0) {
                    // With slope and wind both turned round the two ways only change places.
                    points.add(new Point(late, prior + difference.logLikelihood(back - out)));
                }
            }
        }
        return mean(points);
    }

    private record Point(double late, double logWeight) {}

    private static BothWays mean(List<Point> points) {
        double most = points.stream().mapToDouble(Point::logWeight).max().orElseThrow();
        double weights = 0;
        double sum = 0;
        double squares = 0;
        for (var point : points) {
            double weight = StrictMath.exp(point.logWeight() - most);
            weights += weight;
            sum += weight * point.late();
            squares += weight * point.late() * point.late();
        }
        double mean = sum / weights;
        return new BothWays(mean, Math.sqrt(Math.max(0, squares / weights - mean * mean)));
    }
}
