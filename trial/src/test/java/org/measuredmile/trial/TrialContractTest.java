package org.measuredmile.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;

/// What holds for every trial, whatever it measures.
class TrialContractTest {
    static List<Trial> trials() {
        return Trials.ALL;
    }

    @Test
    void theListOfTrialsHasNoDoubles() {
        var ids = Trials.ALL.stream().map(trial -> trial.declaration().id()).toList();
        assertThat(ids).isNotEmpty().doesNotHaveDuplicates();
    }

    @ParameterizedTest
    @MethodSource("trials")
    void everyFigureIsNamedAfterItsTrialAndOneSpeaksForIt(Trial trial) {
        var declaration = trial.declaration();
        var ids = new HashSet<String>();
        for (var figure : declaration.figures()) {
            assertThat(figure.id()).startsWith(declaration.id() + ".");
            assertThat(ids.add(figure.id())).as(figure.id()).isTrue();
            assertThat(figure.title()).isNotBlank();
            assertThat(figure.prior().betweenRuns()).isNotNegative();
            for (var key : figure.variantKeys()) {
                assertThat(declaration.variant(key))
                        .as(figure.id() + " by " + key)
                        .isPresent();
            }
        }
        assertThat(declaration.figures().stream().filter(FigureSpec::primary))
                .hasSize(declaration.isReadOnce() ? 0 : 1);
    }

    @ParameterizedTest
    @MethodSource("trials")
    void theDeclarationTellsAPersonAllTheyNeed(Trial trial) {
        var declaration = trial.declaration();
        assertThat(declaration.purpose()).isNotBlank();
        assertThat(declaration.follows()).isNotBlank();
        assertThat(declaration.handbook().measurand()).isNotBlank();
        assertThat(declaration.handbook().formula()).isNotBlank();
        assertThat(declaration.handbook().example()).isNotBlank();
        assertThat(declaration.handbook().sources()).isNotEmpty();
        assertThat(declaration.runs().usual())
                .isGreaterThanOrEqualTo(declaration.runs().least());
        if (declaration.needsPreRideCheck()) {
            assertThat(declaration.cautions()).isNotEmpty();
        }
        for (var key : declaration.variants()) {
            assertThat(key.usual().isEmpty() || key.admits(key.usual()))
                    .as(key.name())
                    .isTrue();
        }
    }

    @ParameterizedTest
    @MethodSource("trials")
    void aTrialWithoutRunsAsksForReadingsOfTheDayAndPromisesNoFigure(Trial trial) {
        var declaration = trial.declaration();
        if (declaration.isReadOnce()) {
            assertThat(declaration.figures()).isEmpty();
            assertThat(declaration.readings()).isNotEmpty().allMatch(spec -> spec.scope() == ReadingSpec.Scope.DAY);
        } else {
            assertThat(declaration.figures()).isNotEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("trials")
    void everyLimitIsOfAReadingThatTheTrialAsksFor(Trial trial) {
        for (var limit : trial.declaration().limits()) {
            assertThat(trial.declaration().reading(limit.reading()))
                    .as(limit.title())
                    .isPresent();
            assertThat(limit.source()).isNotBlank();
        }
    }

    @ParameterizedTest
    @MethodSource("trials")
    void nothingInGivesNothingOut(Trial trial) {
        assertThat(trial.reduce(input(trial, List.of()))).isEqualTo(Outcome.NOTHING);
    }

    @ParameterizedTest
    @MethodSource("trials")
    void aVoidRunIsShownAndGivesNoFigure(Trial trial) {
        var cause = trial.declaration().causes().getFirst();
        var outcome = trial.reduce(input(trial, List.of(run(trial, Run.State.VOID, cause.code()))));
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs()).singleElement().satisfies(run -> {
            assertThat(run.counted()).isFalse();
            assertThat(run.reason()).contains(cause.words());
        });
    }

    @ParameterizedTest
    @MethodSource("trials")
    void aRunWithoutReadingsOrRecordingIsShownWithAReason(Trial trial) {
        var outcome = trial.reduce(input(trial, List.of(run(trial, Run.State.CONFIRMED, ""))));
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs()).singleElement().satisfies(run -> {
            assertThat(run.counted()).isFalse();
            assertThat(run.reason()).isNotBlank();
        });
    }

    @ParameterizedTest
    @MethodSource("trials")
    void theSameInputTwiceGivesTheSameOutcome(Trial trial) {
        var input = input(trial, List.of(run(trial, Run.State.CONFIRMED, "")));
        assertThat(trial.reduce(input)).isEqualTo(trial.reduce(input));
        assertThat(trial.declaration()).isEqualTo(trial.declaration());
    }

    private static Run run(Trial trial, Run.State state, String reason) {
        var variant = Variant.NONE;
        for (var key : trial.declaration().variants()) {
            if (key.usual().isEmpty() && !key.values().isEmpty()) {
                variant = variant.with(key.name(), key.values().getFirst().value());
            }
        }
        return new Run(
                "r1",
                trial.declaration().id(),
                RunScreen.completed(trial.declaration(), variant),
                "R1",
                Optional.empty(),
                "",
                "out",
                state,
                reason,
                "",
                Place.atLine("runs.csv", 2));
    }

    private static TrialInput input(Trial trial, List<Run> runs) {
        var day = new TestDay(
                "2031-05-14-contract",
                LocalDate.of(2031, 5, 14),
                ZoneOffset.UTC,
                "",
                "contract",
                Configuration.UNKNOWN,
                List.of(),
                List.of(),
                Optional.of(new org.measuredmile.recording.day.PreRideCheck("M1", "T1", "09:00")),
                Conditions.UNKNOWN,
                List.of(),
                List.of(),
                List.of(),
                runs,
                List.of(),
                List.of());
        return new TrialInput(
                day,
                Bike.known("contract"),
                runs,
                ReadingResolver.resolve(trial.declaration(), day),
                new TreeMap<>(),
                ScatterRecord.DECLARED_PRIORS,
                new TreeMap<>());
    }
}
