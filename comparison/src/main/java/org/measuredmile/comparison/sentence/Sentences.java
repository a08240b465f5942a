package org.measuredmile.comparison.sentence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.standing.Population;
import org.measuredmile.comparison.standing.Standing;
import org.measuredmile.comparison.verdict.ClaimVerdict;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.Trials;

/// Every sentence that can be said of a bike: of each accepted figure its value, and its rank where one end is better;
/// of each claim the verdict, and the legal classes in force.
///
/// Shape: in the order of the trials and their figures; ranks among every bike, and among the bike's own category where
/// that is another set of [#FEWEST] or more.
public final class Sentences {
    /// Of fewer bikes no rank within a category is said.
    static final int FEWEST = 3;

    /// Where standings come from.
    @FunctionalInterface
    public interface Standings {
        Standing of(FigureSpec figure, Variant variant, Population population);
    }

    private Sentences() {}

    /// All of them: figures and ranks, then the verdicts on its claims, then the legal classes.
    public static List<Sentence> of(TestedBike bike, List<ClaimVerdict> verdicts, Standings standings) {
        var all = new ArrayList<>(of(bike, standings));
        all.addAll(ClaimSentence.all(bike.bike(), verdicts));
        all.addAll(ClassSentence.all(bike));
        return List.copyOf(all);
    }

    /// Those of figures and ranks.
    public static List<Sentence> of(TestedBike bike, Standings standings) {
        var all = new ArrayList<Sentence>();
        for (var trial : Trials.ALL) {
            for (var spec : trial.declaration().figures()) {
                var keys = new TreeSet<FigureKey>();
                bike.of(spec.id()).forEach(result -> keys.add(result.figure().key()));
                keys.forEach(key -> about(new About(bike, trial, spec, key), standings, all));
            }
        }
        return List.copyOf(all);
    }

    private record About(TestedBike bike, Trial trial, FigureSpec spec, FigureKey key) {}

    private static void about(About about, Standings standings, List<Sentence> all) {
        var declaration = about.trial.declaration();
        var bike = about.bike.bike();
        about.bike
                .latest(about.key)
                .map(result -> new FigureSentence(bike, declaration, about.spec, result).sentence())
                .ifPresent(all::add);
        if (about.spec.better() == Better.NEITHER) {
            return;
        }
        var every = standings.of(about.spec, about.key.variant(), Population.EVERY_BIKE);
        RankSentence.of(bike, declaration, every).ifPresent(all::add);
        category(bike.category())
                .map(population -> standings.of(about.spec, about.key.variant(), population))
                .filter(standing -> standing.count() >= FEWEST && standing.count() < every.count())
                .flatMap(standing -> RankSentence.of(bike, declaration, standing))
                .ifPresent(all::add);
    }

    private static Optional<Population> category(String category) {
        if (category.isBlank() || category.contains(" ")) {
            return Optional.empty();
        }
        return Population.parse("category=" + category) instanceof Population.Read.Stated(Population population)
                ? Optional.of(population)
                : Optional.empty();
    }
}
