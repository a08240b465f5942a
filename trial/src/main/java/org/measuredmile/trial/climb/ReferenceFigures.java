package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.TrialInput;

/// Time, mean and lowest speed at reference conditions: the reference rider in the reference air without wind.
///
/// Each run's value is multiplied by one ratio, that of a modelled climb at reference to a modelled climb as ridden.
final class ReferenceFigures {
    private final TrialInput input;
    private final List<ClimbGroup> groups;
    private final List<Finding> findings = new ArrayList<>();

    ReferenceFigures(TrialInput input, List<ClimbGroup> groups) {
        this.input = input;
        this.groups = List.copyOf(groups);
    }

    List<Finding> findings() {
        return findings;
    }

    List<Figure> all() {
        var all = new ArrayList<Figure>();
        for (var group : groups) {
            if (!group.counted().isEmpty()) {
                group.power(input).ifPresent(power -> all.addAll(of(group, power)));
            }
        }
        return all;
    }

    private List<Figure> of(ClimbGroup group, ClimbPower power) {
        var transfer = new Transfer(input, group, power);
        var ratios = transfer.nominal();
        if (ratios.isEmpty()) {
            findings.add(Finding.refused(
                    "no-reference",
                    Place.NOWHERE,
                    "on " + group.hill().id() + " (" + group.drive() + "): " + transfer.whyNone(),
                    "ride standing starts with this drive, or have a lighter rider climb"));
            return List.of();
        }
        var parts = transfer.parts(ratios.get());
        var all = new ArrayList<Figure>();
        double time = ratios.get().time();
        double lowest = ratios.get().lowest();
        add(all, group, "time", time, parts.time(), transfer.assumed());
        add(all, group, "mean-speed", 1 / time, parts.time(), transfer.assumed());
        add(all, group, "lowest-speed", lowest, parts.lowest(), transfer.assumed());
        return all;
    }

    /// `relative` are contributions relative to the figure.
    private void add(
            List<Figure> all,
            ClimbGroup group,
            String name,
            double ratio,
            List<Contribution> relative,
            List<String> assumed) {
        var variant = group.variant().with("at", "reference");
        var mean = ClimbFigures.begun(
                input, name, variant, group, run -> asMeasured(group, run, name).map(value -> value * ratio));
        if (!mean.hasRuns()) {
            return;
        }
        double value = mean.value();
        mean.answeringByDay(ClimbRules.DAYS_WITHOUT_WIND);
        measured(group, name, value / ratio).forEach(part -> mean.common(part.through(ratio)));
        relative.forEach(part -> mean.common(part.through(value)));
        ClimbFigures.assumeTiming(mean, group);
        assumed.forEach(mean::assumed);
        input.used().values().forEach(figure -> {
            boolean isOwn = figure.key().variant().get("drive").isEmpty()
                    || figure.key().variant().has("drive", group.drive());
            if (isOwn && !figure.key().variant().has("battery", "out")) {
                mean.using(figure);
            }
        });
        all.add(mean.figure());
    }

    private static Optional<Double> asMeasured(ClimbGroup group, ClimbRun run, String name) {
        return switch (name) {
            case "time" -> run.time().map(ClimbRun.Timed::seconds);
            case "mean-speed" ->
                run.time().map(time -> group.length().orElseThrow().valueM() / time.seconds());
            default -> run.lowestMps();
        };
    }

    private static List<Contribution> measured(ClimbGroup group, String name, double value) {
        return switch (name) {
            case "time" -> group.timing();
            case "mean-speed" ->
                ClimbFigures.speedParts(
                        group,
                        group.length().orElseThrow().valueM(),
                        group.length().orElseThrow().standardUncertaintyM());
            default -> ClimbFigures.lowestParts(group, value);
        };
    }
}
