package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.RunMean;
import org.measuredmile.trial.Scatter;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.standingstart.StandingStartBudget.Counted;
import org.measuredmile.trial.standingstart.StandingStartBudget.Group;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;

/// The figures of a day of starts, each the mean of its runs.
final class StandingStartFigures {
    private final TrialInput input;
    private final StandingStartBudget budget;
    private final SortedMap<String, List<StartRun>> byDrive = new TreeMap<>();

    StandingStartFigures(TrialInput input, List<StartRun> runs) {
        this.input = input;
        this.budget = new StandingStartBudget(input);
        for (var run : runs) {
            byDrive.computeIfAbsent(run.drive(), _ -> new ArrayList<>()).add(run);
        }
    }

    /// The figures, and how those lean on each other that others use together.
    record All(List<Figure> figures, List<Correlation> correlations) {}

    All all() {
        var figures = new ArrayList<Figure>();
        var correlations = new ArrayList<Correlation>();
        byDrive.forEach((drive, runs) -> {
            var thrust = new StartThrust(input, drive, runs);
            for (var target : Target.values()) {
                add(figures, "time-to", drive, target, runs, StartRun::time, budget::ofTime);
                add(figures, "distance-to", drive, target, runs, StartRun::distance, budget::ofDistance);
                add(figures, "ramp-time-to", drive, target, runs, StartRun::rampTime, budget::ofRampTime);
                var variant = Variant.of("drive", drive).with("to", target.id());
                power("mean-power", variant, runs, run -> run.meanPower(target), run -> run.reason(target))
                        .ifPresent(figures::add);
            }
            power("peak-power", Variant.of("drive", drive), runs, StartRun::peakPower, StartRun::reason)
                    .ifPresent(figures::add);
            HighestSpeed.of(input, drive, runs).ifPresent(figures::add);
            thrust.figures().ifPresent(pair -> {
                figures.add(pair.launch());
                figures.add(pair.power());
                correlations.add(pair.correlation());
            });
            addAtReference(figures, runs, thrust);
        });
        return new All(figures, correlations);
    }

    /// Every time and distance of a drive once more for the reference rider, where the rider's mass is known.
    private void addAtReference(List<Figure> figures, List<StartRun> runs, StartThrust thrust) {
        var moved = runs.stream()
                .filter(StartRun::isUsable)
                .flatMap(run -> run.power().stream())
                .findFirst();
        if (moved.isEmpty()) {
            return;
        }
        var reference = new StartAtReference(moved.get(), Optional.of(thrust));
        String drive = runs.getFirst().drive();
        for (var figure : List.copyOf(figures)) {
            var target = figure.key().variant().get("to").flatMap(Target::of);
            boolean isWay = figure.kind() != QuantityKind.POWER
                    && figure.key().variant().has("drive", drive)
                    && target.isPresent();
            if (isWay) {
                reference
                        .of(figure, target.get(), underFullThrust(figure, target.get(), runs))
                        .ifPresent(figures::add);
            }
        }
    }

    /// The share of a figure that goes with the mass: a build-up takes its time whatever the mass.
    private static double underFullThrust(Figure figure, Target target, List<StartRun> runs) {
        if (!figure.key().figure().endsWith(".time-to")) {
            return 1;
        }
        return runs.stream()
                .flatMap(run -> run.traced().stream())
                .flatMap(start -> start.reached(target).stream())
                .mapToDouble(yes -> yes.rampTimeS() / yes.timeS())
                .average()
                .orElse(1 - StandingStartRules.BUILD_UP_S / 2 / Math.max(1, figure.value()));
    }

    private interface Take {
        Optional<StartRun.Part> of(StartRun run, Target target);
    }

    private interface Shared {
        List<Contribution> of(Group group);
    }

    private void add(
            List<Figure> figures,
            String name,
            String drive,
            Target target,
            List<StartRun> runs,
            Take take,
            Shared shared) {
        var mean = mean(name, Variant.of("drive", drive).with("to", target.id()));
        var counted = new ArrayList<Counted>();
        for (var run : runs) {
            var part = take.of(run, target);
            boolean counts = run.screened().isEmpty() && part.isPresent();
            boolean isWanted = counts || target.compareTo(run.aim()) <= 0;
            if (isWanted) {
                mean.run(
                        part(run, part.map(StartRun.Part::value), counts, reason(run, target)),
                        run.run().direction());
            }
            if (counts) {
                counted.add(new Counted(run, part.orElseThrow()));
            }
        }
        if (!counted.isEmpty()) {
            var group = new Group(target, counted, isBothWays(counted));
            double answers = answers(name, group);
            double runSd = StrictMath.hypot(
                    group.ownSd(), answers * scatter("standingstart." + name).betweenRunsAt(group.mean()));
            mean.answering(answers).blurredBy(group.ownSd());
            shared.of(group).forEach(mean::common);
            budget.late(group, name.equals("distance-to"), runSd).ifPresent(late -> takeOff(mean, late, name));
            assume(mean, group);
            partly(runs, target, counted.size()).ifPresent(mean::finding);
            figures.add(mean.figure());
        }
    }

