package org.measuredmile.trial.standingstart;

import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.roadload.Thrust;

/// Time and distance from rest to a speed at full thrust on the level in still air, by the road-load kernel.
///
/// Formula: t = ∫ (m + m_w)/(F(v) − R(v)) dv, s = ∫ v·(m + m_w)/(F(v) − R(v)) dv, by the midpoint rule.
/// Unit: seconds and metres; infinite where the thrust does not reach the speed.
record StartModel(Thrust thrust, RoadLoad load, Setting setting) {
    private static final int STEPS = 400;

    double timeS(double toMps) {
        return integral(toMps, false);
    }

    double distanceM(double toMps) {
        return integral(toMps, true);
    }

    private double integral(double toMps, boolean ofDistance) {
        double step = toMps / STEPS;
        double sum = 0;
        for (int i = 0; i < STEPS; i++) {
            double v = (i + 0.5) * step;
            double surplusN = thrust.forceN(v) - load.forceN(setting, v);
            if (surplusN <= 0) {
                return Double.POSITIVE_INFINITY;
            }
            sum += (ofDistance ? v : 1) * setting.effectiveKg() / surplusN * step;
        }
        return sum;
    }
}
