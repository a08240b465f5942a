package org.measuredmile.comparison.shortlist;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Collectors;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.sidebyside.SideBySide;
import org.measuredmile.comparison.standing.VariantChoice;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.Trials;

/// Bikes against a reader's wishes: sure, maybe, no.
///
/// Shape: `answers` the sure ones first, then those that may, then the others; within each by the least probable
/// wish. `conditions` say of each wish, in order, in which variant of its figure it is answered; empty text where
/// that is nothing to say.
public record Shortlist(WishList wishes, List<String> conditions, List<Answer> answers) {
    public Shortlist {
        conditions = List.copyOf(conditions);
        answers = List.copyOf(answers);
    }

    /// What came of asking.
    public sealed interface Outcome {
        record Drawn(Shortlist shortlist) implements Outcome {}

        /// Wishes that these bikes' results cannot answer as they stand.
        record Unclear(List<Finding> faults) implements Outcome {
            public Unclear {
                faults = List.copyOf(faults);
            }
        }
    }

    /// Asks every bike.
    public static Outcome of(WishList wishes, List<TestedBike> bikes) {
        var faults = new ArrayList<Finding>();
        var variants = new LinkedHashMap<Wish, Variant>();
        var conditions = new ArrayList<String>();
        for (Wish wish : wishes.wishes()) {
            if (wish instanceof Wish.OfFigure of) {
                var trial = Trials.delivering(of.figure()).orElseThrow().declaration();
                var variant = chosen(trial, of, bikes, faults);
                variants.put(wish, variant);
                conditions.add(trial.words(variant));
            } else {
                conditions.add("");
            }
        }
        if (wishes.wishes().stream().anyMatch(wish -> wish instanceof Wish.OfPrice price && isOpen(price, bikes))) {
            faults.add(WishTerm.fault(
                    "price",
                    "prices are stated in " + String.join(" and ", currencies(bikes)),
                    "write the currency behind the amount, as in price<2000"
                            + currencies(bikes).getFirst()));
        }
        if (!faults.isEmpty()) {
            return new Outcome.Unclear(faults);
        }
        var replying = new Replies(wishes, variants);
        var answers = bikes.stream()
                .map(bike -> new Answer(bike, replying.of(bike)))
                .sorted(Comparator.comparing(Answer::verdict)
                        .thenComparing(Comparator.comparingDouble(Answer::leastProbability)
                                .reversed())
                        .thenComparing(answer -> answer.bike().bike().title()))
                .toList();
        return new Outcome.Drawn(new Shortlist(wishes, conditions, answers));
    }

    private static boolean isOpen(Wish.OfPrice price, List<TestedBike> bikes) {
        return price.currency().isEmpty() && currencies(bikes).size() > 1;
    }

    private static List<String> currencies(List<TestedBike> bikes) {
        return bikes.stream()
                .map(one -> one.bike().price())
                .filter(price -> price.amount().isPresent() && !price.currency().isEmpty())
                .map(price -> price.currency())
                .distinct()
                .sorted()
                .toList();
    }

    /// The variant that results are compared in: a level by its place, unless its number is asked for.
    static Variant place(Wish.OfFigure wish, Variant variant) {
        return wish.asked().get("level").isPresent() ? variant : SideBySide.place(variant);
    }

    /// The one variant that a wish is about; of several that fit, the one that most bikes have.
    private static Variant chosen(Declaration trial, Wish.OfFigure wish, List<TestedBike> bikes, List<Finding> faults) {
        var counts = bikes.stream()
                .flatMap(bike -> bike.of(wish.figure()).stream()
                        .map(result -> place(wish, result.figure().key().variant()))
                        .distinct())
                .collect(Collectors.groupingBy(variant -> variant, LinkedHashMap::new, Collectors.counting()));
        if (counts.isEmpty()) {
            return wish.asked();
        }
        return switch (VariantChoice.of(trial, wish.asked(), counts.keySet())) {
            case VariantChoice.Chosen(Variant variant) -> variant;
            case VariantChoice.Unclear(List<Variant> fitting, List<Variant> present) -> {
                long most = fitting.stream()
                        .mapToLong(one -> counts.getOrDefault(one, 0L))
                        .max()
                        .orElse(0);
                var commonest = fitting.stream()
                        .filter(one -> counts.getOrDefault(one, 0L) == most)
                        .toList();
                if (commonest.size() != 1) {
                    faults.add(ambiguous(wish, fitting.isEmpty() ? present : commonest, fitting.isEmpty()));
                }
                yield commonest.isEmpty() ? wish.asked() : commonest.getFirst();
            }
        };
    }

    private static Finding ambiguous(Wish.OfFigure wish, List<Variant> choices, boolean isNone) {
        String rest = wish.text().replaceFirst("[^<>]*", "");
        String example = choices.stream()
                .limit(6)
                .map(one -> wish.name() + "[" + one.text().replace(' ', ',') + "]" + rest)
                .collect(Collectors.joining(" or "));
        return WishTerm.fault(
                wish.text(),
                isNone ? "no bike was tested so" : "results differ in how they were ridden",
                "write " + example);
    }
}
