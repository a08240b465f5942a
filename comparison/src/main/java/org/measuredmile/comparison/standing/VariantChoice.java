package org.measuredmile.comparison.standing;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Declaration;

/// Which variant a standing is of, when it was asked for by some of its keys only.
public sealed interface VariantChoice {
    record Chosen(Variant variant) implements VariantChoice {}

    /// More than one variant there is fits, or none does.
    record Unclear(List<Variant> fitting, List<Variant> present) implements VariantChoice {
        public Unclear {
            fitting = List.copyOf(fitting);
            present = List.copyOf(present);
        }
    }

    /// The one variant among those present that was asked for, a key not named having the trial's usual value.
    ///
    /// Shape: what the population asks of the conditions is taken as asked; see [Population#asking].
    static VariantChoice of(Declaration trial, Variant asked, Population population, Collection<Variant> present) {
        return of(
                trial,
                population.asking(asked),
                present.stream().filter(population::admits).toList());
    }

    /// The one variant among those present that was asked for, a key not named having the trial's usual value.
    static VariantChoice of(Declaration trial, Variant asked, Collection<Variant> present) {
        var fitting = new TreeSet<Variant>();
        present.stream().filter(variant -> variant.covers(asked)).forEach(fitting::add);
        if (fitting.size() == 1) {
            return new Chosen(fitting.first());
        }
        var usual = fitting.stream()
                .filter(variant -> isUsual(trial, asked, variant))
                .toList();
        var fewestKeys = usual.stream()
                .min(Comparator.comparingInt(variant -> variant.values().size()));
        long asFew = usual.stream()
                .filter(variant -> fewestKeys
                        .filter(few -> few.values().size() == variant.values().size())
                        .isPresent())
                .count();
        return asFew == 1
                ? new Chosen(fewestKeys.orElseThrow())
                : new Unclear(List.copyOf(fitting), List.copyOf(new TreeSet<>(present)));
    }

    private static boolean isUsual(Declaration trial, Variant asked, Variant variant) {
        return variant.values().entrySet().stream()
                .filter(entry -> asked.get(entry.getKey()).isEmpty())
                .allMatch(entry -> trial.variant(entry.getKey())
                        .map(key -> key.usual().isEmpty() || key.usual().equals(entry.getValue()))
                        .orElse(true));
    }
}
