package org.measuredmile.comparison.sentence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Air;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.Saying;

/// The sentence of a figure: what was measured, of how many runs, how well it is known and what was assumed for it.
///
/// Unit: the interval is the any-day one, which is what a reader takes a number for.
public record FigureSentence(Bike bike, Declaration trial, FigureSpec spec, TestedBike.Result result) {
    private static final String REFERENCE = "reference";
    /// So many assumptions are named aloud; the rest is counted.
    private static final int NAMED_ALOUD = 2;

    public Sentence sentence() {
        var figure = result.figure();
        return new Sentence(
                Sentence.id(bike.id(), figure.key(), Sentence.Kind.FIGURE.id()),
                Sentence.Kind.FIGURE,
                bike.id(),
                spec.chapter(),
                about(trial, spec, figure.key().variant()),
                wording(UnitSystem.METRIC),
                wording(UnitSystem.IMPERIAL),
                behind(),
                new Sentence.Basis(method(figure), basis(figure), ""));
    }

    /// What a figure and its variant are called.
    static String about(Declaration trial, FigureSpec spec, Variant variant) {
        String words = variant.values().isEmpty() ? "" : trial.words(variant);
        return Phrase.capital(spec.title()) + (words.isEmpty() ? "" : ", " + words);
    }

    static String method(Figure figure) {
        return figure.trial() + " " + figure.version();
    }

    private String basis(Figure figure) {
        Interval interval = figure.anyDay().interval95();
        return String.join(
                " ",
                Double.toString(figure.value()),
                Double.toString(interval.low()),
                Double.toString(interval.high()),
                Long.toString(figure.counted()),
                result.date().toString());
    }

    private Sentence.Behind behind() {
        var figure = result.figure();
        return new Sentence.Behind(
                Optional.of(figure.key()),
                figure.kind(),
                OptionalDouble.of(figure.value()),
                Optional.of(figure.anyDay().interval95()),
                figure.counted(),
                Optional.empty(),
                0,
                Optional.of(result.date()),
                result.day(),
                figure.assumed());
    }

    private Sentence.Wording wording(UnitSystem system) {
        return new Sentence.Wording(written(new Writing(system)), spoken(new Speech(system)));
    }

    private String written(Writing voice) {
        return Phrase.capital(said(voice)) + ending(runs(voice), assumed(voice, Integer.MAX_VALUE), "; ", cover(voice));
    }

    private String spoken(Speech voice) {
        var words = new StringBuilder(Phrase.capital(said(voice))).append('.');
        about(voice).ifPresent(other -> words.append(" That is ").append(other).append('.'));
        String runs = runs(voice);
        String assumed = assumed(voice, NAMED_ALOUD);
        if (!runs.isEmpty()) {
            words.append(runs.startsWith("from") ? " It comes " : " It is ").append(runs);
            words.append(assumed.isEmpty() ? "" : ", " + assumed).append('.');
        } else if (!assumed.isEmpty()) {
            words.append(" That is ").append(assumed).append('.');
        }
        cover(voice)
                .ifPresent(
                        cover -> words.append(' ').append(Phrase.capital(cover)).append('.'));
        return words.toString();
    }

    private static String ending(String runs, String assumed, String before, Optional<String> cover) {
        var words = new StringBuilder();
        words.append(runs.isEmpty() ? "" : ", " + runs);
        words.append(assumed.isEmpty() ? "" : ", " + assumed);
        cover.ifPresent(one -> words.append(before).append(one));
        return words.append('.').toString();
    }

    private boolean isAtReference() {
        return result.figure().key().variant().has("at", REFERENCE);
    }

    /// The trial's sentence with its slots filled, or one made of the title where it has none.
    private String said(Voice voice) {
        var figure = result.figure();
        var saying = spec.saying();
        var phrase = Phrase.of(voice, bike, trial, figure.key().variant());
        Interval interval = figure.anyDay().interval95();
        String value = saying.bound() == Saying.Bound.AT_LEAST
                ? voice.atLeast(interval, spec.kind())
                : voice.figure(figure.value(), interval.halfWidth(), spec.kind());
        if (!saying.isSaid()) {
            String words = phrase.variantWords();
            return phrase.fill(
                    "{bike’s} " + spec.title() + (words.isEmpty() ? "" : ", " + words + ",") + " is {value}", value);
        }
        if (!saying.unshown().isEmpty() && interval.contains(0)) {
            return phrase.fill(saying.unshown(), value);
        }
        if (isAtReference()) {
            String template = saying.reckoned().isEmpty() ? saying.sentence() : saying.reckoned();
            return reference(voice) + ", " + phrase.fill(Phrase.small(template), value);
        }
        return phrase.fill(saying.sentence(), value);
    }

    /// The conditions that figures at reference are brought to: `for a rider of 80 kg on a still day at 20 °C`.
    static String reference(Voice voice) {
        return "for a rider of " + voice.quantity(RoadSetting.REFERENCE_RIDER_KG, QuantityKind.MASS)
                + " on a still day at " + voice.quantity(Air.REFERENCE.temperatureK(), QuantityKind.TEMPERATURE);
    }

    /// Of how many runs: `the mean of six stops`.
    private String runs(Voice voice) {
        long counted = result.figure().counted();
        if (counted == 0) {
            return "";
        }
        var runs = spec.saying().runs();
        String name = counted == 1 ? runs.one() : runs.many();
        String number = voice.count(counted) + " " + name;
        if (isAtReference()) {
            return "reckoned from " + number;
        }
        return runs.mean() && counted > 1 ? "the mean of " + number : "from " + number;
    }

    private String assumed(Voice voice, int most) {
        List<String> names = AssumedWords.names(result.figure().assumed());
        if (names.isEmpty()) {
            return "";
        }
        int more = names.size() - most;
        List<String> told = more <= 0 ? names : new ArrayList<>(names.subList(0, most));
        if (more > 0) {
            told.add(voice.count(more) + " more " + (more == 1 ? "thing" : "things"));
        }
        return "with " + Listing.and(told) + " assumed";
    }

    /// What the half-width covers; nothing where there is none to explain.
    private Optional<String> cover(Voice voice) {
        boolean isExact = result.figure().anyDay().interval95().halfWidth() == 0;
        boolean isBound = spec.saying().bound() != Saying.Bound.NONE;
        return isExact || isBound
                ? Optional.empty()
                : Optional.of(voice.words("19") + " days in " + voice.words("20") + " should lie within that");
    }

    /// About how much it is in the other system; empty where both say the same.
    private Optional<String> about(Speech voice) {
        var figure = result.figure();
        var other = voice.system().other();
        if (spec.kind().shown(voice.system()) == spec.kind().shown(other)) {
            return Optional.empty();
        }
        Interval interval = figure.anyDay().interval95();
        boolean isBound = spec.saying().bound() == Saying.Bound.AT_LEAST;
        return Optional.of(
                isBound
                        ? SpokenQuantity.atLeast(interval.low(), interval.halfWidth(), spec.kind(), other)
                        : SpokenQuantity.about(figure.value(), interval.halfWidth(), spec.kind(), other));
    }
}
