package org.measuredmile.trial.assistspeed;

import java.util.OptionalDouble;
import org.measuredmile.roadload.Balance;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;

/// A bike that holds one power at the wheel: on the day against the head wind of each way, and at reference in still
/// air.
///
/// Formula: P = v·F(v, w), so that the mean over the ways of v(P, wᵢ) is the speed measured; then v(P, 0) in the
/// reference setting.
/// Unit: m/s, watts; a head wind is positive against the rider.
record SteadyPower(RoadLoad load, Setting ridden, Setting reference, double[] headsMps) {
    private static final int STEPS = 60;
    private static final double CLOSE_ENOUGH = 1e-9;

    /// The power at the wheel that gives this mean speed; empty where no power holds the bike so.
    OptionalDouble powerW(double meanSpeedMps) {
        double power = Math.max(1, meanSpeedMps * load.forceN(ridden, meanSpeedMps));
        for (int i = 0; i < STEPS; i++) {
            var mean = meanSpeedMps(power);
            if (mean.isEmpty()) {
                return OptionalDouble.empty();
            }
            double off = meanSpeedMps / mean.getAsDouble();
            // Power goes with the speed to a power between one and three.
            power *= off * off;
            if (Math.abs(off - 1) < CLOSE_ENOUGH) {
                return OptionalDouble.of(power);
            }
        }
        return OptionalDouble.empty();
    }

    OptionalDouble meanSpeedMps(double powerW) {
        double sum = 0;
        for (double head : headsMps) {
            var speed = speedMps(ridden, powerW, head);
            if (speed.isEmpty()) {
                return speed;
            }
            sum += speed.getAsDouble();
        }
        return OptionalDouble.of(sum / headsMps.length);
    }

    OptionalDouble speedMps(Setting setting, double powerW, double headMps) {
        return Balance.speedMps(load, setting, v -> powerW / v, 0, headMps);
    }

    /// The speed at reference over the one measured; NaN where the model has none.
    double ratio(double meanSpeedMps) {
        var power = powerW(meanSpeedMps);
        if (power.isEmpty()) {
            return Double.NaN;
        }
        return speedMps(reference, power.getAsDouble(), 0).orElse(Double.NaN) / meanSpeedMps;
    }

    SteadyPower with(RoadLoad other) {
        return new SteadyPower(other, ridden, reference, headsMps);
    }

    SteadyPower with(Setting here, Setting there) {
        return new SteadyPower(load, here, there, headsMps);
    }

    SteadyPower inStillAir() {
        return new SteadyPower(load, ridden, reference, new double[headsMps.length]);
    }
}
