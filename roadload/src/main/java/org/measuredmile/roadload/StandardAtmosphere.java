package org.measuredmile.roadload;

/// The usual air at a height: what stands in for a barometer that nobody read.
///
/// Valid: in the troposphere, to 11 km of geopotential height.
/// Source: ISO 2533:1975 (the same as ICAO's standard atmosphere).
public final class StandardAtmosphere {
    private static final double SEA_LEVEL_K = 288.15;
    private static final double SEA_LEVEL_PA = 101_325;
    private static final double LAPSE_K_PER_M = 0.0065;
    private static final double GRAVITY = 9.80665;
    private static final double DRY_GAS_CONSTANT = 287.05287;
    private static final double EARTH_RADIUS_M = 6_356_766;

    private StandardAtmosphere() {}

    /// Temperature in kelvin at a geopotential height in metres.
    public static double temperatureK(double geopotentialM) {
        return SEA_LEVEL_K - LAPSE_K_PER_M * geopotentialM;
    }

    /// Pressure in pascal at a geopotential height in metres.
    public static double pressurePa(double geopotentialM) {
        double ratio = temperatureK(geopotentialM) / SEA_LEVEL_K;
        return SEA_LEVEL_PA * StrictMath.pow(ratio, GRAVITY / (LAPSE_K_PER_M * DRY_GAS_CONSTANT));
    }

    /// Geopotential height of a height above the sea, both in metres.
    public static double geopotentialM(double heightM) {
        return EARTH_RADIUS_M * heightM / (EARTH_RADIUS_M + heightM);
    }
}
