package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Balance;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;

/// The steepest grade on which a bike moves off, from the force of its standing starts.
///
/// Formula: F = m·g·(sin θ + C_rr·cos θ), solved for tan θ.
/// Shape: as ridden and at the reference mass; nothing without a launch force.
final class SteepestStart {
    private SteepestStart() {}

    static List<Figure> of(TrialInput input, List<ClimbRun> runs) {
        var all = new ArrayList<Figure>();
        for (String drive : List.of("throttle", "pedal")) {
            var launch = input.used().get(new FigureKey(Climb.LAUNCH_FORCE, Variant.of("drive", drive)));
            var run = runs.stream()
                    .filter(one -> one.counts() && one.drive().equals(drive))
                    .findFirst();
            if (launch != null && run.isPresent()) {
                var road = RoadSetting.of(input, run.get().run());
                double riderKg = RoadSetting.riderKg(input, run.get().run());
                var asRidden = Variant.of("drive", drive);
                var load = UsedLoad.of(input);
                all.add(figure(asRidden, launch, road.setting(), road.massSdKg(), load));
                all.add(figure(
                        asRidden.with("at", "reference"), launch, road.atReference(riderKg), road.bikeSdKg(), load));
            }
        }
        return all;
    }

    private static Figure figure(Variant variant, Figure launch, Setting setting, double massSdKg, UsedLoad used) {
        KnownLoad load = used.load();
        double value = Balance.steepestStart(load.mean(), setting, launch.value());
        DoubleUnaryOperator byForce = n -> Balance.steepestStart(load.mean(), setting, launch.value() + n) - value;
        double byMass =
                Balance.steepestStart(load.mean(), setting.withMass(setting.massKg() + massSdKg), launch.value())
                        - value;
        double byRolling = Balance.steepestStart(
                        new RoadLoad(
                                load.mean().rollingCoefficient() + load.rollingSd(),
                                load.mean().dragAreaM2()),
                        setting,
                        launch.value())
                - value;
        var others = new Budget(List.of(
                Contribution.typeB("mass of bike and rider", Math.abs(byMass)),
                new Contribution(
                        load.assumed() ? "rolling (assumed)" : "rolling by the coast-down",
                        Contribution.Evaluation.B,
                        Math.abs(byRolling),
                        load.degreesOfFreedom(),
                        "")));
        var thisDay = others.plus(of(byForce, launch.thisDay()));
        var anyDay = others.plus(of(byForce, launch.anyDay()));
        return new Figure(
                new FigureKey("climb.steepest-start", variant),
                QuantityKind.RATIO,
                Climb.DECLARATION.id(),
                Climb.DECLARATION.version(),
                value,
                thisDay.around(value),
                anyDay.around(value),
                List.of(),
                anyDay.byWeight(),
                List.of(),
                used.assumed(),
                List.of(launch.asUsed()),
                List.of(),
                List.of());
    }

    private static Contribution of(DoubleUnaryOperator byForce, Uncertainty launch) {
        double sd = Math.abs(byForce.applyAsDouble(launch.standard()));
        double degrees = Math.max(1, launch.degreesOfFreedom());
        return new Contribution("launch force", Contribution.Evaluation.B, sd, degrees, "");
    }
}
