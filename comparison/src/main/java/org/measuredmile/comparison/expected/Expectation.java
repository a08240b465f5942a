package org.measuredmile.comparison.expected;

import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.Interval;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Variant;

/// What came of fitting an expected-value line.
public sealed interface Expectation {
    ExpectedLine line();

    /// The one variant of all bikes on it, without the number of a level.
    Variant variant();

    /// The bikes that could not stand on it, each with the reason.
    List<LeftOut> leftOut();

    record LeftOut(String bike, String title, String reason) {}

    /// A line with its band and its bikes, best known first by `across`.
    ///
    /// Unit: `slope` and its interval in SI, per SI unit of what the line is straight in; `low` to `high`
    /// are the range of the bikes, in the SI unit of `across`.
    record Fitted(
            ExpectedLine line,
            Variant variant,
            double slope,
            double intercept,
            double interceptOfMedians,
            Interval slope95,
            double scale,
            double degreesOfFreedom,
            double low,
            double high,
            List<JudgedBike> bikes,
            List<LeftOut> leftOut,
            List<Finding> findings,
            Curve curve)
            implements Expectation {
        public Fitted {
            bikes = List.copyOf(bikes);
            leftOut = List.copyOf(leftOut);
            findings = List.copyOf(findings);
        }

        /// What is expected at a place of `across` and the band for a further bike there; empty beyond the
        /// bikes' range.
        public Optional<Expected> at(double across) {
            return across < low || across > high ? Optional.empty() : Optional.of(curve.at(across));
        }

        /// Whether the data show that the figure depends on `across` at all.
        public boolean showsRelation() {
            return !slope95.contains(0);
        }

        public List<JudgedBike> outside() {
            return bikes.stream()
                    .filter(bike -> bike.place() != JudgedBike.Place.INSIDE)
                    .toList();
        }
    }

    /// Too few bikes, or all of them at the same place: no line.
    record NoLine(ExpectedLine line, Variant variant, int found, String why, List<LeftOut> leftOut)
            implements Expectation {
        public NoLine {
            leftOut = List.copyOf(leftOut);
        }
    }

    /// What is expected at one place, and the band there.
    record Expected(double across, double value, Interval band) {}

    /// The line and its band as a function of `across`.
    @FunctionalInterface
    interface Curve {
        Expected at(double across);
    }
}
