package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.statistics.StudentT;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.LevelRole;
import org.measuredmile.trial.RunResult;

/// What each level gains over the level below it, and whether the day's runs can tell the two apart.
///
/// A gain is real when it exceeds √(h₁² + h₂²), h the half-widths that the levels' own wander gives: wind, scale and
/// effort are common to both.
/// Shape: levels of one drive, in the order of their numbers; speeds are never sorted.
final class Gains {
    private Gains() {}

    /// The figures with what each gains said in its findings.
    static List<Figure> noted(List<Figure> figures) {
        var noted = new ArrayList<Figure>();
        for (var figure : figures) {
            var findings = below(figure, figures).map(lower -> said(figure, lower)).stream()
                    .toList();
            noted.add(findings.isEmpty() ? figure : figure.noting(findings));
        }
        return noted;
    }

    /// The results with the gain of each counted run over the same direction's run of the level below.
    static List<RunResult> valued(List<RunResult> results) {
        var valued = new ArrayList<RunResult>();
        for (var result : results) {
            var speed = result.value("speed");
            var lower = results.stream()
                    .filter(other -> other.counted() && other.value("speed").isPresent())
                    .filter(other -> other.direction().equals(result.direction()))
                    .filter(other -> isNumbered(other) && rank(other) < rank(result))
                    .filter(other -> sameDrive(other, result))
                    .max(Comparator.comparingDouble(Gains::rank));
            if (!result.counted() || speed.isEmpty() || !isNumbered(result) || lower.isEmpty()) {
                valued.add(result);
                continue;
            }
            var under = lower.get().value("speed").orElseThrow();
            var values = new ArrayList<>(result.values());
            values.add(RecordedLevels.value(
                    "gain",
                    "gain over " + AssistSpeed.levelWords(lower.get().variant()),
                    speed.get().value() - under.value(),
                    StrictMath.hypot(speed.get().standardUncertainty(), under.standardUncertainty())));
            valued.add(new RunResult(
                    result.run(),
                    result.variant(),
                    result.direction(),
                    result.state(),
                    true,
                    "",
                    result.stretch(),
                    values,
                    result.trace()));
        }
        return valued;
    }

    private static boolean sameDrive(RunResult one, RunResult other) {
        return one.variant().get("drive").equals(other.variant().get("drive"));
    }

    private static boolean isNumbered(RunResult result) {
        return !Double.isNaN(rank(result)) && !result.run().contains("/");
    }

    private static double rank(RunResult result) {
        return LevelRole.rank(LevelRole.levelOf(result.variant()));
    }

    private static java.util.Optional<Figure> below(Figure figure, List<Figure> figures) {
        double rank = LevelRole.rank(figure.key().variant());
        return figures.stream()
                .filter(other -> other.key()
                        .variant()
                        .get("drive")
                        .equals(figure.key().variant().get("drive")))
                .filter(other -> LevelRole.rank(other.key().variant()) < rank)
                .max(Comparator.comparingDouble(
                        other -> LevelRole.rank(other.key().variant())));
    }

    private static Finding said(Figure figure, Figure lower) {
        double gain = figure.value() - lower.value();
        double limit = StrictMath.hypot(halfWidth(figure), halfWidth(lower));
        String upperName = AssistSpeed.levelWords(figure.key().variant());
        String lowerName = AssistSpeed.levelWords(lower.key().variant());
        String numbers = String.format(Locale.ROOT, "%.2f m/s ± %.2f m/s", gain, limit);
        if (Math.abs(gain) <= limit) {
            return Finding.warning(
                    "levels-not-told-apart",
                    Place.NOWHERE,
                    upperName + " and " + lowerName + " cannot be told apart: " + numbers,
                    "hold both for longer, both ways");
        }
        return gain > 0
                ? Finding.note("gain", Place.NOWHERE, upperName + " gains " + numbers + " over " + lowerName)
                : Finding.warning(
                        "levels-out-of-order",
                        Place.NOWHERE,
                        upperName + " came out slower than " + lowerName + ": " + numbers + "; shown as ridden",
                        "look whether the levels were called out as they were ridden");
    }

    private static double halfWidth(Figure figure) {
        return figure.budget().stream()
                .filter(part -> part.evaluation() == Contribution.Evaluation.A)
                .mapToDouble(part -> StudentT.twoSided95(part.degreesOfFreedom()) * part.standardUncertainty())
                .sum();
    }
}
