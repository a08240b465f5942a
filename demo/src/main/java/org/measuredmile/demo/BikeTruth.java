package org.measuredmile.demo;

import java.util.List;
import java.util.OptionalDouble;

/// What an invented bike really is: what its test days should find again.
///
/// Shape: `levelMps` holds the speed a steady light rider settles at on the level, from level 1 up.
/// Unit: kilograms, ratio of the load on the front axle, metres per second squared, seconds, metres per
/// second, watts. `takeUpS` runs from the lever's first movement to the onset of deceleration, `buildUpS`
/// from there until the deceleration is whole.
public record BikeTruth(
        String bike,
        double massKg,
        double batteryKg,
        double frontShare,
        double decelerationMps2,
        double takeUpS,
        double buildUpS,
        List<Double> levelMps,
        double unassistedMps,
        double cutOffMps,
        OptionalDouble throttleMps,
        double motorW) {
    public BikeTruth {
        levelMps = List.copyOf(levelMps);
    }

    /// The same bike with brakes of another strength.
    BikeTruth decelerating(double otherMps2) {
        return new BikeTruth(
                bike,
                massKg,
                batteryKg,
                frontShare,
                otherMps2,
                takeUpS,
                buildUpS,
                levelMps,
                unassistedMps,
                cutOffMps,
                throttleMps,
                motorW);
    }
}
