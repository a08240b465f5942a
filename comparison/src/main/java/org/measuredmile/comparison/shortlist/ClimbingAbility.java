package org.measuredmile.comparison.shortlist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.measuredmile.comparison.KeptLoad;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.quantity.budget.MonteCarlo;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Air;
import org.measuredmile.roadload.Balance;
import org.measuredmile.roadload.Gravity;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.roadload.Thrust;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.UsedLoad;

/// The steepest grade on which a bike moves off with a rider and then holds a walking pace, by the thrust of its own
/// standing starts: the lesser of one force and one power over the speed.
///
/// Formula: thrust = m·g·(sin θ + C_rr·cos θ) + drag, solved for tan θ at rest and at 5 km/h; the lesser of the two.
/// Drawn from what is known of launch force and power limit (with their correlation), mass and road load, on any day.
/// Shape: `words` say which drive it is, `assumed` what nobody measured. Whether a motor would overheat on a long climb
/// is not asked.
record ClimbingAbility(MonteCarlo grades, String words, List<String> assumed) {
    /// Holding on means at least this pace. House.
    static final double PACE_MPS = 5 / 3.6;

    private static final int DRAWS = 4_000;
    private static final Seed SEED = new Seed(20_310_504).child("climbs");
    private static final String LAUNCH = "standingstart.launch-force";
    private static final String POWER = "standingstart.power-limit";
    /// All that it is worked out from.
    static final List<String> FIGURES =
            List.of(LAUNCH, POWER, RoadSetting.WEIGHED, UsedLoad.ROLLING, UsedLoad.DRAG_AREA);

    /// The ability of a bike; empty when no standing start told its thrust.
    static Optional<ClimbingAbility> of(TestedBike bike, double riderKg) {
        return of(bike, riderKg, "throttle", "by throttle alone")
                .or(() -> of(bike, riderKg, "pedal", "with its rider pedalling as in the standing starts"));
    }

    private static Optional<ClimbingAbility> of(TestedBike bike, double riderKg, String drive, String words) {
        var launch = result(bike, LAUNCH, Variant.of("drive", drive));
        var power = result(bike, POWER, Variant.of("drive", drive));
        if (launch.isEmpty() || power.isEmpty()) {
            return Optional.empty();
        }
        var assumed = new ArrayList<String>();
        var mass =
                result(bike, RoadSetting.WEIGHED, Variant.of("battery", "in")).map(Result::figure);
        if (mass.isEmpty()) {
            assumed.add("mass of the bike: " + RoadSetting.MASS_STAND_IN);
        }
        var load = load(bike, assumed);
        var draw = new Drawn(
                launch.get().figure(),
                power.get().figure(),
                correlation(launch.get(), power.get()),
                mass,
                load,
                riderKg);
        var grades = MonteCarlo.of(draw::steepest, SEED.child(bike.bike().id()), DRAWS);
        return Optional.of(new ClimbingAbility(grades, words, assumed));
    }

    /// As the day's reduction said; where nobody kept that, as the budgets tell.
    private static double correlation(Result launch, Result power) {
        return launch.correlation(power)
                .orElseGet(() -> Correlation.byInputs(launch.figure(), power.figure(), Correlation::ofScatter));
    }

    private static Optional<Result> result(TestedBike bike, String id, Variant variant) {
        return bike.latest(new FigureKey(id, variant));
    }

    private static KnownLoad load(TestedBike bike, List<String> assumed) {
        var rolling = result(bike, UsedLoad.ROLLING, Variant.NONE);
        var area = result(bike, UsedLoad.DRAG_AREA, Variant.NONE);
        if (rolling.isEmpty() || area.isEmpty()) {
            var usual = UsedLoad.usual(bike.bike().wheelSize());
            assumed.add("road load as usual, no coast-down");
            return usual;
        }
        return KeptLoad.of(rolling.get(), area.get());
    }

    /// The probability that it climbs a grade.
    double probability(double grade) {
        return 1 - grades.shareUpTo(grade);
    }

    /// All that a draw draws from.
    private record Drawn(
            Figure launch, Figure power, double correlation, Optional<Figure> mass, KnownLoad load, double riderKg) {
        double steepest(RandomGenerator random) {
            double first = Draw.normal(random);
            double second = correlation * first + StrictMath.sqrt(1 - correlation * correlation) * Draw.normal(random);
            double force = drawn(launch, first, random);
            double watts = drawn(power, second, random);
            double bikeKg = mass.map(Figure::value).orElse(RoadSetting.BIKE_KG)
                    + mass.map(one -> one.anyDay().standard()).orElse(RoadSetting.BIKE_SD_KG) * Draw.normal(random);
            var setting = new Setting(
                    Math.max(bikeKg, 1) + riderKg, 0, Air.REFERENCE.densityKgPerM3(), Gravity.STANDARD_MPS2);
            return ClimbingAbility.steepest(
                    new Thrust(force, watts, Double.POSITIVE_INFINITY, 1), setting, load.draw(random));
        }

        private static double drawn(Figure figure, double normal, RandomGenerator random) {
            Uncertainty known = figure.anyDay();
            double degrees = Math.max(1, known.degreesOfFreedom());
            double scale = degrees == Double.POSITIVE_INFINITY
                    ? 1
                    : StrictMath.sqrt(degrees / Draw.chiSquared(random, degrees));
            return Math.max(0, figure.value() + known.standard() * scale * normal);
        }
    }

    /// The steepest grade for one thrust, setting and road load.
    static double steepest(Thrust thrust, Setting setting, RoadLoad load) {
        double left = thrust.forceN(PACE_MPS) - load.dragN(setting, PACE_MPS, 0);
        return Math.min(
                Balance.steepestStart(load, setting, thrust.forceN(0)), Balance.steepestStart(load, setting, left));
    }
}
