package org.measuredmile.trial.assistspeed;

import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;

/// How a bike at constant power answers wind and effort, by the usual road load: what stands in until a coast-down
/// was ridden.
///
/// At constant power P = v·(m·g·C_rr + ½·ρ·C_dA·(v + w)²): dv/dw = −ρ·C_dA·v²/N and dv/dP = 1/N with N = m·g·C_rr +
/// 3/2·ρ·C_dA·v². A motor that holds its cut-off speed answers less, so these bound what it does.
/// Unit: kilograms, kilograms per cubic metre; the load's rolling coefficient and drag area in m².
/// Source: mass 105 kg, C_rr 0.009, C_dA 0.6 m², ρ 1.2 kg/m³ where nothing is known: house values.
record RoadPrior(double massKg, double airKgPerM3) {
    static final RoadLoad LOAD = new RoadLoad(0.009, 0.6);
    /// Where nobody asks what was ridden.
    static final RoadPrior USUAL = new RoadPrior(105, 1.2);

    /// With what a run moved and through which air.
    static RoadPrior of(Setting setting) {
        return new RoadPrior(setting.massKg(), setting.airKgPerM3());
    }

    private double stiffness(double speedMps) {
        double rollingN = massKg * 9.80665 * LOAD.rollingCoefficient();
        return rollingN + 1.5 * airKgPerM3 * LOAD.dragAreaM2() * speedMps * speedMps;
    }

    /// Speed lost for each metre per second of head wind, a ratio.
    double perHeadWind(double speedMps) {
        return airKgPerM3 * LOAD.dragAreaM2() * speedMps * speedMps / stiffness(speedMps);
    }

    /// Speed gained for each watt at the wheel, in m/s.
    double perWatt(double speedMps) {
        return 1 / stiffness(speedMps);
    }
}
