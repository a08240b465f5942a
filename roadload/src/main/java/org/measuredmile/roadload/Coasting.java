package org.measuredmile.roadload;

/// How a bike slows down that nobody drives or brakes.
///
/// Formula: m_eff·dv/dt = −F(v), with F of [RoadLoad].
public final class Coasting {
    private Coasting() {}

    /// A road and a wind as one direction meets them: grade uphill positive, head wind positive.
    public record Along(double grade, double headWindMps) {
        public static final Along LEVEL_AND_CALM = new Along(0, 0);

        /// The same road and wind, ridden the other way.
        public Along back() {
            return new Along(-grade, -headWindMps);
        }
    }

    /// The speed at each of some times, by the fourth-order Runge-Kutta rule from the first time on.
    ///
    /// Shape: `timesS` rising; the first value is `startMps`; a bike that has come to rest stays there.
    /// Unit: seconds, m/s; `stepS` the longest step.
    public static double[] speedsMps(
            RoadLoad load, Setting setting, Along along, double startMps, double[] timesS, double stepS) {
        var slowing = new Slowing(load, setting, along);
        double[] speeds = new double[timesS.length];
        double v = startMps;
        for (int i = 0; i < timesS.length; i++) {
            if (i > 0) {
                double span = timesS[i] - timesS[i - 1];
                int steps = Math.max(1, (int) Math.ceil(span / stepS - 1e-9));
                for (int k = 0; k < steps && v > 0; k++) {
                    v = slowing.after(v, span / steps);
                }
            }
            speeds[i] = Math.max(0, v);
        }
        return speeds;
    }

    /// The equation's constants, so that the inner loop has none to compute.
    private static final class Slowing {
        private final double constant;
        private final double square;
        private final double windMps;

        Slowing(RoadLoad load, Setting setting, Along along) {
            constant = (load.rollingN(setting, along.grade()) + RoadLoad.slopeN(setting, along.grade()))
                    / setting.effectiveKg();
            square = setting.airKgPerM3() * load.dragAreaM2() / 2 / setting.effectiveKg();
            windMps = along.headWindMps();
        }

        private double rate(double v) {
            double air = v + windMps;
            return -(constant + square * air * Math.abs(air));
        }

        double after(double v, double h) {
            double k1 = rate(v);
            double k2 = rate(v + h / 2 * k1);
            double k3 = rate(v + h / 2 * k2);
            double k4 = rate(v + h * k3);
            return v + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
        }
    }

    /// The time to slow from one speed to another on the level in still air, in closed form, in seconds.
    ///
    /// Formula: t = m_eff/√(AB)·[atan(v₁√(B/A)) − atan(v₂√(B/A))], A = m·g·C_rr, B = ½ρC_dA.
    public static double timeS(RoadLoad load, Setting setting, double fromMps, double toMps) {
        double a = load.rollingN(setting, 0);
        double b = setting.airKgPerM3() * load.dragAreaM2() / 2;
        double root = StrictMath.sqrt(b / a);
        return setting.effectiveKg()
                / StrictMath.sqrt(a * b)
                * (StrictMath.atan(fromMps * root) - StrictMath.atan(toMps * root));
    }

    /// The way meanwhile, in metres.
    ///
    /// Formula: s = m_eff/(2B)·ln[(A + B·v₁²)/(A + B·v₂²)].
    public static double distanceM(RoadLoad load, Setting setting, double fromMps, double toMps) {
        double a = load.rollingN(setting, 0);
        double b = setting.airKgPerM3() * load.dragAreaM2() / 2;
        return setting.effectiveKg() / (2 * b) * StrictMath.log((a + b * fromMps * fromMps) / (a + b * toMps * toMps));
    }
}
