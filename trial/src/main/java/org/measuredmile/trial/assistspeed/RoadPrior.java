package org.measuredmile.trial.assistspeed;

/// How a bike at constant power answers wind and effort, by the usual road load: what stands in until a coast-down was
/// ridden.
///
/// At constant power P = v·(m·g·C_rr + ½·ρ·C_dA·(v + w)²): dv/dw = −ρ·C_dA·v²/N and dv/dP = 1/N with
/// N = m·g·C_rr + 3/2·ρ·C_dA·v². A motor that holds its cut-off speed answers less, so these bound what it does.
/// Unit: kilograms, newtons, square metres, kilograms per cubic metre.
/// Source: mass 105 kg, C_rr 0.009, C_dA 0.6 m², ρ 1.2 kg/m³: house values.
final class RoadPrior {
    private static final double ROLLING_N = 105 * 9.80665 * 0.009;
    private static final double DENSITY_TIMES_AREA = 1.2 * 0.6;

    private RoadPrior() {}

    private static double stiffness(double speedMps) {
        return ROLLING_N + 1.5 * DENSITY_TIMES_AREA * speedMps * speedMps;
    }

    /// Speed lost for each metre per second of head wind, a ratio.
    static double perHeadWind(double speedMps) {
        return DENSITY_TIMES_AREA * speedMps * speedMps / stiffness(speedMps);
    }

    /// Speed gained for each watt at the wheel, in m/s.
    static double perWatt(double speedMps) {
        return 1 / stiffness(speedMps);
    }
}
