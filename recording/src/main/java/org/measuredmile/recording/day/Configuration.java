package org.measuredmile.recording.day;

import java.util.List;
import java.util.OptionalDouble;

/// How the bike was set up on the day.
///
/// Unit: tyre pressures in pascal.
public record Configuration(
        String firmware,
        String battery,
        String tyres,
        OptionalDouble tyrePressureFrontPa,
        OptionalDouble tyrePressureRearPa,
        List<String> accessories) {
    public static final Configuration UNKNOWN =
            new Configuration("", "", "", OptionalDouble.empty(), OptionalDouble.empty(), List.of());

    public Configuration {
        accessories = List.copyOf(accessories);
    }
}
