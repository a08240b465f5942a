package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;

/// The speeds at reference conditions: the reference rider in the reference air, level and without wind, at the power
/// that the wheel had; as measured where a controller holds them.
///
/// A speed that a controller holds is left as it was measured; where one may hold it, half the correction is in the
/// budget: see [CutOffs].
final class LevelsAtReference {
    static final String GOVERNED = "speed-governed";
    private final TrialInput input;
    private final CutOffs cutOffs;
    private final UsedLoad used;

    LevelsAtReference(TrialInput input, CutOffs cutOffs) {
        this.input = input;
        this.cutOffs = cutOffs;
        this.used = UsedLoad.of(input);
    }

    List<Figure> of(List<Figure> asRidden, List<LevelPass> passes) {
        var all = new ArrayList<Figure>();
        var byLevel = LevelFigures.byLevel(passes);
        for (var figure : asRidden) {
            var variant = figure.key().variant();
            byLevel.forEach((level, ridden) -> {
                if (variant.covers(level)) {
                    of(figure, ridden).ifPresent(all::add);
                }
            });
        }
        return all;
    }

    private Optional<Figure> of(Figure figure, List<LevelPass> passes) {
        var level = figure.key().variant();
        var ridden = StillAir.Ridden.of(passes);
        double speedMps = ridden.meanMps();
        double share = cutOffs.share(level, speedMps);
        if (cutOffs.isHeld(level, speedMps)) {
            return Optional.of(governed(figure, share));
        }
        var wind = RoadWind.of(input, ridden.ways(), ridden.isPaired());
        var run = passes.getFirst().run();
        var road = RoadSetting.of(input, run);
        double riderKg = RoadSetting.riderKg(input, run);
        var model = new SteadyPower(used.load().mean(), road.setting(), road.atReference(riderKg), wind.headsMps());
        double ratio = model.ratio(speedMps);
        if (!Double.isFinite(ratio)) {
            return Optional.empty();
        }
        var parts = new ArrayList<Contribution>();
        figure.budget().stream()
                .filter(part -> !WindPart.isOne(part) && !part.input().startsWith("whether"))
                .forEach(part -> parts.add(part.through(speedMps * ratio / figure.value())));
        parts.addAll(WindPart.left(model, wind, speedMps));
        parts.addAll(correction(model, road, speedMps, ratio));
        var assumed = assumed(figure, road);
        if (cutOffs.mayBeHeld(level, speedMps)) {
            boolean isNoted = !Double.isNaN(share);
            parts.add(Contribution.typeB(
                    isNoted ? "whether power or the controller holds it" : "whether a controller holds it",
                    Math.abs(ratio - 1) * speedMps / 2));
            if (!isNoted) {
                assumed.add("held by its power and not by a controller: no cut-off was noted");
            }
        }
        return Optional.of(brought(figure, ridden, ratio, new Open(parts, assumed), road));
    }

    private static Figure governed(Figure figure, double share) {
        return at(figure, figure.value(), figure.budget(), figure.assumed(), List.of(), 1)
                .noting(List.of(Finding.note(
                        GOVERNED,
                        figure.findings().isEmpty()
                                ? org.measuredmile.recording.Place.NOWHERE
                                : figure.findings().getFirst().place(),
                        String.format(
                                Locale.ROOT,
                                "at %.0f %% of the cut-off speed the controller holds it: rider and air do not move "
                                        + "it, and nothing is corrected",
                                100 * share))));
    }

    /// What load, masses and air leave open of the correction.
    private List<Contribution> correction(SteadyPower model, RoadSetting road, double speedMps, double ratio) {
        KnownLoad load = used.load();
        RoadLoad mean = load.mean();
        var here = model.ridden();
        var there = model.reference();
        double byRolling = model.with(new RoadLoad(mean.rollingCoefficient() + load.rollingSd(), mean.dragAreaM2()))
                        .ratio(speedMps)
                - ratio;
        double byArea = model.with(new RoadLoad(mean.rollingCoefficient(), mean.dragAreaM2() + load.dragAreaSdM2()))
                        .ratio(speedMps)
                - ratio;
        double loadSd = load.sd(perUnit(byRolling, load.rollingSd()), perUnit(byArea, load.dragAreaSdM2()));
        double rider = model.with(here.withMass(here.massKg() + road.riderSdKg()), there)
                        .ratio(speedMps)
                - ratio;
        double bike = model.with(
                                here.withMass(here.massKg() + road.bikeSdKg()),
                                there.withMass(there.massKg() + road.bikeSdKg()))
                        .ratio(speedMps)
                - ratio;
        double air = model.with(here.inAir(here.airKgPerM3() + road.airSdKgPerM3()), there)
                        .ratio(speedMps)
                - ratio;
        return List.of(
                new Contribution(
                        "road load, of the correction",
                        Contribution.Evaluation.B,
                        loadSd * speedMps,
                        load.degreesOfFreedom(),
                        ""),
                Contribution.typeB("mass of the rider", Math.abs(rider) * speedMps),
                Contribution.typeB("mass of the bike", Math.abs(bike) * speedMps),
                Contribution.typeB("density of the air", Math.abs(air) * speedMps));
    }

    private static double perUnit(double change, double sd) {
        return sd == 0 ? 0 : change / sd;
    }

    private List<String> assumed(Figure figure, RoadSetting road) {
        var assumed = new ArrayList<String>();
        for (String one : figure.assumed()) {
            if (!one.equals(LevelFigures.USUAL_LOAD) && !one.startsWith(StillAir.TAKEN)) {
                assumed.add(one);
            }
        }
        assumed.addAll(road.assumed());
        assumed.addAll(used.assumed());
        return assumed;
    }

    /// What is open of a figure at reference, and what was assumed.
    private record Open(List<Contribution> parts, List<String> assumed) {}

    private Figure brought(Figure figure, StillAir.Ridden ridden, double ratio, Open open, RoadSetting road) {
        var all = new ArrayList<Figure.Used>(figure.used());
        all.addAll(road.used());
        all.addAll(used.used());
        return at(figure, ridden.meanMps() * ratio, open.parts(), open.assumed(), all, ratio);
    }

    private static Figure at(
            Figure figure,
            double value,
            List<Contribution> parts,
            List<String> assumed,
            List<Figure.Used> used,
            double ratio) {
        var anyDay = new Budget(parts);
        var thisDay = new Budget(parts.stream()
                .filter(part ->
                        !part.input().equals("between days") && !part.input().equals(EffortPart.NAME))
                .toList());
        return new Figure(
                new FigureKey(figure.key().figure(), figure.key().variant().with("at", "reference")),
                figure.kind(),
                figure.trial(),
                figure.version(),
                value,
                BearingInterval.around(thisDay, value),
                BearingInterval.around(anyDay, value),
                figure.runs().stream().map(run -> scaled(run, ratio)).toList(),
                anyDay.byWeight(),
                List.of(),
                assumed,
                used,
                figure.findings().stream()
                        .filter(one -> !one.code().equals("gain") && !one.code().startsWith("levels-"))
                        .toList(),
                List.of());
    }

    private static FigureRun scaled(FigureRun run, double ratio) {
        var value =
                run.value().isPresent() ? OptionalDouble.of(run.value().getAsDouble() * ratio) : OptionalDouble.empty();
        return new FigureRun(run.run(), run.state(), run.counted(), run.reason(), value);
    }
}
