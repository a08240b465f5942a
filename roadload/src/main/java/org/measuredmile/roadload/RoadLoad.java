package org.measuredmile.roadload;

/// What holds a bike back: rolling coefficient and drag area.
///
/// Formula: F = m·g·(sin θ + C_rr·cos θ) + ½·ρ·C_dA·(v + w)·|v + w|, with tan θ the grade and w the head wind.
/// Unit: `rollingCoefficient` a ratio, `dragAreaM2` square metres; drag of a hub is in the rolling term.
/// Source: Martin, Milliken, Cobb, McFadden and Coggan, Journal of Applied Biomechanics 14 (1998) 276-291, without the
/// bearings' own term, which a coast-down cannot tell from rolling.
public record RoadLoad(double rollingCoefficient, double dragAreaM2) {

    /// The force against the motion, in newtons: negative where the slope or a tail wind pushes.
    ///
    /// Unit: m/s over ground, grade as rise over run, m/s of head wind along the road (negative: a tail wind).
    public double forceN(Setting setting, double speedMps, double grade, double headWindMps) {
        return rollingN(setting, grade) + slopeN(setting, grade) + dragN(setting, speedMps, headWindMps);
    }

    /// On the level in still air.
    public double forceN(Setting setting, double speedMps) {
        return forceN(setting, speedMps, 0, 0);
    }

    public double rollingN(Setting setting, double grade) {
        return setting.massKg() * setting.gravityMps2() * rollingCoefficient / StrictMath.sqrt(1 + grade * grade);
    }

    public static double slopeN(Setting setting, double grade) {
        return setting.massKg() * setting.gravityMps2() * grade / StrictMath.sqrt(1 + grade * grade);
    }

    public double dragN(Setting setting, double speedMps, double headWindMps) {
        double airMps = speedMps + headWindMps;
        return setting.airKgPerM3() * dragAreaM2 * airMps * Math.abs(airMps) / 2;
    }
}
