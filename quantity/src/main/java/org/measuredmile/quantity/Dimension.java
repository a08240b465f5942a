package org.measuredmile.quantity;

/// What may be converted into what: two units convert when their dimension is the same.
public enum Dimension {
    ONE("a plain number"),
    LENGTH("a length"),
    SPEED("a speed"),
    TIME("a time"),
    MASS("a mass"),
    ACCELERATION("an acceleration"),
    FORCE("a force"),
    TORQUE("a torque"),
    POWER("a power"),
    ENERGY("an energy"),
    ENERGY_PER_DISTANCE("an energy per distance"),
    MONEY_PER_ENERGY("a price of energy"),
    MONEY_PER_DISTANCE("a cost per distance"),
    POWER_PER_MASS("a power per mass"),
    PRESSURE("a pressure"),
    TEMPERATURE("a temperature"),
    DENSITY("a density"),
    AREA("an area"),
    ANGLE("an angle"),
    ANGULAR_RATE("a rate of turn"),
    FREQUENCY("a frequency"),
    VOLTAGE("a voltage"),
    CURRENT("a current"),
    CHARGE("a charge"),
    ILLUMINANCE("an illuminance"),
    SOUND_LEVEL("a sound level"),
    MAGNETIC_FLUX_DENSITY("a magnetic flux density");

    private final String noun;

    Dimension(String noun) {
        this.noun = noun;
    }

    /// What a value of it is called in a sentence, with its article: `a speed`.
    public String noun() {
        return noun;
    }
}
