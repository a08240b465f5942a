package org.measuredmile.trial.braking;

/// Brings a stop to its nominal entry speed and to level road.
///
/// Unit: metres, metres per second, metres per second squared; slopes as rise over run, uphill positive.
final class BrakingCorrection {
    private BrakingCorrection() {}

    /// A distance at the nominal entry speed: it grows with the square of the speed.
    ///
    /// Valid: inside the entry-speed window only, for the square law takes the mean deceleration as the same.
    /// Source: EN 14766:2005, 4.6.7.5.1.9.
    static double atNominal(double distanceM, double entryMps, double nominalMps) {
        return distanceM * BrakingRules.square(nominalMps / entryMps);
    }

    /// A mean deceleration from entry speed and distance.
    static double meanDeceleration(double entryMps, double distanceM) {
        return entryMps * entryMps / (2 * distanceM);
    }

    /// A deceleration on level road: going uphill helped to stop.
    ///
    /// Source: physics page, 1.1: a_level = a − g·sin(atan G).
    static double levelDeceleration(double measuredMps2, double slope) {
        return measuredMps2 - BrakingRules.GRAVITY_MPS2 * slope / Math.sqrt(1 + slope * slope);
    }

    /// A distance on level road, of one from the given speed.
    static double levelDistance(double distanceM, double speedMps, double slope) {
        double level = levelDeceleration(meanDeceleration(speedMps, distanceM), slope);
        return speedMps * speedMps / (2 * level);
    }
}
