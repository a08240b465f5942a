package org.measuredmile.comparison.expected;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.quantity.statistics.Sample;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Variant;

/// Fits a declared line through the bikes that can stand on it.
public final class Fitting {
    private static final double SURE = 0.95;
    /// Below this share of the spread across that is not measurement, the slope is too flat to be taken at
    /// its word.
    private static final double LEAST_RELIABILITY = 0.9;

    private final ExpectedLine line;
    private final Variant variant;
    private final List<Point> points = new ArrayList<>();
    private final List<Expectation.LeftOut> leftOut = new ArrayList<>();

    private Fitting(ExpectedLine line, Variant variant) {
        this.line = line;
        this.variant = variant;
    }

    private record Point(TestedBike bike, Coordinate.Known across, Result result) {
        double value() {
            return result.figure().value();
        }
    }

    /// The line through the bikes of which both coordinates are known.
    public static Expectation of(ExpectedLine line, List<TestedBike> bikes) {
        var fitting = new Fitting(line, variant(line, bikes));
        bikes.forEach(fitting::place);
        fitting.points.sort(
                Comparator.comparingDouble((Point point) -> point.across().value())
                        .thenComparing(point -> point.bike().bike().id()));
        return fitting.fit();
    }

    private void place(TestedBike bike) {
        Optional<Result> result = result(bike);
        Optional<Coordinate.Known> across = line.across().of(bike);
        if (result.isEmpty()) {
            leave(bike, "no accepted result of " + line.figure().title());
        } else if (across.isEmpty()) {
            leave(bike, line.across().absent());
        } else {
            points.add(new Point(bike, across.get(), result.get()));
        }
    }

    private void leave(TestedBike bike, String reason) {
        leftOut.add(new Expectation.LeftOut(bike.bike().id(), bike.bike().title(), reason));
    }

    private Optional<Result> result(TestedBike bike) {
        return results(line, bike)
                .filter(result -> comparable(result).equals(variant))
                .findFirst();
    }

    /// Of the variants that the line allows, the one that most bikes have: one hill, one speed, one way to
    /// measure.
    private static Variant variant(ExpectedLine line, List<TestedBike> bikes) {
        var counts = new TreeMap<Variant, Integer>();
        for (var bike : bikes) {
            results(line, bike).map(Fitting::comparable).distinct().forEach(one -> counts.merge(one, 1, Integer::sum));
        }
        int most = counts.values().stream().mapToInt(Integer::intValue).max().orElse(0);
        return counts.entrySet().stream()
                .filter(entry -> entry.getValue() == most)
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(line.variant());
    }

    private static Stream<Result> results(ExpectedLine line, TestedBike bike) {
        return bike.of(line.figure().id()).stream()
                .filter(result -> fits(line, result.figure().key().variant()));
    }

    /// As measured and at reference are two things.
    private static boolean fits(ExpectedLine line, Variant variant) {
        return variant.get("at").equals(line.variant().get("at")) && variant.covers(line.variant());
    }

    /// The highest level is one role, whatever its number.
    private static Variant comparable(Result result) {
        return result.figure().key().variant().without("level");
    }

    private Expectation fit() {
        int n = points.size();
        if (n < Band.LEAST) {
            return new Expectation.NoLine(
                    line, variant, n, "a line takes " + Band.LEAST + " bikes and more, there are " + n, leftOut);
        }
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = line.bend().straightened(points.get(i).across().value());
            y[i] = points.get(i).value();
        }
        if (Sample.of(x).smallest() == Sample.of(x).largest()) {
            return new Expectation.NoLine(
                    line, variant, n, "all bikes have the same " + line.across().words(), leftOut);
        }
        var fit = TheilSen.through(x, y);
        double[] own = new double[n];
        for (int i = 0; i < n; i++) {
            own[i] = ownStandard(points.get(i), fit.slope());
        }
        var band = Band.around(fit, x, y, own);
        return fitted(fit, band, findings(fit, x));
    }

    private Expectation.Fitted fitted(TheilSen fit, Band band, List<Finding> findings) {
        var bend = line.bend();
        return new Expectation.Fitted(
                line,
                variant,
                fit.slope(),
                fit.intercept(),
                fit.interceptOfMedians(),
                fit.slopeInterval(SURE),
                band.scale(),
                band.degreesOfFreedom(),
                points.getFirst().across().value(),
                points.getLast().across().value(),
                points.stream().map(point -> judge(point, fit, band)).toList(),
                leftOut,
                findings,
                across -> {
                    double straight = bend.straightened(across);
                    return new Expectation.Expected(across, fit.at(straight), band.at(straight));
                });
    }

    private JudgedBike judge(Point point, TheilSen fit, Band band) {
        double x = line.bend().straightened(point.across().value());
        var around = band.at(x, ownStandard(point, fit.slope()));
        var own = point.result().figure().anyDay().interval95();
        return new JudgedBike(
                point.bike().bike().id(),
                point.bike().bike().title(),
                point.across(),
                point.result(),
                fit.at(x),
                around,
                JudgedBike.Place.of(point.value(), own, around));
    }

    /// How well a bike's distance from the line is known: its result's any-day uncertainty and, through the
    /// slope, that of its place across.
    private double ownStandard(Point point, double slope) {
        double along = slope
                * line.bend().rate(point.across().value())
                * point.across().standard();
        return StrictMath.hypot(point.result().figure().anyDay().standard(), along);
    }

    private List<Finding> findings(TheilSen fit, double[] x) {
        var findings = new ArrayList<Finding>();
        if (fit.slopeInterval(SURE).contains(0)) {
            findings.add(Finding.note(
                    "no-relation",
                    Place.NOWHERE,
                    "the bikes do not show that " + line.figure().title() + " goes with "
                            + line.across().words() + ": the interval of the slope holds zero"));
        }
        double spread = Sample.of(x).standardDeviation();
        double unsure = points.stream()
                .mapToDouble(point -> line.bend().rate(point.across().value())
                        * point.across().standard())
                .map(one -> one * one)
                .average()
                .orElse(0);
        double reliability = 1 - unsure / (spread * spread);
        if (reliability < LEAST_RELIABILITY) {
            findings.add(Finding.warning(
                    "across-uncertain",
                    Place.NOWHERE,
                    line.across().words() + " is itself uncertain, which makes the line flatter than it is",
                    "measure it better, or read the line as what is expected for the "
                            + line.across().words() + " as measured"));
        }
        return findings;
    }
}
