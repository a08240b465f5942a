package org.measuredmile.comparison.expected;

import java.util.Optional;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.quantity.QuantityKind;

/// What one axis of a line holds of a bike.
///
/// Shape: `words` name it in a sentence (`claimed battery energy`); a bike of which it is not known is left
/// out with `absent` as the reason.
public record Coordinate(String words, QuantityKind kind, String absent, Finder finder) {
    /// A bike's value with its standard uncertainty and what it was taken from.
    ///
    /// Unit: the SI unit of the coordinate's kind. `standard` is 0 where none is stated, as of a claim.
    public record Known(double value, double standard, String from) {}

    /// Looks the value up.
    @FunctionalInterface
    public interface Finder {
        Optional<Known> of(TestedBike bike);
    }

    Optional<Known> of(TestedBike bike) {
        return finder.of(bike).filter(known -> Double.isFinite(known.value()));
    }
}
