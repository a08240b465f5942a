package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.recording.motion.WanderMixture.MeanSpeed;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.Figure.Narrowing;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.LevelRole;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunResult.RunValue;
import org.measuredmile.trial.Scatter;
import org.measuredmile.trial.TrialInput;

/// From passes to one figure a level: the mean of the directions, with a budget that says what is of this day's runs,
/// what of the wind and the instrument, and what of the day.
final class LevelFigures {
    static final String USUAL_LOAD = "answer to wind and effort by a usual road load: no coast-down was used";

    private final TrialInput input;
    private final AssistSpeedRules rules;
    private final CutOffs cutOffs;
    private final Scatter scatter;
    private final boolean scatterIsStated;

    LevelFigures(TrialInput input, AssistSpeedRules rules, CutOffs cutOffs) {
        this.input = input;
        this.cutOffs = cutOffs;
        this.rules = rules;
        var spec = AssistSpeed.DECLARATION.requireFigure(AssistSpeed.SPEED);
        this.scatter = input.scatter().of(spec);
        this.scatterIsStated = input.scatter().byFigure().containsKey(spec.id());
    }

    /// What one stretch of nobody's level gives by itself: its speed with this day's and any day's uncertainty.
    List<RunValue> alone(MeanSpeed mean, SpeedScale scale, String run) {
        double wind = windMps(run.substring(0, run.lastIndexOf('/'))).orElse(rules.windWhenUnknownMps());
        var budget = new Budget(
                List.of(Contribution.typeA("wander", mean.standardUncertaintyMps(), mean.degreesOfFreedom())));
        for (var part : WindPart.of(RoadPrior.USUAL, mean.speedMps(), wind, 1, 1)) {
            budget = budget.plus(part);
        }
        for (var part : scale.contributions(mean.speedMps())) {
            budget = budget.plus(part);
        }
        var anyDay = budget.plus(EffortPart.unrecorded(RoadPrior.USUAL, mean.speedMps()))
                .plus(Contribution.typeB("between days", scatter.betweenDaysAt(mean.speedMps())))
                .around(mean.speedMps());
        var thisDay = budget.around(mean.speedMps());
        return List.of(
                RecordedLevels.value("speed", "speed, this day", mean.speedMps(), thisDay.standard()),
                RecordedLevels.value("speed-any-day", "speed, any day", mean.speedMps(), anyDay.standard()));
    }

    /// The figures, in the order in which their levels were first ridden.
    List<Figure> of(List<LevelPass> passes, List<RunResult> results) {
        var figures = new ArrayList<Figure>();
        byLevel(passes).forEach((level, all) -> figures.add(figure(level, all, results)));
        return figures;
    }

    static Map<Variant, List<LevelPass>> byLevel(List<LevelPass> passes) {
        Map<Variant, List<LevelPass>> byLevel = new LinkedHashMap<>();
        for (var pass : passes) {
            byLevel.computeIfAbsent(pass.variant(), _ -> new ArrayList<>()).add(pass);
        }
        return byLevel;
    }

    private Figure figure(Variant level, List<LevelPass> passes, List<RunResult> results) {
        var directions = byDirection(passes);
        double measured = 0;
        double wander = 0;
        double fourth = 0;
        var findings = new ArrayList<Finding>();
        for (var way : directions.values()) {
            var mean = PassMean.of(way);
            measured += mean.speedMps() / directions.size();
            double u = mean.standardUncertaintyMps() / directions.size();
            wander += u * u;
            fourth += u * u * u * u / mean.degreesOfFreedom();
            mean.disagreement(AssistSpeed.levelWords(level)).ifPresent(findings::add);
        }
        var typeA = Contribution.typeA(
                "wander within " + passes.size() + (passes.size() == 1 ? " passage" : " passages"),
                Math.sqrt(wander),
                Math.max(1, wander * wander / fourth));
        var ridden = StillAir.Ridden.of(passes);
        boolean isPaired = ridden.isPaired();
        double oneWay = isPaired ? 0 : WindPart.oneWayShare(passes);
        var wind = windMps(passes);
        var still = StillAir.of(input, level, ridden, cutOffs);
        double value = measured * still.ratio();
        var common = new ArrayList<Contribution>(passes.getFirst().scale().contributions(value));
        common.addAll(still.parts());
        var assumed = new ArrayList<String>();
        noteAssumptions(passes, wind, assumed);
        assumed.addAll(still.assumed());
        var thisDay = new Budget(with(typeA, common));
        var daily = daily(level, passes, value, assumed);
        var anyDay = thisDay;
        for (var part : daily) {
            anyDay = anyDay.plus(part);
        }
        noteFindings(passes, isPaired, oneWay, wind, findings);
        var key = new FigureKey(AssistSpeed.SPEED, LevelRole.with(level, input.bike(), input.runs()));
        return new Figure(
                key,
                org.measuredmile.quantity.QuantityKind.SPEED,
                AssistSpeed.ID,
                AssistSpeed.DECLARATION.version(),
                value,
                BearingInterval.around(thisDay, value),
                BearingInterval.around(anyDay, value),
                runsOf(level, results),
                anyDay.byWeight(),
                narrowings(value, anyDay, typeA, isPaired),
                assumed,
                List.of(),
                findings,
                List.of());
    }

