package org.measuredmile.comparison.sentence;

import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.trial.FigureSpec;

/// What the two ends of an order are called: shortest and longest, lightest and heaviest.
record Ends(String least, String most) {
    private static final Ends HEIGHT = new Ends("lowest", "highest");

    /// Those that the figure's trial declares, or those of its quantity.
    static Ends of(FigureSpec figure) {
        var usual = of(figure.kind());
        var saying = figure.saying();
        return new Ends(
                saying.least().isEmpty() ? usual.least : saying.least(),
                saying.most().isEmpty() ? usual.most : saying.most());
    }

    private static Ends of(QuantityKind kind) {
        return switch (kind) {
            case LENGTH, PART_LENGTH, DISTANCE, TIME -> new Ends("shortest", "longest");
            case SPEED -> new Ends("slowest", "fastest");
            case MASS -> new Ends("lightest", "heaviest");
            case AREA, ANGLE, COUNT -> new Ends("smallest", "largest");
            case SOUND_LEVEL -> new Ends("quietest", "loudest");
            case ILLUMINANCE -> new Ends("dimmest", "brightest");
            case MONEY_PER_ENERGY, MONEY_PER_DISTANCE -> new Ends("cheapest", "dearest");
            case ACCELERATION, FORCE, POWER, ENERGY, ENERGY_PER_DISTANCE, PRESSURE, TEMPERATURE, DENSITY -> HEIGHT;
            case ANGULAR_RATE,
                    FREQUENCY,
                    TORQUE,
                    POWER_PER_MASS,
                    RATIO,
                    VOLTAGE,
                    CURRENT,
                    CHARGE,
                    MAGNETIC_FLUX_DENSITY,
                    WORD -> HEIGHT;
        };
    }
}
