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
    private final ClimbFigures measured;
    private final List<Finding> findings = new ArrayList<>();

    ReferenceFigures(TrialInput input, ClimbFigures measured) {
        this.input = input;
        this.measured = measured;
    }

    List<Finding> findings() {
        return findings;
    }

    List<Figure> all() {
        var all = new ArrayList<Figure>();
        for (var group : measured.groups()) {
            if (!group.counted().isEmpty()) {
                measured.transfer(group).ifPresent(transfer -> all.addAll(of(group, transfer)));
            }
        }
        return all;
    }

    private List<Figure> of(ClimbGroup group, Transfer transfer) {
        var ratios = transfer.nominal();
        if (ratios.isEmpty()) {
            findings.add(Finding.refused(
                    "no-reference",
                    Place.NOWHERE,
                    "on " + group.hill().id() + " (" + group.drive() + "): " + transfer.whyNone(),
                    "ride standing starts with this drive, or have a lighter rider climb"));
            return List.of();
        }
        var parts = transfer.parts();
        var days = transfer.atReference();
        double timeDays = days.map(one -> one.time().byDrive()).orElse(ClimbRules.DRIVE_BETWEEN_DAYS)
                / ClimbRules.TIME.betweenDays();
        double lowestDays = days.map(one -> one.lowest().byDrive()).orElse(ClimbRules.DRIVE_BETWEEN_DAYS)
                / ClimbRules.LOWEST.betweenDays();
        var all = new ArrayList<Figure>();
        double time = ratios.get().time();
        double lowest = ratios.get().lowest();
        var assumed = transfer.assumed();
        add(all, group, new Carried("time", time, parts.time(), timeDays), assumed);
        add(all, group, new Carried("mean-speed", 1 / time, parts.time(), timeDays), assumed);
        add(all, group, new Carried("lowest-speed", lowest, parts.lowest(), lowestDays), assumed);
        return all;
    }

    /// A figure's ratio of at reference to as ridden; `relative` are contributions relative to the figure, `days`
    /// how many times as much as the figure as ridden it differs between days: the wind that makes up most of that
    /// is budgeted by itself.
    private record Carried(String name, double ratio, List<Contribution> relative, double days) {}

    private void add(List<Figure> all, ClimbGroup group, Carried carried, List<String> assumed) {
        String name = carried.name();
        double ratio = carried.ratio();
        var variant = group.variant().with("at", "reference");
        var mean = ClimbFigures.begun(
                input, name, variant, group, run -> asMeasured(group, run, name).map(value -> value * ratio));
        if (!mean.hasRuns()) {
            return;
        }
        double value = mean.value();
        mean.answeringByDay(carried.days());
        measured(group, name, value / ratio).forEach(part -> mean.common(part.through(ratio)));
        carried.relative().forEach(part -> mean.common(part.through(value)));
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
