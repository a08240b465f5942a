package org.measuredmile.roadload;

/// The power that a rider and a motor must give at a steady speed, with wheels and bearings apart: the published
/// equation, for comparison with its validation and with other people's numbers.
///
/// Formula: P = [½ρ(C_dA + F_w)·V_a·|V_a|·V_g + V_g·C_rr·m·g·cos θ + V_g·(91 + 8.7·V_g)·10⁻³ + V_g·m·g·sin θ] / E_c.
/// Unit: `wheelDragAreaM2` is F_w; `chainEfficiency` is E_c, 1 for a motor in the hub.
/// Source: Martin, Milliken, Cobb, McFadden and Coggan, Journal of Applied Biomechanics 14 (1998) 276-291.
public record CyclingPower(RoadLoad load, double wheelDragAreaM2, double chainEfficiency) {
    /// Watts by their causes, before the chain.
    public record Parts(double airW, double rollingW, double bearingsW, double slopeW) {
        public double sumW() {
            return airW + rollingW + bearingsW + slopeW;
        }
    }

    /// The parts at a speed over ground on a grade with a head wind.
    public Parts parts(Setting setting, double speedMps, double grade, double headWindMps) {
        var withWheels = new RoadLoad(load.rollingCoefficient(), load.dragAreaM2() + wheelDragAreaM2);
        return new Parts(
                withWheels.dragN(setting, speedMps, headWindMps) * speedMps,
                load.rollingN(setting, grade) * speedMps,
                speedMps * (91 + 8.7 * speedMps) / 1000,
                RoadLoad.slopeN(setting, grade) * speedMps);
    }

    /// Watts at the pedals or the motor.
    public double powerW(Setting setting, double speedMps, double grade, double headWindMps) {
        return parts(setting, speedMps, grade, headWindMps).sumW() / chainEfficiency;
    }
}
