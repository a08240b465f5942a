package org.measuredmile.comparison.sentence;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.standing.Standing;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trials;
import org.measuredmile.trial.VariantKey;

/// What holds of every sentence: over every figure of every trial in every variant, with generated values.
class SentencesTest {
    private static final Bike LAMPLIGHT = bike("ostrelle-lamplight", "Ostrelle", "Lamplight");

    /// A figure in one of its variants.
    record Case(Declaration trial, FigureSpec spec, Variant variant) {
        @Override
        public String toString() {
            return spec.id() + " " + variant.text();
        }
    }

    static Stream<Case> everyFigureInEveryVariant() {
        return Trials.ALL.stream()
                .map(trial -> trial.declaration())
                .flatMap(trial -> trial.figures().stream()
                        .flatMap(spec -> variants(trial, spec).stream().map(one -> new Case(trial, spec, one))));
    }

    private static List<Variant> variants(Declaration trial, FigureSpec spec) {
        List<Variant> all = List.of(Variant.NONE);
        for (String key : spec.variantKeys()) {
            var more = new ArrayList<Variant>();
            List<String> values = trial.variant(key)
                    .map(one ->
                            one.values().stream().map(VariantKey.Choice::value).toList())
                    .filter(one -> !one.isEmpty())
                    .orElse(key.equals("level") ? List.of("3", "off", "throttle") : List.of("mill-hill"));
            for (var variant : all) {
                if (key.equals("at")) {
                    more.add(variant);
                }
                values.forEach(value -> more.add(variant.with(key, value)));
            }
            all = more;
        }
        return all;
    }

    @ParameterizedTest
    @MethodSource("everyFigureInEveryVariant")
    void everyFigureReadsAsASentenceAndIsSaidWithoutSigns(Case one) {
        var random = new Seed(20_310_412).child(one.toString()).stream(0);
        for (int i = 0; i < 20; i++) {
            double value = 0.02 * StrictMath.exp(10 * random.nextDouble());
            double halfWidth = value * StrictMath.exp(-6 * random.nextDouble());
            var sentence = sentence(one, value, halfWidth, random.nextInt(9));

            for (var system : UnitSystem.values()) {
                var wording = sentence.in(system);
                assertThat(wording.written())
                        .matches("[A-Z].*\\.")
                        .contains("Lamplight")
                        .doesNotContain(
                                "=", "{", "}", "  ", " ,", ",,", one.spec().id(), "null")
                        .doesNotContainPattern("\\d-(mph|kmh)|level[A-Z]|[a-z]+-hill");
                assertThat(wording.spoken())
                        .matches("[A-Z].*\\.")
                        .doesNotContain("  ", " ,", ",,", " .", "..")
                        .matches("[A-Za-z ,.;’'\\-]*");
            }
        }
    }

    @Test
    void saysAStopAsAReviewerWould() {
        // 21.4 ft is 6.52272 m, 0.61 ft 0.185928 m (NIST SP 811, appendix B: 1 ft = 0.3048 m exactly).
        var stop = new Case(
                trial("braking"),
                spec("braking.stopping-distance"),
                Variant.of("method", "tape").with("nominal", "20-mph").with("surface", "dry"));

        var sentence = sentence(stop, 6.52272, 0.185928, 6);

        assertThat(sentence.id())
                .isEqualTo(
                        "ostrelle-lamplight/braking.stopping-distance/method=tape,nominal=20-mph,surface=dry/figure");
        assertThat(plain(sentence.imperial().written()))
                .isEqualTo(
                        "From 20 mph in the dry, the Lamplight stopped in 21.4 ± 0.6 ft (6.52 ± 0.19 m), the mean of "
                                + "six stops, with level road and wind assumed; 19 days in 20 should lie within that.");
        assertThat(sentence.imperial().spoken())
                .isEqualTo("From twenty miles an hour in the dry, the Lamplight stopped in twenty-one point four feet, "
                        + "give or take six tenths of a foot. That is about six and a half metres. It is the mean of "
                        + "six stops, with level road and wind assumed. Nineteen days in twenty should lie within "
                        + "that.");
        assertThat(plain(sentence.metric().written())).contains("6.52 ± 0.19 m (21.4 ± 0.6 ft)");
    }

