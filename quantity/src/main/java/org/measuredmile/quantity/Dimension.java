package org.measuredmile.quantity;

/// What may be converted into what: two units convert when their dimension is the same.
public enum Dimension {
    ONE,
    LENGTH,
    SPEED,
    TIME,
    MASS,
    ACCELERATION,
    FORCE,
    POWER,
    ENERGY,
    ENERGY_PER_DISTANCE,
    PRESSURE,
    TEMPERATURE,
    DENSITY,
    AREA,
    ANGLE,
    ANGULAR_RATE,
    FREQUENCY,
    VOLTAGE,
    CURRENT,
    CHARGE,
    ILLUMINANCE,
    SOUND_LEVEL,
    MAGNETIC_FLUX_DENSITY
}
