package org.measuredmile.desk.web.view;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.measuredmile.archive.StoredFigure;
import org.measuredmile.publication.chart.LevelsPlot;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.statistics.StudentT;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.VariantKey;

/// Gathers results of one figure that differ only by a level's number, so that they stand in one plot.
///
/// Shape: a key whose declaration allows any value is a level; other keys may name what a level is.
final class LevelGroups {
    private static final int LEAST = 3;
    private static final Gain NONE = new Gain("", "");

    private final Printing printing;
    private final Declaration trial;
    private final FigureSpec spec;

    LevelGroups(Printing printing, Declaration trial, FigureSpec spec) {
        this.printing = printing;
        this.trial = trial;
        this.spec = spec;
    }

    /// Results of one day that belong into one plot, in order of level.
    record Group(Variant common, List<StoredFigure> figures, String wide, String narrow) {
        LocalDate date() {
            return figures.getFirst().date();
        }

        /// Whether every run behind it was confirmed by a person.
        boolean accepted() {
            return figures.stream().allMatch(StoredFigure::accepted);
        }
    }

    /// The plots of all days, the latest first.
    List<Group> of(List<StoredFigure> stored) {
        Optional<String> key = spec.variantKeys().stream()
                .filter(name -> trial.variant(name)
                        .map(VariantKey::values)
                        .filter(List::isEmpty)
                        .isPresent())
                .findFirst();
        if (key.isEmpty()) {
            return List.of();
        }
        var byDay = new TreeMap<String, List<StoredFigure>>();
        for (StoredFigure one : asRidden(stored)) {
            byDay.computeIfAbsent(one.day() + " " + one.configuration(), day -> new ArrayList<>())
                    .add(one);
        }
        return byDay.values().stream()
                .filter(figures -> figures.size() >= LEAST)
                .map(figures -> group(key.get(), figures))
                .sorted(Comparator.comparing(Group::date).reversed())
                .toList();
    }

    /// What is brought to reference conditions stands by itself and not beside what was ridden.
    private static List<StoredFigure> asRidden(List<StoredFigure> stored) {
        return stored.stream()
                .filter(one -> one.figure().key().variant().get("at").isEmpty())
                .toList();
    }

    private Group group(String key, List<StoredFigure> figures) {
        var ordered = figures.stream()
                .sorted(Comparator.comparingInt((StoredFigure one) -> place(figures, one, key))
                        .thenComparing(one -> one.figure().key().variant()))
                .toList();
        Variant common = common(ordered);
        var levels = new ArrayList<LevelsPlot.Level>();
        for (int i = 0; i < ordered.size(); i++) {
            levels.add(level(key, ordered, i));
        }
        var plot = new LevelsPlot(printing.scale(spec.kind()), Printing.capital(spec.title()), levels);
        return new Group(common, ordered, plot.svg(760), plot.svg(352));
    }

    /// Numbers in their order; a level that is a word stands before them where its value is below the first
    /// number's, else after them.
    private static int place(List<StoredFigure> figures, StoredFigure one, String key) {
        int number = order(one, key);
        if (number != Integer.MAX_VALUE) {
            return number;
        }
        double lowest = figures.stream()
                .filter(other -> order(other, key) != Integer.MAX_VALUE)
                .mapToDouble(other -> other.figure().value())
                .min()
                .orElse(Double.NEGATIVE_INFINITY);
        return one.figure().value() < lowest ? -1 : Integer.MAX_VALUE;
    }

    private static int order(StoredFigure one, String key) {
        return one.figure()
                .key()
                .variant()
                .get(key)
                .map(Bikes::number)
                .filter(number -> number.isPresent())
                .map(number -> number.getAsInt())
                .orElse(Integer.MAX_VALUE);
    }

    private static Variant common(List<StoredFigure> figures) {
        Variant first = figures.getFirst().figure().key().variant();
        Set<String> same = new HashSet<>(first.values().keySet());
        for (StoredFigure one : figures) {
            same.removeIf(
                    key -> !first.get(key).equals(one.figure().key().variant().get(key)));
        }
        return first.only(same);
    }

    private LevelsPlot.Level level(String key, List<StoredFigure> ordered, int i) {
        Figure figure = ordered.get(i).figure();
        String words = words(key, ordered, ordered.get(i));
        var runs = figure.runs().stream()
                .filter(run -> run.counted() && run.value().isPresent())
                .map(run -> run.value().getAsDouble())
                .toList();
        boolean follows = i > 0 && order(ordered.get(i), key) != Integer.MAX_VALUE;
        Gain gain = follows ? gain(ordered.get(i - 1), ordered.get(i), words(key, ordered, ordered.get(i - 1))) : NONE;
        return new LevelsPlot.Level(
                words, figure.value(), figure.anyDay().interval95(), runs, gain.words(), gain.note());
    }

    /// What a level is called in its plot: its number, or the word that other keys have for it.
    private String words(String key, List<StoredFigure> ordered, StoredFigure one) {
        Variant variant = one.figure().key().variant();
        Set<String> own = new HashSet<>(variant.values().keySet());
        own.removeAll(common(ordered).values().keySet());
        String level = variant.get(key).orElse("");
        own.removeIf(other -> !variant.has(other, level));
        return trial.words(variant.only(own));
    }

    /// What a level adds to the one before, and what is to be said where that cannot be told.
    private record Gain(String words, String note) {}

    /// Levels of one day share rider, weather and instrument, so the this-day uncertainties tell them apart.
    private Gain gain(StoredFigure lower, StoredFigure upper, String lowerWords) {
        Figure before = lower.figure();
        Figure now = upper.figure();
        double standard = Math.hypot(before.thisDay().standard(), now.thisDay().standard());
        double degrees =
                Math.min(before.thisDay().degreesOfFreedom(), now.thisDay().degreesOfFreedom());
        double halfWidth = StudentT.twoSided95(Math.max(1, degrees)) * standard;
        double difference = now.value() - before.value();
        if (Interval.around(difference, halfWidth).contains(0)) {
            return new Gain("", "can't be told from " + lowerWords);
        }
        var printed = printing.printer().difference(difference, halfWidth, spec.kind());
        return new Gain(printed.number(), "");
    }
}