    private static void takeOff(RunMean mean, BothWays late, String name) {
        boolean isDistance = name.equals("distance-to");
        mean.lessBy(late.late())
                .common(Contribution.typeB(
                        "slope and wind, as far as both ways leave them", late.standardUncertainty()))
                .assumed("slope and wind make the mean of both ways "
                        + (isDistance
                                ? StandingStartWords.metres(late.late()) + " too long"
                                : StandingStartWords.seconds(late.late()) + " late")
                        + ", which is taken off");
    }

    /// How strongly a figure answers to more or less thrust. The build-up takes its time whatever the thrust.
    private static double answers(String name, Group group) {
        double toMps = group.target().speedMps();
        return switch (name) {
            case "distance-to" -> group.curve().distanceAnswers(toMps);
            case "time-to" -> group.curve().timeAnswers(toMps) * group.underFullThrust();
            default -> group.curve().timeAnswers(toMps);
        };
    }

    private static String reason(StartRun run, Target target) {
        String reason = run.reason(target);
        return reason.isEmpty() ? "needs a recording: a watch alone does not give it" : reason;
    }

    private static boolean isBothWays(List<Counted> counted) {
        return counted.stream()
                        .map(one -> one.run().run().direction())
                        .distinct()
                        .count()
                == 2;
    }

    private Optional<Figure> power(
            String name,
            Variant variant,
            List<StartRun> runs,
            java.util.function.Function<StartRun, Optional<StartPower.Power>> take,
            java.util.function.Function<StartRun, String> reason) {
        var mean = mean(name, variant);
        var powers = new ArrayList<StartPower.Power>();
        Optional<StartPower> masses = Optional.empty();
        for (var run : runs) {
            var power = run.screened().isEmpty() ? take.apply(run) : Optional.<StartPower.Power>empty();
            String why = reason.apply(run).isEmpty()
                    ? "no power: it needs a recording and the rider's mass as ridden"
                    : reason.apply(run);
            mean.run(
                    part(run, power.map(StartPower.Power::watts), power.isPresent(), why),
                    run.run().direction());
            power.ifPresent(powers::add);
            masses = masses.or(run::power);
        }
        if (powers.isEmpty() || masses.isEmpty()) {
            return Optional.empty();
        }
        var power = StartPower.Power.mean(powers);
        var shared = masses.get().shared(power);
        mean.blurredBy(power.ownSd())
                .common(Contribution.typeB("first movement (build-up and filter assumed)", power.sharedSd()))
                .common(Contribution.typeB("mass of bike and rider", shared.byMass()))
                .common(Contribution.typeB("turning of the wheels (assumed)", shared.byWheels()))
                .common(Contribution.typeB("road load", shared.byRoadLoad()))
                .common(Contribution.typeB(
                        "scale of the speed, not calibrated", 2 * power.watts() * StandingStartRules.RECEIVER_SCALE));
        masses.get().assumed().forEach(mean::assumed);
        return Optional.of(masses.get().using(mean.figure()));
    }

    private Scatter scatter(String figure) {
        return input.scatter().of(StandingStart.DECLARATION.requireFigure(figure));
    }

    private RunMean mean(String name, Variant variant) {
        return RunMean.of(StandingStart.DECLARATION, "standingstart." + name, variant, input.scatter())
                .withMatchedTails();
    }

    private static FigureRun part(StartRun run, Optional<Double> value, boolean counts, String reason) {
        return new FigureRun(
                run.run().id(),
                run.run().state(),
                counts,
                counts ? "" : reason,
                value.map(OptionalDouble::of).orElse(OptionalDouble.empty()));
    }

    /// A mean of those runs alone that reached a speed flatters the bike.
    private static Optional<Finding> partly(List<StartRun> runs, Target target, int counted) {
        long below = runs.stream()
                .filter(run -> run.screened().isEmpty() && run.staysBelow(target))
                .count();
        return below == 0
                ? Optional.empty()
                : Optional.of(Finding.warning(
                        "not-always-reached",
                        Place.NOWHERE,
                        "only " + counted + " of " + (counted + below) + " runs reached " + target.words()
                                + "; their mean is that of the better runs",
                        "say so where the figure is quoted, or quote a lower speed"));
    }

    private void assume(RunMean mean, Group group) {
        boolean byHand =
                group.counted().stream().anyMatch(one -> one.part().trace().isEmpty());
        if (byHand) {
            mean.assumed("a watch good to 0.05 s and a display late by no more than 0.2 s (standard uncertainties)");
        }
        if (group.counted().stream().anyMatch(one -> one.part().trace().isPresent())) {
            mean.assumed("thrust builds up in 0.40 ± 0.12 s, where the samples do not say better");
        }
        mean.assumed("level road, within 0.3 %");
        if (input.readings().ofDay("wind-speed").isEmpty()) {
            mean.assumed("wind along the road not above 1.5 m/s (standard uncertainty)");
        }
    }
}
