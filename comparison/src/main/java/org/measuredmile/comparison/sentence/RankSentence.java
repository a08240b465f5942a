package org.measuredmile.comparison.sentence;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.measuredmile.comparison.standing.Contrast;
import org.measuredmile.comparison.standing.Entrant;
import org.measuredmile.comparison.standing.Standing;
import org.measuredmile.comparison.standing.StandingRow;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.Sha256;

/// The sentence of a rank: which place in which population, how sure that is, and who can't be told apart.
///
/// Valid: for figures of which one end is better, and populations of two bikes or more.
public record RankSentence(Bike bike, Declaration trial, Standing standing, StandingRow row) {
    /// So many bikes that can't be told apart are named; more are counted.
    private static final int NAMED = 3;
    /// A smaller chance of being the best is not worth a reader's time, unless the bike stands first.
    private static final double WORTH_SAYING = 0.1;

    private static final String EVERY_BIKE = "every-bike";

    /// The sentence of a bike in a standing; empty where it does not stand in it, or neither end is better.
    static Optional<Sentence> of(Bike bike, Declaration trial, Standing standing) {
        if (standing.figure().better() == Better.NEITHER || standing.count() < 2) {
            return Optional.empty();
        }
        return standing.rows().stream()
                .filter(row -> row.entrant().bike().equals(bike.id()))
                .filter(row -> !row.entrant().isFromLedger())
                .findFirst()
                .map(row -> new RankSentence(bike, trial, standing, row).sentence());
    }

    private Sentence sentence() {
        var key = new FigureKey(standing.figure().id(), standing.variant());
        String expression = standing.population().expression();
        String population = expression.isEmpty() ? EVERY_BIKE : expression.replace(' ', ',');
        var entrant = row.entrant();
        return new Sentence(
                Sentence.id(bike.id(), key, Sentence.Kind.RANK.id() + "/" + population),
                Sentence.Kind.RANK,
                bike.id(),
                standing.figure().chapter(),
                FigureSentence.about(trial, standing.figure(), standing.variant()),
                wording(UnitSystem.METRIC),
                wording(UnitSystem.IMPERIAL),
                new Sentence.Behind(
                        Optional.of(key),
                        standing.figure().kind(),
                        OptionalDouble.of(entrant.value()),
                        Optional.of(entrant.anyDay().interval95()),
                        0,
                        Optional.of(expression),
                        standing.count(),
                        standing.date(),
                        "",
                        remarks()),
                new Sentence.Basis(trial.id() + " " + entrant.version(), basis(row), others()));
    }

    private List<String> remarks() {
        String span = row.rankLow() == row.rankHigh() ? "" + row.rankLow() : row.rankLow() + " to " + row.rankHigh();
        return List.of(
                "rank " + (row.joint() ? "joint " : "") + row.rank() + ", " + span + " in 95 of 100 draws",
                "chance of being best " + new Writing(UnitSystem.METRIC).chance(row.probabilityBest()));
    }

    private static String basis(StandingRow row) {
        var interval = row.entrant().anyDay().interval95();
        return row.entrant().value() + " " + interval.low() + " " + interval.high();
    }

    /// The other bikes of the population with their results, as a hash.
    private String others() {
        String all = standing.rows().stream()
                .filter(other -> !other.equals(row))
                .map(other -> other.entrant().bike() + " " + basis(other))
                .sorted()
                .collect(Collectors.joining("\n"));
        return standing.count() + " " + Sha256.of(all.getBytes(StandardCharsets.UTF_8));
    }

    private Sentence.Wording wording(UnitSystem system) {
        var writing = new Writing(system);
        var speech = new Speech(system);
        List<String> parts = parts(speech);
        String spoken = place(speech) + ". "
                + parts.stream().map(part -> Phrase.capital(part) + ".").collect(Collectors.joining(" "));
        return new Sentence.Wording(place(writing) + "; " + Listing.clauses(parts(writing)) + ".", spoken);
    }

    private List<String> parts(Voice voice) {
        return Stream.of(span(voice), others(voice), chance(voice))
                .filter(part -> !part.isEmpty())
                .toList();
    }

    /// `Of the 28 bikes we have tested this way, the Lamplight’s stopping distance is the third shortest`.
    private String place(Voice voice) {
        var figure = standing.figure();
        var phrase = Phrase.of(voice, bike, trial, standing.variant());
        String noun = phrase.fill(
                figure.saying().noun().isEmpty()
                        ? titled(phrase)
                        : figure.saying().noun(),
                "");
        String end = figure.better() == Better.LESS
                ? Ends.of(figure).least()
                : Ends.of(figure).most();
        String rank = row.rank() == 1 ? end : voice.ordinal(row.rank()) + " " + end;
        boolean isLast = row.rank() == standing.count() && !row.joint();
        String last = figure.better() == Better.LESS
                ? Ends.of(figure).most()
                : Ends.of(figure).least();
        return "Of the " + voice.count(standing.count()) + " " + voice.words(PopulationWords.of(standing.population()))
                + " we have tested this way"
                + standing.date().map(date -> ", to " + voice.day(date)).orElse("")
                + ", " + phrase.name() + "’s " + noun + closing(voice) + " is the "
                + (isLast ? last : (row.joint() ? "joint " : "") + rank);
    }

    private String titled(Phrase phrase) {
        String words = phrase.variantWords();
        return standing.figure().title() + (words.isEmpty() ? "" : ", " + words);
    }

    /// What closes the noun: the reference conditions, or the comma behind a variant in words.
    private String closing(Voice voice) {
        if (standing.variant().has("at", "reference")) {
            return ", reckoned " + FigureSentence.reference(voice) + ",";
        }
        boolean isInCommas = standing.figure().saying().noun().isEmpty()
                && !standing.variant().values().isEmpty();
        return isInCommas ? "," : "";
    }

    private String span(Voice voice) {
        if (row.rankLow() == row.rankHigh()) {
            return "no other place is likely";
        }
        return "it may be anywhere " + voice.places(row.rankLow(), row.rankHigh());
    }

    private String others(Voice voice) {
        var alike = standing.rows().stream()
                .map(StandingRow::entrant)
                .filter(other -> !other.equals(row.entrant()))
                .filter(other -> !Contrast.between(row.entrant(), other).tellsApart())
                .map(RankSentence::name)
                .toList();
        if (alike.isEmpty()) {
            return "it can be told apart from all the others";
        }
        boolean all = alike.size() == standing.count() - 1 && alike.size() > NAMED;
        String whom = all
                ? "any of the others"
                : alike.size() <= NAMED ? Listing.and(alike) : voice.count(alike.size()) + " of the others";
        return "it can’t be told apart from " + whom;
    }

    private static String name(Entrant entrant) {
        String title = entrant.title();
        String prefix = entrant.maker() + " ";
        boolean named = !entrant.maker().isEmpty() && title.startsWith(prefix) && title.length() > prefix.length();
        return "the " + (named ? title.substring(prefix.length()) : title);
    }

    /// Said where being the best is possible at all.
    private String chance(Voice voice) {
        boolean matters = row.rank() == 1 || row.probabilityBest() >= WORTH_SAYING;
        if (row.rankLow() > 1 || !matters) {
            return "";
        }
        var ends = Ends.of(standing.figure());
        String best = standing.figure().better() == Better.LESS ? ends.least() : ends.most();
        return "the chance that it is the " + best + " is " + voice.chance(row.probabilityBest());
    }
}
