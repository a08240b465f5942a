package org.measuredmile.comparison.standing;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.day.Bike;

/// What a bike's folder says of it that a population may ask for, beside category, maker and drive.
///
/// Unit: battery energy in watt-hours, the maker's claim; the price in its own currency.
/// Shape: empty text and empty numbers where nothing was written.
public record Traits(
        String sensor,
        String wheel,
        OptionalDouble batteryWh,
        OptionalDouble price,
        String currency,
        OptionalInt modelYear) {
    /// Of a bike of which nothing was written down.
    public static final Traits UNKNOWN =
            new Traits("", "", OptionalDouble.empty(), OptionalDouble.empty(), "", OptionalInt.empty());

    private static final String BATTERY_ENERGY = "battery-energy";

    /// Of a bike as its folder describes it.
    public static Traits of(Bike bike) {
        var joules = bike.claimed(BATTERY_ENERGY, QuantityKind.ENERGY);
        return new Traits(
                bike.sensor(),
                bike.wheelSize(),
                joules.isPresent()
                        ? OptionalDouble.of(Unit.WATT_HOUR.fromSi(joules.getAsDouble()))
                        : OptionalDouble.empty(),
                bike.price().amount(),
                bike.price().currency(),
                bike.modelYear());
    }
}
