package org.measuredmile.roadload;

/// Normal gravity, in m/s².
///
/// Source: WGS 84 (NIMA TR8350.2, chapter 4): Somigliana's closed formula on the ellipsoid, and its series for height.
public final class Gravity {
    /// The conventional value, for when nobody knows where the road lies.
    public static final double STANDARD_MPS2 = 9.80665;

    private static final double AXIS_M = 6_378_137;
    private static final double FLATTENING = 1 / 298.257223563;
    private static final double EQUATOR = 9.7803253359;
    private static final double POLE = 9.8321849378;
    private static final double TURN_RATE = 7.292115e-5;
    private static final double EARTH_GM = 3.986004418e14;
    private static final double POLAR_AXIS_M = AXIS_M * (1 - FLATTENING);
    static final double SOMIGLIANA = POLAR_AXIS_M * POLE / (AXIS_M * EQUATOR) - 1;

    private Gravity() {}

    /// At a latitude in degrees and a height in metres.
    public static double normalMps2(double latitudeDegrees, double heightM) {
        double sine = StrictMath.sin(StrictMath.toRadians(latitudeDegrees));
        double square = sine * sine;
        double eccentricity = FLATTENING * (2 - FLATTENING);
        double onEllipsoid = EQUATOR * (1 + SOMIGLIANA * square) / StrictMath.sqrt(1 - eccentricity * square);
        double m = TURN_RATE * TURN_RATE * AXIS_M * AXIS_M * POLAR_AXIS_M / EARTH_GM;
        return onEllipsoid
                * (1
                        - 2 / AXIS_M * (1 + FLATTENING + m - 2 * FLATTENING * square) * heightM
                        + 3 * heightM * heightM / (AXIS_M * AXIS_M));
    }
}
