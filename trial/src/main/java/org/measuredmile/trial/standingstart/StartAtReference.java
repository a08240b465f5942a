package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.roadload.Thrust;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.MatchedTails;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;

/// A time or a distance brought to the reference rider and air: multiplied by what the road-load model says of the
/// ratio, which hardly depends on what the model is fed.
///
/// The thrust is that of the day's own starts; where only a watch was used, one that takes the time that was measured,
/// with a power limit that sets in at 3.3 ± 1.2 m/s.
final class StartAtReference {
    private static final double KNEE_MPS = 3.3;
    private static final double KNEE_SD_MPS = 1.2;
    /// How well a day's starts tell launch force and power limit, relative. House.
    private static final double THRUST_SD = 0.05;

    private final StartPower moved;
    private final Optional<StartThrust> measured;

    StartAtReference(StartPower moved, Optional<StartThrust> measured) {
        this.moved = moved;
        this.measured = measured.filter(StartThrust::isKnown);
    }

    /// What the ratio was worked out from.
    private record Inputs(double launchN, double powerW, RoadLoad load, Setting run, Setting reference) {
        double ratio(double toMps, boolean ofDistance) {
            var thrust = Thrust.ofPower(launchN, powerW);
            var there = new StartModel(thrust, load, reference);
            var here = new StartModel(thrust, load, run);
            return ofDistance ? there.distanceM(toMps) / here.distanceM(toMps) : there.timeS(toMps) / here.timeS(toMps);
        }
    }

    /// The figure at reference conditions; nothing where the model's thrust does not reach the speed.
    ///
    /// Unit: `underFullThrust` is the share of a time that is not build-up.
    Optional<Figure> of(Figure asRidden, Target target, double underFullThrust) {
        boolean ofDistance = asRidden.key().figure().endsWith("distance-to");
        double toMps = target.speedMps();
        double knee = KNEE_MPS;
        var best = inputs(asRidden.value(), toMps, ofDistance, knee);
        double ratio = best.ratio(toMps, ofDistance);
        if (!Double.isFinite(ratio)) {
            return Optional.empty();
        }
        double times = 1 + (ratio - 1) * underFullThrust;
        double correction = 0;
        var changed = changed(best);
        if (measured.isEmpty()) {
            changed.add(inputs(asRidden.value(), toMps, ofDistance, knee + KNEE_SD_MPS));
        }
        for (var one : changed) {
            double other = one.ratio(toMps, ofDistance);
            correction = StrictMath.hypot(
                    correction, Double.isFinite(other) ? Math.abs(other - ratio) * underFullThrust : 0.1 * ratio);
        }
        return Optional.of(brought(asRidden, times, correction * asRidden.value()));
    }

    private Inputs inputs(double value, double toMps, boolean ofDistance, double kneeMps) {
        double launch = measured.map(StartThrust::launchN).orElseGet(() -> solved(value, toMps, ofDistance, kneeMps));
        double power = measured.map(StartThrust::powerW).orElse(launch * kneeMps);
        return new Inputs(launch, power, moved.load().mean(), moved.setting(), moved.atReference());
    }

    /// The launch force whose model takes the time, or the distance, that was measured.
    private double solved(double value, double toMps, boolean ofDistance, double kneeMps) {
        double low = 5;
        double high = 5000;
        for (int i = 0; i < 60; i++) {
            double middle = Math.sqrt(low * high);
            var model = new StartModel(
                    Thrust.ofPower(middle, middle * kneeMps), moved.load().mean(), moved.setting());
            double said = ofDistance ? model.distanceM(toMps) : model.timeS(toMps);
            if (said > value) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /// The inputs each changed by a standard uncertainty.
    private List<Inputs> changed(Inputs best) {
        var all = new ArrayList<Inputs>();
        var load = best.load();
        var known = moved.load();
        all.add(new Inputs(best.launchN() * (1 + THRUST_SD), best.powerW(), load, best.run(), best.reference()));
        all.add(new Inputs(best.launchN(), best.powerW() * (1 + THRUST_SD), load, best.run(), best.reference()));
        all.add(with(best, new RoadLoad(load.rollingCoefficient() + known.rollingSd(), load.dragAreaM2())));
        all.add(with(best, new RoadLoad(load.rollingCoefficient(), load.dragAreaM2() + known.dragAreaSdM2())));
        // A rider who was heavier than thought changes the run only, a heavier bike both.
        double kg = best.run().massKg();
        all.add(new Inputs(
                best.launchN(), best.powerW(), load, best.run().withMass(kg + moved.riderSdKg()), best.reference()));
        all.add(new Inputs(
                best.launchN(),
                best.powerW(),
                load,
                best.run().withMass(kg + moved.bikeSdKg()),
                best.reference().withMass(best.reference().massKg() + moved.bikeSdKg())));
        all.add(new Inputs(
                best.launchN(),
                best.powerW(),
                load,
                best.run().inAir(best.run().airKgPerM3() + moved.airSdKgPerM3()),
                best.reference()));
        return all;
    }

    private static Inputs with(Inputs best, RoadLoad load) {
        return new Inputs(best.launchN(), best.powerW(), load, best.run(), best.reference());
    }

    private Figure brought(Figure asRidden, double times, double correctionSd) {
        double value = asRidden.value() * times;
        var contributions = new ArrayList<Contribution>();
        asRidden.budget().forEach(one -> contributions.add(one.through(times)));
        contributions.add(Contribution.typeB("correction to reference conditions", correctionSd));
        var anyDay = new Budget(contributions);
        var thisDay = new Budget(contributions.stream()
                .filter(one -> !one.input().equals("between days"))
                .toList());
        var assumed = new ArrayList<>(asRidden.assumed());
        moved.assumed().stream().filter(one -> !assumed.contains(one)).forEach(assumed::add);
        if (measured.isEmpty()) {
            assumed.add("the power limit sets in at 3.3 ± 1.2 m/s: no trace tells it");
        }
        contributions.sort(
                Comparator.comparingDouble(Contribution::standardUncertainty).reversed());
        return moved.using(new Figure(
                new FigureKey(asRidden.key().figure(), asRidden.key().variant().with("at", "reference")),
                asRidden.kind(),
                asRidden.trial(),
                asRidden.version(),
                value,
                MatchedTails.around(thisDay, value),
                MatchedTails.around(anyDay, value),
                asRidden.runs().stream().map(run -> scaled(run, times)).toList(),
                contributions,
                List.of(),
                assumed,
                asRidden.used(),
                asRidden.findings(),
                asRidden.inputs()));
    }

    private static FigureRun scaled(FigureRun run, double times) {
        var value = run.value().isPresent() ? OptionalDouble.of(run.value().getAsDouble() * times) : run.value();
        return new FigureRun(run.run(), run.state(), run.counted(), run.reason(), value);
    }
}
