package org.measuredmile.comparison.expected;

import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.quantity.Interval;

/// A bike on its line: what it did, what was to be expected, and whether it does otherwise.
///
/// Unit: SI; `band` is that for a bike of this one's own uncertainty.
public record JudgedBike(
        String bike,
        String title,
        Coordinate.Known across,
        Result result,
        double expected,
        Interval band,
        Place place) {
    /// How a bike lies to the band.
    public enum Place {
        INSIDE,
        /// Its value lies outside, its own 95 % interval reaches into the band.
        OUTSIDE_BUT_REACHING,
        /// Its whole 95 % interval lies outside.
        OUTSIDE;

        static Place of(double value, Interval own, Interval band) {
            if (band.contains(value)) {
                return INSIDE;
            }
            boolean reaches = own.low() <= band.high() && own.high() >= band.low();
            return reaches ? OUTSIDE_BUT_REACHING : OUTSIDE;
        }
    }

    public double value() {
        return result.figure().value();
    }

    public Interval interval95() {
        return result.figure().anyDay().interval95();
    }

    /// Result less expectation.
    public double difference() {
        return value() - expected;
    }

    public boolean isAbove() {
        return difference() > 0;
    }
}
