package org.measuredmile.roadload;

/// What is moved and where: mass, turning mass, air, gravity.
///
/// Unit: `massKg` is bike, rider and gear; `turningKg` is what the wheels' turning adds as mass at the rim, I/r²;
/// kg/m³; m/s².
/// Error: IllegalArgumentException for a mass, density or gravity that is not positive, or a negative turning mass.
public record Setting(double massKg, double turningKg, double airKgPerM3, double gravityMps2) {
    public Setting {
        if (!(massKg > 0) || !(turningKg >= 0) || !(airKgPerM3 > 0) || !(gravityMps2 > 0)) {
            throw new IllegalArgumentException(
                    massKg + " kg, " + turningKg + " kg, " + airKgPerM3 + " kg/m³, " + gravityMps2 + " m/s²");
        }
    }

    /// The mass that has to be accelerated: m + I/r².
    public double effectiveKg() {
        return massKg + turningKg;
    }

    /// The same with another total mass.
    public Setting withMass(double kg) {
        return new Setting(kg, turningKg, airKgPerM3, gravityMps2);
    }

    /// The same in other air.
    public Setting inAir(double kgPerM3) {
        return new Setting(massKg, turningKg, kgPerM3, gravityMps2);
    }
}
