package org.measuredmile.comparison.sentence;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.verdict.ClaimVerdict;
import org.measuredmile.comparison.verdict.Tried;
import org.measuredmile.comparison.verdict.Wording;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trials;

/// The sentence of a verdict on a claim: its wording for print, and the same in words for saying.
///
/// Shape: the id names the item and the claim's conditions.
record ClaimSentence(Bike bike, ClaimVerdict verdict) {
    Sentence sentence(String id) {
        var decisive = verdict.decisive();
        return new Sentence(
                id,
                Sentence.Kind.CLAIM,
                bike.id(),
                chapter(),
                "Claimed " + verdict.item().words() + ", “" + verdict.claim().words() + "”",
                wording(UnitSystem.METRIC),
                wording(UnitSystem.IMPERIAL),
                behind(decisive),
                new Sentence.Basis(
                        verdict.claim().words() + " " + verdict.claim().conditions(),
                        decisive.map(ClaimSentence::basis).orElse(verdict.reason()),
                        ""));
    }

    private Sentence.Wording wording(UnitSystem system) {
        String written = new Wording(system).of(bike.title(), verdict);
        // Aloud one system does: the other stands in brackets behind it.
        String oneSystem = written.replaceAll("[“”]", "").replaceAll(" \\([−0-9][^)]*\\)", "");
        return new Sentence.Wording(written, SpokenWords.of(oneSystem));
    }

    private Chapter chapter() {
        return verdict.item()
                .measure()
                .flatMap(measure -> Trials.figure(measure.figure()))
                .map(FigureSpec::chapter)
                .orElse(Chapter.LIVING);
    }

    private static String basis(Tried tried) {
        return tried.value() + " " + tried.known().interval95();
    }

    private Sentence.Behind behind(Optional<Tried> decisive) {
        var result = decisive.map(Tried::result);
        Optional<Interval> interval = decisive.map(tried -> tried.known().interval95());
        var remarks = new ArrayList<String>();
        remarks.add(verdict.verdict().words());
        verdict.probability()
                .ifPresent(chance -> remarks.add("chance that the claim holds " + QuantityPrinter.chance(chance)));
        return new Sentence.Behind(
                result.map(one -> one.figure().key()),
                verdict.item().kind(),
                decisive.map(tried -> OptionalDouble.of(tried.value())).orElse(OptionalDouble.empty()),
                interval,
                result.map(one -> one.figure().counted()).orElse(0L),
                Optional.empty(),
                0,
                result.map(TestedBike.Result::date),
                result.map(TestedBike.Result::day).orElse(""),
                remarks);
    }

    /// The sentences of a bike's verdicts; a second claim of the same item under the same conditions is counted.
    static List<Sentence> all(Bike bike, List<ClaimVerdict> verdicts) {
        var ids = new HashSet<String>();
        var all = new ArrayList<Sentence>();
        for (var verdict : verdicts) {
            String base = bike.id() + "/" + Sentence.Kind.CLAIM.id() + "/"
                    + verdict.item().id() + conditions(verdict);
            String id = base;
            for (int next = 2; !ids.add(id); next++) {
                id = base + "/" + next;
            }
            all.add(new ClaimSentence(bike, verdict).sentence(id));
        }
        return List.copyOf(all);
    }

    private static String conditions(ClaimVerdict verdict) {
        String conditions = verdict.claim().conditions().entrySet().stream()
                .map(one -> one.getKey() + "=" + one.getValue().replaceAll("\\s+", ""))
                .sorted()
                .collect(Collectors.joining(","));
        return conditions.isEmpty() ? "" : "/" + conditions.toLowerCase(Locale.ROOT);
    }
}
