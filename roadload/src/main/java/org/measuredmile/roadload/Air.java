package org.measuredmile.roadload;

/// The air that a run was ridden in.
///
/// Unit: kelvin, pascal, relative humidity as a ratio from 0 to 1.
/// Error: IllegalArgumentException for a temperature or pressure that is not positive, or a humidity outside 0 to 1.
public record Air(double temperatureK, double pressurePa, double relativeHumidity) {
    /// The reference: 20 °C, 100 kPa, 50 %.
    public static final Air REFERENCE = new Air(293.15, 100_000, 0.5);

    private static final double ZERO_CELSIUS_K = 273.15;
    private static final double GAS_CONSTANT = 8.314472;
    private static final double MOLAR_MASS_DRY = 28.96546e-3;
    private static final double MOLAR_MASS_WATER = 18.01528e-3;
    private static final double DRY_GAS_CONSTANT = 287.05287;
    private static final double VAPOUR_GAS_CONSTANT = 461.495;

    public Air {
        if (!(temperatureK > 0) || !(pressurePa > 0) || !(relativeHumidity >= 0 && relativeHumidity <= 1)) {
            throw new IllegalArgumentException(
                    temperatureK + " K, " + pressurePa + " Pa, humidity " + relativeHumidity);
        }
    }

    /// Density in kg/m³: by the formula of the CIPM where it is valid, else as a mixture of ideal gases, which
    /// differs by less than 0.06 % where both hold.
    public double densityKgPerM3() {
        double celsius = temperatureK - ZERO_CELSIUS_K;
        boolean valid = celsius >= 15 && celsius <= 27 && pressurePa >= 60_000 && pressurePa <= 110_000;
        return valid ? densityByCipm() : densityOfIdealGases();
    }

    /// Source: Picard, Davis, Gläser and Fujii, Metrologia 45 (2008) 149-155 (CIPM-2007), with 400 ppm of carbon
    /// dioxide; valid from 15 to 27 °C and 600 to 1100 hPa.
    double densityByCipm() {
        double t = temperatureK - ZERO_CELSIUS_K;
        double x = vapourFraction();
        double z = compressibility(t, x);
        return pressurePa
                * MOLAR_MASS_DRY
                / (z * GAS_CONSTANT * temperatureK)
                * (1 - x * (1 - MOLAR_MASS_WATER / MOLAR_MASS_DRY));
    }

    /// Saturation vapour pressure by the same source, in pascal.
    double saturationByCipm() {
        return StrictMath.exp(1.2378847e-5 * temperatureK * temperatureK
                - 1.9121316e-2 * temperatureK
                + 33.93711047
                - 6.3431645e3 / temperatureK);
    }

    double enhancement() {
        double t = temperatureK - ZERO_CELSIUS_K;
        return 1.00062 + 3.14e-8 * pressurePa + 5.6e-7 * t * t;
    }

    double vapourFraction() {
        return relativeHumidity * enhancement() * saturationByCipm() / pressurePa;
    }

    double compressibility() {
        return compressibility(temperatureK - ZERO_CELSIUS_K, vapourFraction());
    }

    private double compressibility(double t, double x) {
        double ratio = pressurePa / temperatureK;
        double first = 1.58123e-6
                - 2.9331e-8 * t
                + 1.1043e-10 * t * t
                + (5.707e-6 - 2.051e-8 * t) * x
                + (1.9898e-4 - 2.376e-6 * t) * x * x;
        return 1 - ratio * first + ratio * ratio * (1.83e-11 - 0.765e-8 * x * x);
    }

    /// Source: gas constants of ISO 2533 (dry air) and of water vapour; saturation by Magnus's formula with the
    /// constants of Sonntag (1990), as in the WMO's guide of 2008.
    double densityOfIdealGases() {
        double vapourPa = relativeHumidity * saturationByMagnus(temperatureK - ZERO_CELSIUS_K);
        return (pressurePa - vapourPa) / (DRY_GAS_CONSTANT * temperatureK)
                + vapourPa / (VAPOUR_GAS_CONSTANT * temperatureK);
    }

    /// In pascal, of degrees Celsius.
    static double saturationByMagnus(double celsius) {
        return 611.2 * StrictMath.exp(17.62 * celsius / (243.12 + celsius));
    }
}