    static SortedMap<String, List<LevelPass>> byDirection(List<LevelPass> passes) {
        var ways = new TreeMap<String, List<LevelPass>>();
        for (var pass : passes) {
            ways.computeIfAbsent(pass.direction(), _ -> new ArrayList<>()).add(pass);
        }
        return ways;
    }

    private static List<Contribution> with(Contribution first, List<Contribution> others) {
        var all = new ArrayList<Contribution>();
        all.add(first);
        all.addAll(others);
        return all;
    }

    private OptionalDouble windMps(String run) {
        return input.readings().of(run, "wind-speed").stream()
                .mapToDouble(read -> read.si())
                .max();
    }

    private OptionalDouble windMps(List<LevelPass> passes) {
        return passes.stream()
                .flatMap(pass -> input.readings().of(pass.run().id(), "wind-speed").stream())
                .mapToDouble(read -> read.si())
                .max();
    }

    private void noteAssumptions(List<LevelPass> passes, OptionalDouble wind, List<String> assumed) {
        String scale = passes.getFirst().scale().assumed();
        if (!scale.isEmpty()) {
            assumed.add(scale);
        }
        if (wind.isEmpty()) {
            assumed.add("wind up to " + AssistSpeedWords.speed(rules.windWhenUnknownMps()) + ": none was written down");
        }
        assumed.add(USUAL_LOAD);
    }

    /// What differs from day to day: the rider's effort where pedals are turned, and all that the scatter record
    /// says.
    private List<Contribution> daily(Variant level, List<LevelPass> passes, double value, List<String> assumed) {
        var daily = new ArrayList<Contribution>();
        daily.add(new Contribution(
                "between days",
                Contribution.Evaluation.B,
                scatter.betweenDaysAt(value),
                scatter.dayDegreesOfFreedom(),
                ""));
        if (!level.has("drive", "throttle") && !scatterIsStated) {
            var road =
                    RoadPrior.of(RoadSetting.of(input, passes.getFirst().run()).setting());
            boolean recorded = passes.stream()
                    .allMatch(pass -> RecordedLevels.recordedPower(pass).isPresent());
            daily.add(recorded ? EffortPart.recorded(road, value) : EffortPart.unrecorded(road, value));
            assumed.add(recorded ? EffortPart.recordedWords(passes) : EffortPart.UNRECORDED_WORDS);
        }
        return daily;
    }

    private void noteFindings(
            List<LevelPass> passes, boolean isPaired, double oneWay, OptionalDouble wind, List<Finding> findings) {
        var place = passes.getFirst().run().place();
        if (!isPaired && oneWay > 0.5) {
            findings.add(Finding.warning(
                    "unpaired",
                    place,
                    "one direction only: wind and slope are in the figure",
                    "ride the same stretch the other way too"));
        }
        if (wind.isEmpty()) {
            findings.add(Finding.warning(
                    "wind-missing", place, "no wind was written down, so the interval allows for some", "measure it"));
        }
        if (passes.stream().anyMatch(pass -> pass.run().state() == Run.State.PROPOSED)) {
            findings.add(Finding.warning(
                    "not-confirmed",
                    place,
                    "runs found by the tool are in this figure and nobody has confirmed them",
                    "confirm, move or void each run"));
        }
    }

    private static List<FigureRun> runsOf(Variant level, List<RunResult> results) {
        return results.stream()
                .filter(result -> LevelRole.levelOf(result.variant()).equals(level))
                .filter(result -> !result.run().contains("/"))
                .map(result -> new FigureRun(
                        result.run(),
                        result.state(),
                        result.counted(),
                        result.reason(),
                        result.value("speed")
                                .map(one -> OptionalDouble.of(one.value()))
                                .orElse(OptionalDouble.empty())))
                .toList();
    }

    private List<Narrowing> narrowings(double value, Budget anyDay, Contribution typeA, boolean isPaired) {
        var narrowings = new ArrayList<Narrowing>();
        narrowings.add(narrowing("twice as many passages", value, anyDay, typeA, Math.sqrt(0.5)));
        var largest = anyDay.byWeight().getFirst();
        narrowings.add(narrowing(largest.input() + " known twice as well", value, anyDay, largest, 0.5));
        if (!isPaired) {
            anyDay.contributions().stream()
                    .filter(part -> part.input().equals(WindPart.ALONG))
                    .findFirst()
                    .ifPresent(part -> narrowings.add(narrowing("the other direction too", value, anyDay, part, 0)));
        }
        narrowings.sort(
                java.util.Comparator.comparingDouble(one -> one.intervalThen().halfWidth()));
        return narrowings;
    }

    private static Narrowing narrowing(String what, double value, Budget budget, Contribution which, double factor) {
        var then = new Budget(budget.contributions().stream()
                .map(part -> part.equals(which)
                        ? new Contribution(
                                part.input(),
                                part.evaluation(),
                                part.standardUncertainty() * factor,
                                part.degreesOfFreedom(),
                                part.shared())
                        : part)
                .toList());
        return new Narrowing(what, BearingInterval.around(then, value).interval95());
    }
}
