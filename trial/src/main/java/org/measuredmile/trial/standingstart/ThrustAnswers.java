package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.roadload.RoadLoad;

/// By what shares a fitted force or power changes with the masses and the road load that the fit was given.
///
/// Unit: relative to the force or power, for a kilogram, a kilogram of turning, a rolling coefficient of 1 and a square
/// metre of drag area.
record ThrustAnswers(double perKg, double perTurningKg, double perRolling, double perDragArea) {
    private static final double MORE_KG = 2;
    private static final double MORE_TURNING_KG = 1;
    private static final double MORE_ROLLING = 0.002;
    private static final double MORE_AREA_M2 = 0.05;
    /// Speeds that stand for launch force and power limit where a start does not let itself be fitted anew.
    private static final double LAUNCH_MPS = 2;
    private static final double POWER_MPS = 6;

    /// Those of both figures.
    record Both(ThrustAnswers launch, ThrustAnswers power) {}

    /// By fitting one start anew with a little more of each.
    static Both of(StartRun run, ThrustFit.Outcome.Known known, StartPower moved) {
        var others = new ArrayList<ThrustFit.Outcome.Known>();
        var none = new RoadLoad(0, 0);
        for (var outcome : List.of(
                run.thrust(MORE_KG, 0, none),
                run.thrust(0, MORE_TURNING_KG, none),
                run.thrust(0, 0, new RoadLoad(MORE_ROLLING, 0)),
                run.thrust(0, 0, new RoadLoad(0, MORE_AREA_M2)))) {
            if (outcome instanceof ThrustFit.Outcome.Known other) {
                others.add(other);
            }
        }
        if (others.size() < 4) {
            return new Both(
                    at(LAUNCH_MPS, known.launchN().value(), moved),
                    at(POWER_MPS, known.powerW().value() / POWER_MPS, moved));
        }
        return new Both(
                answers(
                        known.launchN().value(),
                        others.stream().map(one -> one.launchN().value()).toList()),
                answers(
                        known.powerW().value(),
                        others.stream().map(one -> one.powerW().value()).toList()));
    }

    private static ThrustAnswers answers(double value, List<Double> others) {
        return new ThrustAnswers(
                (others.get(0) / value - 1) / MORE_KG,
                (others.get(1) / value - 1) / MORE_TURNING_KG,
                (others.get(2) / value - 1) / MORE_ROLLING,
                (others.get(3) / value - 1) / MORE_AREA_M2);
    }

    private static ThrustAnswers at(double speedMps, double newtons, StartPower moved) {
        double turning = Math.max(0, 1 - moved.roadLoadN(speedMps) / newtons) / moved.effectiveKg();
        double rolling = moved.weightN() / newtons;
        return new ThrustAnswers(
                turning
                        + rolling
                                * moved.load().mean().rollingCoefficient()
                                / moved.setting().massKg(),
                turning,
                rolling,
                moved.setting().airKgPerM3() * speedMps * speedMps / 2 / newtons);
    }

    /// Relative standard uncertainty by the road load, that of the air in it.
    double byRoadLoad(StartPower moved) {
        double byAir = perDragArea
                * moved.load().mean().dragAreaM2()
                * moved.airSdKgPerM3()
                / moved.setting().airKgPerM3();
        return StrictMath.hypot(moved.load().sd(perRolling, perDragArea), byAir);
    }

    /// How far the road load moves both alike, from −1 to 1.
    static Optional<Double> alikeByRoadLoad(Both both, StartPower moved) {
        var load = moved.load();
        double one = load.sd(both.launch.perRolling, both.launch.perDragArea);
        double other = load.sd(both.power.perRolling, both.power.perDragArea);
        double sum = load.sd(
                both.launch.perRolling + both.power.perRolling, both.launch.perDragArea + both.power.perDragArea);
        // The variance of a sum has twice the covariance in it.
        return one * other > 0
                ? Optional.of(Math.clamp((sum * sum - one * one - other * other) / (2 * one * other), -1, 1))
                : Optional.empty();
    }
}
