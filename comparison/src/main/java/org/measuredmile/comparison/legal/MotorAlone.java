package org.measuredmile.comparison.legal;

import java.util.Optional;
import org.measuredmile.comparison.KeptLoad;
import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Air;
import org.measuredmile.roadload.Balance;
import org.measuredmile.roadload.Gravity;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.LoadPrior;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.UsedLoad;

/// A speed by the motor alone brought to the rider that a text fixes, on the level, in still air of 1.225 kg/m³.
///
/// The figure at reference conditions is free of wind and stands for a known rider and air; from there the bike holds
/// the same power at the wheel. Where its controller ends the motor at a set speed, rider and air move nothing and
/// nothing is corrected.
/// Unit: m/s. The correction's own uncertainty (road load, mass of the bike) is added to the interval.
record MotorAlone(double speedMps, Uncertainty known, boolean isGoverned) {
    /// The finding of a figure at reference conditions that a controller, not power, holds.
    static final String GOVERNED = "speed-governed";
    /// Sea level of the standard atmosphere: the text names no air.
    static final double AIR_KG_PER_M3 = 1.225;

    private static final double NORMAL_95 = 1.959964;

    /// Empty where the figure at reference conditions is not there or its power cannot be balanced.
    static Optional<MotorAlone> of(Evidence evidence, Result asRidden, double riderKg) {
        return evidence.atReference(asRidden).flatMap(result -> brought(evidence, result.figure(), riderKg));
    }

    private static Optional<MotorAlone> brought(Evidence evidence, Figure figure, double riderKg) {
        boolean isGoverned =
                figure.findings().stream().anyMatch(one -> one.code().equals(GOVERNED));
        if (isGoverned) {
            return Optional.of(new MotorAlone(figure.value(), figure.anyDay(), true));
        }
        var weighed = evidence.latestOf(new FigureKey("weighin.mass", Variant.of("battery", "in")))
                .map(Result::figure);
        double bikeKg = weighed.map(Figure::value).orElse(RoadSetting.BIKE_KG);
        double bikeSdKg = weighed.map(one -> one.anyDay().standard()).orElse(RoadSetting.BIKE_SD_KG);
        var load = load(evidence);
        var best = ratio(load.mean(), bikeKg, riderKg, figure.value());
        if (best.isEmpty()) {
            return Optional.empty();
        }
        var mean = load.mean();
        double byRolling = moved(best.get(), figure, more(mean, load.rollingSd(), 0), bikeKg, riderKg);
        double byArea = moved(best.get(), figure, more(mean, 0, load.dragAreaSdM2()), bikeKg, riderKg);
        double byMass = moved(best.get(), figure, mean, bikeKg + bikeSdKg, riderKg);
        double byLoad = byRolling * byRolling + byArea * byArea + 2 * load.correlation() * byRolling * byArea;
        double sd = Math.sqrt(Math.max(0, byLoad) + byMass * byMass);
        double value = figure.value() * best.get();
        return Optional.of(new MotorAlone(value, around(value, figure, best.get(), sd), false));
    }

    private static Uncertainty around(double value, Figure figure, double ratio, double sd) {
        var measured = figure.anyDay();
        double below = (figure.value() - measured.interval95().low()) * ratio;
        double above = (measured.interval95().high() - figure.value()) * ratio;
        return new Uncertainty(
                StrictMath.hypot(measured.standard() * ratio, sd),
                measured.degreesOfFreedom(),
                new Interval(
                        value - StrictMath.hypot(below, NORMAL_95 * sd),
                        value + StrictMath.hypot(above, NORMAL_95 * sd)));
    }

    private static KnownLoad load(Evidence evidence) {
        var rolling = evidence.latest(UsedLoad.ROLLING);
        var area = evidence.latest(UsedLoad.DRAG_AREA);
        return rolling.isEmpty() || area.isEmpty()
                ? LoadPrior.of(LoadPrior.Tyre.UNKNOWN, LoadPrior.Posture.UNKNOWN)
                : KeptLoad.of(rolling.get(), area.get());
    }

    private static RoadLoad more(RoadLoad load, double rolling, double areaM2) {
        return new RoadLoad(load.rollingCoefficient() + rolling, load.dragAreaM2() + areaM2);
    }

    /// How far the speed moves when road load or bike are others.
    private static double moved(double best, Figure figure, RoadLoad load, double bikeKg, double riderKg) {
        return (ratio(load, bikeKg, riderKg, figure.value()).orElse(best) - best) * figure.value();
    }

    /// The speed of the wanted rider and air over that at reference, at the same power.
    private static Optional<Double> ratio(RoadLoad load, double bikeKg, double riderKg, double referenceMps) {
        var reference = new Setting(
                bikeKg + RoadSetting.REFERENCE_RIDER_KG,
                RoadSetting.TURNING_KG,
                Air.REFERENCE.densityKgPerM3(),
                Gravity.STANDARD_MPS2);
        var wanted = new Setting(bikeKg + riderKg, RoadSetting.TURNING_KG, AIR_KG_PER_M3, Gravity.STANDARD_MPS2);
        return atSamePower(load, reference, wanted, referenceMps);
    }

    /// The ratio of steady speeds on the level in still air at one power, of two settings.
    static Optional<Double> atSamePower(RoadLoad load, Setting from, Setting to, double fromMps) {
        double powerW = load.forceN(from, fromMps) * fromMps;
        var there = Balance.speedMps(load, to, v -> powerW / v, 0, 0);
        return there.isPresent() ? Optional.of(there.getAsDouble() / fromMps) : Optional.empty();
    }
}