    @Test
    void aFigureAtReferenceSaysForWhom() {
        var climb = new Case(
                trial("climb"),
                spec("climb.time"),
                Variant.of("at", "reference").with("course", "mill-hill").with("drive", "throttle"));

        assertThat(plain(sentence(climb, 79.4, 5.1, 3).metric().written()))
                .startsWith("For a rider of 80 kg (176 lb) on a still day at 20 °C (68 °F), by throttle alone, the "
                        + "Lamplight would climb Mill Hill in 1:19 ± 5 s, reckoned from three climbs");
    }

    @Test
    void aBoundIsRoundedDownAndHasNoInterval() {
        // 47.1495 km is 29.2974 mi (1 mi = 1.609344 km, NIST SP 811, appendix B).
        var stopped = new Case(
                trial("range"), spec("range.at-least"), Variant.of("level", "4").with("levelRole", "highest"));

        assertThat(plain(sentence(stopped, 47_522.1, 372.6, 1).imperial().written()))
                .startsWith("At level 4 (its highest), on a ride that was stopped early the Lamplight went at least "
                        + "29.2 mi (47.1 km), from one ride")
                .doesNotContain("±", "19 days");
    }

    @Test
    void aDifferenceThatIsNotShownIsSaidSo() {
        var gain = new Case(trial("climb"), spec("climb.pedalling-gain"), Variant.of("course", "mill-hill"));

        assertThat(sentence(gain, 1.2, 3.4, 6).metric().written()).contains("was no different");
        assertThat(sentence(gain, 12, 3.4, 6).metric().written()).contains("saved the Lamplight");
    }

    @Test
    void theHashChangesWithWhatIsSaidAndTheIdDoesNot() {
        var mass = new Case(trial("weighin"), spec("weighin.mass"), Variant.of("battery", "in"));
        var before = sentence(mass, 27.5, 0.12, 3);

        assertThat(sentence(mass, 27.5001, 0.12, 3).hash()).isEqualTo(before.hash());
        var after = sentence(mass, 27.9, 0.12, 3);
        assertThat(after.id()).isEqualTo(before.id());
        assertThat(after.hash()).isNotEqualTo(before.hash()).matches("[0-9a-f]{8}");
        assertThat(plain(before.imperial().written()))
                .startsWith("With the battery in, the Lamplight weighs 60.6 ± 0.3 lb");
    }

    @Test
    void aBikeHasASentenceForEveryAcceptedFigureAndARankWhereOneEndIsBetter() {
        var bike = tested("ostrelle-lamplight", 27.5, true);
        Sentences.Standings standings = (figure, variant, population) ->
                Standing.of(figure, variant, population, Fleet.entrants(figure, variant, 27.5));

        var sentences = Sentences.of(bike, standings);

        assertThat(sentences)
                .extracting(Sentence::id)
                .containsExactly(
                        "ostrelle-lamplight/weighin.mass/battery=in/figure",
                        "ostrelle-lamplight/weighin.mass/battery=in/rank/every-bike",
                        "ostrelle-lamplight/weighin.mass/battery=in/rank/category=cargo");
        assertThat(plain(sentences.get(1).metric().written()))
                .isEqualTo(
                        "Of the six bikes we have tested this way, to 6 April 2031, the Lamplight’s mass, battery in, "
                                + "is the third lightest; no other place is likely, and it can be told apart from all "
                                + "the others.");
        assertThat(sentences.get(2).metric().spoken())
                .startsWith("Of the four cargo bikes we have tested this way, to the sixth of April twenty thirty-one, "
                        + "the Lamplight’s mass, battery in, is the second lightest.");
        assertThat(new HashSet<>(sentences.stream().map(Sentence::id).toList())).hasSameSizeAs(sentences);
        assertThat(Sentences.of(tested("ostrelle-lamplight", 27.5, false), standings))
                .isEmpty();
    }

