package org.measuredmile.recording.day;

import java.util.OptionalDouble;

/// What the day was like. A missing condition widens a budget and is a finding of the trial that wanted it.
///
/// Unit: kelvin, pascal, ratio, metres per second; `windFrom` and `surface` are words, empty when not written.
public record Conditions(
        OptionalDouble airTemperatureK,
        OptionalDouble pressurePa,
        OptionalDouble relativeHumidity,
        OptionalDouble windSpeedMps,
        String windFrom,
        String surface,
        OptionalDouble stateOfCharge,
        OptionalDouble batteryTemperatureK) {
    public static final Conditions UNKNOWN = new Conditions(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            "",
            "",
            OptionalDouble.empty(),
            OptionalDouble.empty());
}
