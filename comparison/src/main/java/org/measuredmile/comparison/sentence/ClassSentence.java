package org.measuredmile.comparison.sentence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.legal.ClassOutcome;
import org.measuredmile.comparison.legal.LegalClasses;
import org.measuredmile.comparison.legal.RuleWords;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.Trials;

/// The sentence of a bike beside a legal class, with the caution that goes wherever its outcome goes.
///
/// Unit: numbers stand in the unit of the text that is compared, alike in both systems.
record ClassSentence(Bike bike, ClassOutcome outcome) {
    Sentence sentence() {
        var wording = new Sentence.Wording(written(), spoken());
        var legalClass = outcome.legalClass();
        return new Sentence(
                bike.id() + "/" + Sentence.Kind.CLASS.id() + "/" + legalClass.id(),
                Sentence.Kind.CLASS,
                bike.id(),
                Chapter.LIVING,
                legalClass.title() + ", " + legalClass.jurisdiction(),
                wording,
                wording,
                behind(),
                new Sentence.Basis(method(), basis(), ""));
    }

    /// Which text, as it stood when, and what it asks.
    private String method() {
        var legalClass = outcome.legalClass();
        return String.join(" ", legalClass.section(), legalClass.date(), legalClass.until());
    }

    private String basis() {
        var decided = outcome.decidedBy();
        return decided.outcome().id() + " "
                + decided.result()
                        .map(result -> result.figure().value() + " "
                                + result.figure().anyDay().interval95())
                        .orElse(decided.said());
    }

    private String words() {
        var decided = outcome.decidedBy();
        return RuleWords.of(decided.outcome(), decided.rule());
    }

    private String written() {
        var legalClass = outcome.legalClass();
        String text = legalClass.section().isEmpty() ? "" : ", " + legalClass.section();
        String title = legalClass.title() + " (" + legalClass.jurisdiction() + text + ")";
        return "Beside " + title + ", " + Phrase.name(bike) + ": " + words() + ". "
                + ended(outcome.decidedBy().said()) + " " + LegalClasses.CAUTION;
    }

    private String spoken() {
        var legalClass = outcome.legalClass();
        String first = "Beside " + legalClass.title() + " of " + legalClass.jurisdiction() + ", " + Phrase.name(bike)
                + ": " + words() + ". ";
        return SpokenWords.of(first + ended(outcome.decidedBy().said())) + " " + LegalClasses.CAUTION;
    }

    private static String ended(String sentence) {
        String capital = Phrase.capital(sentence.strip());
        return capital.endsWith(".") ? capital : capital + ".";
    }

    private Sentence.Behind behind() {
        var result = outcome.decidedBy().result();
        var remarks = new ArrayList<String>();
        remarks.add(outcome.legalClass().basis().words());
        remarks.add(outcome.decidedBy().basis().words());
        String caveat = outcome.legalClass().caveat();
        if (!caveat.isEmpty()) {
            remarks.add(caveat);
        }
        return new Sentence.Behind(
                result.map(one -> one.figure().key()),
                result.map(one -> one.figure().kind()).orElse(QuantityKind.SPEED),
                result.map(one -> OptionalDouble.of(one.figure().value())).orElse(OptionalDouble.empty()),
                result.map(one -> one.figure().anyDay().interval95()),
                result.map(one -> one.figure().counted()).orElse(0L),
                Optional.empty(),
                0,
                result.map(TestedBike.Result::date),
                result.map(TestedBike.Result::day).orElse(""),
                remarks);
    }

    /// The classes in force, for a bike of which something was measured.
    static List<Sentence> all(TestedBike bike) {
        boolean isMeasured = Trials.ALL.stream()
                .flatMap(trial -> trial.declaration().figures().stream())
                .anyMatch(spec -> !bike.of(spec.id()).isEmpty());
        return isMeasured
                ? LegalClasses.of(bike).outcomes().stream()
                        .map(outcome -> new ClassSentence(bike.bike(), outcome).sentence())
                        .toList()
                : List.of();
    }
}
