package org.measuredmile.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.Sample;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Run;

/// A result with its uncertainty, its runs, and what it was made from.
///
/// Unit: value, uncertainties and contributions in the SI unit of `kind`.
/// Shape: `thisDay` covers these runs, this rider, this weather; `anyDay` what the same bike would give on another
/// day. `budget` holds every contribution to `anyDay`, the one between days among them. `inputs` are filled in by
/// [DayReduction].
public record Figure(
        FigureKey key,
        QuantityKind kind,
        String trial,
        int version,
        double value,
        Uncertainty thisDay,
        Uncertainty anyDay,
        List<FigureRun> runs,
        List<Contribution> budget,
        List<Narrowing> narrows,
        List<String> assumed,
        List<Used> used,
        List<Finding> findings,
        List<InputHash> inputs) {
    public Figure {
        runs = List.copyOf(runs);
        budget = List.copyOf(budget);
        narrows = List.copyOf(narrows);
        assumed = List.copyOf(assumed);
        used = List.copyOf(used);
        findings = List.copyOf(findings);
        inputs = List.copyOf(inputs);
    }

    /// A run's part in a figure: its own value where it has one, and why it does not count where it does not.
    public record FigureRun(String run, Run.State state, boolean counted, String reason, OptionalDouble value) {}

    /// Something that would narrow the any-day interval, and how wide it would then be.
    public record Narrowing(String what, Interval intervalThen) {}

    /// A figure of another trial that this one was computed with.
    public record Used(FigureKey key, String sha256) {}

    /// This figure as another one names it, by the hash of all that it says.
    public Used asUsed() {
        return new Used(key, Sha256.of(toString().getBytes(java.nio.charset.StandardCharsets.UTF_8)));
    }

    /// A file or a record that this figure was computed from.
    ///
    /// Shape: `kind` is `recording`, `readings`, `runs`, `day`, `bike`, `course`, `scatter` or `trial`.
    public record InputHash(String kind, String name, String sha256) {}

    /// How many of its runs count.
    public long counted() {
        return runs.stream().filter(FigureRun::counted).count();
    }

    /// The plain standard deviation of the counted runs' own values; empty for fewer than two.
    public OptionalDouble scatterOfRuns() {
        double[] values = runs.stream()
                .filter(run -> run.counted() && run.value().isPresent())
                .mapToDouble(run -> run.value().getAsDouble())
                .toArray();
        return values.length < 2
                ? OptionalDouble.empty()
                : OptionalDouble.of(Sample.of(values).standardDeviation());
    }

    /// The same figure with something more that was taken for granted, in words.
    public Figure assuming(String what) {
        var more = new ArrayList<>(assumed);
        more.add(what);
        return new Figure(
                key, kind, trial, version, value, thisDay, anyDay, runs, budget, narrows, more, used, findings, inputs);
    }

    public Figure noting(List<Finding> more) {
        var all = new ArrayList<>(findings);
        all.addAll(more);
        return new Figure(
                key, kind, trial, version, value, thisDay, anyDay, runs, budget, narrows, assumed, used, all, inputs);
    }

    /// The same with other uncertainties of this day and of any day.
    public Figure known(Uncertainty onThisDay, Uncertainty onAnyDay) {
        return new Figure(
                key, kind, trial, version, value, onThisDay, onAnyDay, runs, budget, narrows, assumed, used, findings,
                inputs);
    }

    public Figure from(List<InputHash> hashes) {
        return new Figure(
                key, kind, trial, version, value, thisDay, anyDay, runs, budget, narrows, assumed, used, findings,
                hashes);
    }
}
