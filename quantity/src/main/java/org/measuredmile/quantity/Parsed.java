package org.measuredmile.quantity;

/// What came of reading a quantity that a person typed or a file holds.
public sealed interface Parsed {
    /// A value that could be read.
    ///
    /// Unit: `si` and `resolutionSi` in the SI unit of the kind asked for; `unit` is the one written (the
    /// largest, in `22 ft 4 in`). `resolutionSi` is the step of the last digit or fraction written, a difference,
    /// above 0.
    record Value(double si, Unit unit, double resolutionSi) implements Parsed {}

    /// A text that is no such quantity: what is wrong, and what to do.
    record Fault(String message, String remedy) implements Parsed {}
}
