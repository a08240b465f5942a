package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.RunMean;
import org.measuredmile.trial.Scatter;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;

/// The figures of a day of climbs as measured, each the mean of its runs.
final class ClimbFigures {
    private final TrialInput input;
    private final List<ClimbGroup> groups;
    private final List<Finding> findings = new ArrayList<>();
    /// By group as the object it is: what a group holds is too much to be compared.
    private final Map<ClimbGroup, Optional<Transfer>> transfers = new IdentityHashMap<>();

    private final Map<ClimbGroup, Optional<DayAnswers>> answers = new IdentityHashMap<>();

    ClimbFigures(TrialInput input, List<ClimbRun> runs) {
        this.input = input;
        SortedMap<String, List<ClimbRun>> byKey = new TreeMap<>();
        for (var run : runs) {
            byKey.computeIfAbsent(run.hill().id() + " " + run.drive(), _ -> new ArrayList<>())
                    .add(run);
        }
        this.groups = byKey.values().stream()
                .map(all ->
                        new ClimbGroup(all.getFirst().drive(), all.getFirst().hill(), all))
                .toList();
    }

    List<ClimbGroup> groups() {
        return groups;
    }

    List<Finding> findings() {
        return findings;
    }

    List<Figure> all() {
        var all = new ArrayList<Figure>();
        for (var group : groups) {
            if (!group.counted().isEmpty()) {
                time(group).ifPresent(all::add);
                meanSpeed(group).ifPresent(all::add);
                lowest(group).ifPresent(all::add);
                power(group).ifPresent(all::add);
            }
        }
        return all;
    }

    private Optional<Figure> time(ClimbGroup group) {
        var mean = begun("time", group.variant(), group, run -> run.time().map(ClimbRun.Timed::seconds), 1);
        answering(mean, ClimbRules.TIME, answers(group).map(DayAnswers::time));
        group.timing().forEach(mean::common);
        assumeTiming(mean, group);
        return mean.figureIfAny();
    }

    /// The model of a group's climb; nothing without a length and a rise.
    Optional<Transfer> transfer(ClimbGroup group) {
        return transfers.computeIfAbsent(group, one -> one.power(input).map(power -> new Transfer(input, one, power)));
    }

    /// How a group's climb answers to what differs between days, where that is known.
    Optional<DayAnswers> answers(ClimbGroup group) {
        return answers.computeIfAbsent(group, one -> transfer(one).flatMap(Transfer::asRidden));
    }

    /// Days differ by what this hill makes of a drive's strength and a wind, where that is known.
    private static void answering(RunMean mean, Scatter usual, Optional<DayAnswers.Answer> answer) {
        answer.ifPresent(one -> mean.answeringByDay(one.betweenDays() / usual.betweenDays()));
    }

    private Optional<Figure> meanSpeed(ClimbGroup group) {
        var length = group.length();
        if (length.isEmpty()) {
            findings.add(missing(group, "length", "no mean speed and no wheel power"));
            return Optional.empty();
        }
        double lengthM = length.get().valueM();
        var mean =
                begun("mean-speed", group.variant(), group, run -> run.time().map(time -> lengthM / time.seconds()), 1);
        answering(mean, ClimbRules.TIME, answers(group).map(DayAnswers::time));
        speedParts(group, lengthM, length.get().standardUncertaintyM()).forEach(mean::common);
        assumeTiming(mean, group);
        return mean.figureIfAny();
    }

    /// A longer way at the same time is a higher speed; where the time follows from the length, it is hardly one.
    static List<Contribution> speedParts(ClimbGroup group, double lengthM, double lengthSdM) {
        double mps = lengthM / group.timeS();
        double perSecond = mps / group.timeS();
        double perMetre = mps / lengthM
                - perSecond * group.meanOf(run -> ClimbGroup.time(run).perMetre());
        var parts = new ArrayList<Contribution>();
        for (var part : group.timing()) {
            parts.add(
                    part.input().equals("surveyed length")
                            ? Contribution.typeB(part.input(), Math.abs(perMetre) * lengthSdM)
                                    .sharedAs(part.shared())
                            : part.through(perSecond));
        }
        return parts;
    }

    private Optional<Figure> lowest(ClimbGroup group) {
        var mean = begun("lowest-speed", group.variant(), group, ClimbRun::lowestMps, 1);
        if (!mean.hasRuns()) {
            return Optional.empty();
        }
        answering(mean, ClimbRules.LOWEST, answers(group).map(DayAnswers::lowest));
        lowestParts(group, mean.value()).forEach(mean::common);
        return mean.figureIfAny();
    }

    static List<Contribution> lowestParts(ClimbGroup group, double lowestMps) {
        double own = ClimbGroup.ofMean(group.counted().stream()
                .filter(run -> run.lowestMps().isPresent())
                .map(ClimbRun::lowestSdMps)
                .toList());
        boolean isTraced = group.counted().stream().anyMatch(run -> run.traced().isPresent());
        double scale = isTraced ? group.scaleSd() : ClimbRules.DISPLAY_SCALE;
        return List.of(
                Contribution.typeB("noise of the lowest mean", own),
                Contribution.typeB("scale of the speed", scale * lowestMps));
    }

