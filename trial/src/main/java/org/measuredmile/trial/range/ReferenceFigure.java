package org.measuredmile.trial.range;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.Figure.Narrowing;
import org.measuredmile.trial.FigureKey;

/// A figure as ridden, brought to reference conditions.
final class ReferenceFigure {
    /// The part of its budget that the correction is.
    static final String CORRECTION = "correction to reference conditions";

    private final Figure asRidden;
    private final ReferenceRatio ratio;
    private final boolean isCost;
    private final List<Narrowing> narrows = new ArrayList<>();
    private final List<String> assumed = new ArrayList<>();
    private final List<Figure.Used> used = new ArrayList<>();

    /// @param isCost whether the figure falls as the ratio grows, as energy per distance does
    ReferenceFigure(Figure asRidden, ReferenceRatio ratio, boolean isCost) {
        this.asRidden = asRidden;
        this.ratio = ratio;
        this.isCost = isCost;
        assumed.addAll(asRidden.assumed());
        used.addAll(asRidden.used());
    }

    ReferenceFigure assuming(List<String> what) {
        what.stream().filter(one -> !assumed.contains(one)).forEach(assumed::add);
        return this;
    }

    ReferenceFigure using(List<Figure.Used> figures) {
        used.addAll(figures);
        return this;
    }

    /// What the interval would be with another ratio, better known.
    ReferenceFigure narrowedBy(String what, ReferenceRatio better) {
        narrows.add(new Narrowing(
                what, better.times(asRidden.value(), asRidden.anyDay(), isCost).interval95()));
        return this;
    }

    private double times() {
        return isCost ? ratio.expectedInverse() : ratio.expected();
    }

    Figure figure() {
        var thisDay = ratio.times(asRidden.value(), asRidden.thisDay(), isCost);
        var anyDay = ratio.times(asRidden.value(), asRidden.anyDay(), isCost);
        var budget = new ArrayList<>(
                asRidden.budget().stream().map(one -> one.through(times())).toList());
        double ownVariance = square(asRidden.anyDay().standard() * times());
        double rest = Math.sqrt(Math.max(0, square(anyDay.standard()) - ownVariance));
        budget.add(Contribution.typeB(CORRECTION, rest));
        budget.sort(java.util.Comparator.comparingDouble(Contribution::standardUncertainty)
                .reversed());
        return new Figure(
                new FigureKey(asRidden.key().figure(), asRidden.key().variant().with("at", "reference")),
                asRidden.kind(),
                asRidden.trial(),
                asRidden.version(),
                asRidden.value() * times(),
                thisDay,
                anyDay,
                asRidden.runs().stream().map(this::atReference).toList(),
                budget,
                narrows,
                assumed,
                used,
                asRidden.findings(),
                asRidden.inputs());
    }

    private FigureRun atReference(FigureRun run) {
        var value = run.value().isPresent() ? OptionalDouble.of(run.value().getAsDouble() * times()) : run.value();
        return new FigureRun(run.run(), run.state(), run.counted(), run.reason(), value);
    }

    private static double square(double value) {
        return value * value;
    }
}
