package org.measuredmile.trial.range;

import org.measuredmile.roadload.RoadLoad;

/// What a metre of a ride takes out of the battery, at the wheel.
///
/// Formula: c = m·g·C_rr + ½·ρ·C_dA·(v² + ½·w²) + m·g·A·λ + n_s·½·m·v² − P_r/v, with A the ascent and n_s the stops per
/// metre, λ the share of an ascent that a descent does not give back, P_r the rider's power. ½·w² is the mean square of
/// the head wind round a loop. Losses between battery and wheel divide it all alike, so that they cancel in a ratio.
/// Unit: joules per metre.
/// Source: the equation of motion of a bicycle (Martin and others 1998, as in the road load), summed over a ride.
final class EnergyModel {
    private EnergyModel() {}

    static double joulesPerMetre(RideConditions ride, RoadLoad load, double lost) {
        var setting = ride.setting();
        double weightN = setting.massKg() * setting.gravityMps2();
        double air = setting.airKgPerM3() * load.dragAreaM2() / 2;
        return weightN * load.rollingCoefficient()
                + air * (ride.meanSquareSpeed() + ride.windMps() * ride.windMps() / 2)
                + weightN * ride.ascentPerMetre() * lost
                + ride.stopsPerMetre() * setting.massKg() * ride.meanSquareSpeed() / 2
                - ride.riderW() * ride.secondsPerMetre();
    }
}