    private Optional<Figure> power(ClimbGroup group) {
        var power = group.power(input);
        if (power.isEmpty()) {
            if (group.length().isPresent()) {
                findings.add(missing(group, "rise", "no wheel power and nothing at reference"));
            }
            return Optional.empty();
        }
        var mean = begun(
                "wheel-power",
                group.variant(),
                group,
                run -> run.time().flatMap(_ -> group.power(input, run)).map(ClimbPower::watts),
                1);
        if (!mean.hasRuns()) {
            return Optional.empty();
        }
        // The power of a run follows from its time, so that runs scatter by what their times do.
        double perTime =
                Math.abs(power.get().perSecond()) * group.timeS() / power.get().watts();
        double times = perTime * ClimbRules.TIME.betweenRuns() / ClimbRules.POWER.betweenRuns();
        mean.answering(times).answeringByDay(1 / times);
        answering(mean, ClimbRules.POWER, answers(group).map(DayAnswers::power));
        powerParts(group, power.get()).forEach(mean::common);
        var load = UsedLoad.of(input);
        load.assumed().forEach(mean::assumed);
        power.get().road().assumed().forEach(mean::assumed);
        if (!power.get().wind().assumed().isEmpty()) {
            mean.assumed(power.get().wind().assumed());
        }
        if (group.counted().stream().anyMatch(run -> run.entry().assumed())) {
            mean.assumed("speed at both marks as the mean speed, ± 1 m/s (standard uncertainty)");
        }
        used(mean, "weighin.mass", power.get().road().used());
        used(mean, "coastdown.", load.used());
        return mean.figureIfAny();
    }

    private void used(RunMean mean, String begins, List<Figure.Used> keys) {
        keys.stream()
                .filter(one -> one.key().figure().startsWith(begins))
                .flatMap(one -> Optional.ofNullable(input.used().get(one.key())).stream())
                .forEach(mean::using);
    }

    private static List<Contribution> powerParts(ClimbGroup group, ClimbPower power) {
        double timing = Math.abs(power.perSecond());
        var parts = new ArrayList<Contribution>();
        group.timing().stream()
                .filter(part -> !part.input().equals("surveyed length"))
                .forEach(part -> parts.add(part.through(timing)));
        parts.add(power.byMass());
        parts.add(power.byWheels());
        parts.add(power.byRise());
        parts.add(power.byLength());
        parts.add(power.byRoadLoad());
        parts.add(power.byAir());
        parts.add(power.byWind());
        boolean assumed = group.counted().stream().anyMatch(run -> run.entry().assumed());
        double entry = assumed
                ? group.meanOf(run -> run.entry().standardUncertainty())
                : ClimbGroup.ofMean(group.having(run -> Optional.of(run.entry().standardUncertainty())));
        double exit = assumed
                ? group.meanOf(run -> run.exit().standardUncertainty())
                : ClimbGroup.ofMean(group.having(run -> Optional.of(run.exit().standardUncertainty())));
        parts.add(Contribution.typeB(
                assumed ? "speed at both marks (assumed)" : "speed at both gates",
                StrictMath.hypot(power.perEntry() * entry, power.perExit() * exit)));
        return parts;
    }

    private RunMean begun(
            String name, Variant variant, ClimbGroup group, Function<ClimbRun, Optional<Double>> take, double times) {
        return begun(input, name, variant, group, run -> take.apply(run).map(value -> value * times));
    }

    /// A figure's mean with all runs of its group.
    static RunMean begun(
            TrialInput input,
            String name,
            Variant variant,
            ClimbGroup group,
            Function<ClimbRun, Optional<Double>> take) {
        var mean = RunMean.of(Climb.DECLARATION, "climb." + name, variant, input.scatter())
                .withMatchedTails();
        for (var run : group.runs()) {
            var value = run.counts() ? take.apply(run) : Optional.<Double>empty();
            String why = run.counts() ? "this run does not tell it" : run.reason();
            mean.run(
                    new FigureRun(
                            run.run().id(),
                            run.run().state(),
                            value.isPresent(),
                            value.isPresent() ? "" : why,
                            value.map(OptionalDouble::of).orElse(OptionalDouble.empty())),
                    run.run().direction());
        }
        return mean;
    }

    static void assumeTiming(RunMean mean, ClimbGroup group) {
        if (group.watchedShare() > 0) {
            mean.assumed("a watch good to 0.10 s a run and 0.05 s alike in all (standard uncertainties)");
        }
        boolean byGates = group.counted().stream()
                .anyMatch(run -> ClimbGroup.time(run).by() == ClimbRun.By.TRACE
                        && ClimbGroup.time(run).perMetre() == 0);
        if (byGates) {
            mean.assumed("a receiver's position within 3 m, wandering over a minute (standard uncertainty)");
        }
    }

    private static Finding missing(ClimbGroup group, String what, String therefore) {
        String id = group.hill().id();
        return Finding.warning(
                "course-" + what + "-missing",
                id.isEmpty() ? Place.NOWHERE : new Place("day.yaml", "courses." + id),
                "the " + what + " of the hill" + (id.isEmpty() ? "" : " " + id) + " is not known: " + therefore,
                "survey it and write it in the course's record");
    }
}