    @Test
    void aChangedReadingChangesItsSentencesAndThoseOfTheOthersRanks() {
        Sentences.Standings before = (figure, variant, population) ->
                Standing.of(figure, variant, population, Fleet.entrants(figure, variant, 27.5));
        Sentences.Standings after = (figure, variant, population) ->
                Standing.of(figure, variant, population, Fleet.entrants(figure, variant, 29.5));
        var own = seen(Sentences.of(tested("ostrelle-lamplight", 27.5, true), before));
        var other = seen(Sentences.of(tested("bike-3", 28, true), before));

        assertThat(SentenceChange.between(own, Sentences.of(tested("ostrelle-lamplight", 27.5, true), before)))
                .isEmpty();
        assertThat(SentenceChange.between(own, Sentences.of(tested("ostrelle-lamplight", 29.5, true), after)))
                .hasSize(3)
                .allMatch(change -> change.kind() == SentenceChange.Kind.CHANGED
                        && change.causes().equals(List.of(SentenceChange.Cause.FIGURE)));
        assertThat(SentenceChange.between(other, Sentences.of(tested("bike-3", 28, true), after)))
                .isNotEmpty()
                .allMatch(change -> change.causes().equals(List.of(SentenceChange.Cause.POPULATION)));
        assertThat(SentenceChange.between(own, List.of()))
                .hasSize(3)
                .allMatch(change -> change.kind() == SentenceChange.Kind.GONE);
        assertThat(SentenceChange.between(List.of(), Sentences.of(tested("bike-3", 28, true), after)))
                .allMatch(change -> change.kind() == SentenceChange.Kind.NEW);
    }

    private static List<SentenceChange.Seen> seen(List<Sentence> sentences) {
        return sentences.stream().map(SentenceChange.Seen::of).toList();
    }

    private static TestedBike tested(String id, double massKg, boolean accepted) {
        var one = new Case(trial("weighin"), spec("weighin.mass"), Variant.of("battery", "in"));
        return new TestedBike(
                bike(id, "Ostrelle", id.equals("ostrelle-lamplight") ? "Lamplight" : id),
                List.of(result(one, massKg, 0.12, 3, accepted)));
    }

    private static Sentence sentence(Case one, double value, double halfWidth, int runs) {
        var result = result(one, value, halfWidth, runs, true);
        return new FigureSentence(LAMPLIGHT, one.trial(), one.spec(), result).sentence();
    }

    private static TestedBike.Result result(Case one, double value, double halfWidth, int runs, boolean accepted) {
        var uncertainty = new Uncertainty(halfWidth / 2, 30, Interval.around(value, halfWidth));
        var counted = IntStream.range(0, runs)
                .mapToObj(i -> new Figure.FigureRun("r-" + i, Run.State.CONFIRMED, true, "", OptionalDouble.empty()))
                .toList();
        var figure = new Figure(
                new FigureKey(one.spec().id(), one.variant()),
                one.spec().kind(),
                one.trial().id(),
                one.trial().version(),
                value,
                uncertainty,
                uncertainty,
                counted,
                List.of(),
                List.of(),
                one.spec().id().startsWith("braking")
                        ? List.of("level road, within 0.3 %", "wind not above 3 m/s")
                        : List.of(),
                List.of(),
                List.of(),
                List.of());
        return new TestedBike.Result(figure, LocalDate.of(2031, 4, 1), "day-1", "", accepted);
    }

    private static Declaration trial(String id) {
        return Trials.find(id).orElseThrow().declaration();
    }

    private static FigureSpec spec(String id) {
        return Trials.figure(id).orElseThrow();
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    private static Bike bike(String id, String maker, String model) {
        return new Bike(
                id,
                maker,
                model,
                OptionalInt.empty(),
                "cargo",
                "both",
                "unknown",
                OptionalInt.empty(),
                "",
                Bike.Price.UNKNOWN,
                Bike.Loan.UNKNOWN,
                List.of());
    }
}
