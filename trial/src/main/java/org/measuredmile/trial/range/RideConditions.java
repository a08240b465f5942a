package org.measuredmile.trial.range;

import org.measuredmile.roadload.Setting;

/// What a ride asked of the battery, as means over its way.
///
/// Unit: `meanSquareSpeed` in m²/s², weighed by distance; `secondsPerMetre` while riding; `windMps` the wind's speed,
/// which comes from every side round a loop; `ascentPerMetre` in metres; `stopsPerMetre`; the rider's power at the
/// wheel in watts, 0 by throttle alone.
record RideConditions(
        Setting setting,
        double meanSquareSpeed,
        double secondsPerMetre,
        double windMps,
        double ascentPerMetre,
        double stopsPerMetre,
        double riderW) {
    /// A ride at one speed throughout.
    static RideConditions steady(Setting setting, double speedMps, double riderW) {
        return new RideConditions(setting, speedMps * speedMps, 1 / speedMps, 0, 0, 0, riderW);
    }

    /// The same speeds by the same bike on the level, without wind or stops, with the reference rider and air.
    RideConditions atReference(Setting reference, double referenceRiderW) {
        return new RideConditions(reference, meanSquareSpeed, secondsPerMetre, 0, 0, 0, referenceRiderW);
    }

    RideConditions withRider(double watts) {
        return new RideConditions(
                setting, meanSquareSpeed, secondsPerMetre, windMps, ascentPerMetre, stopsPerMetre, watts);
    }

    RideConditions withWind(double mps) {
        return new RideConditions(
                setting, meanSquareSpeed, secondsPerMetre, mps, ascentPerMetre, stopsPerMetre, riderW);
    }

    RideConditions withAscent(double perMetre) {
        return new RideConditions(setting, meanSquareSpeed, secondsPerMetre, windMps, perMetre, stopsPerMetre, riderW);
    }

    /// The same with every speed multiplied.
    RideConditions faster(double times) {
        return new RideConditions(
                setting,
                meanSquareSpeed * times * times,
                secondsPerMetre / times,
                windMps,
                ascentPerMetre,
                stopsPerMetre,
                riderW);
    }

    RideConditions withSetting(Setting other) {
        return new RideConditions(
                other, meanSquareSpeed, secondsPerMetre, windMps, ascentPerMetre, stopsPerMetre, riderW);
    }
}
