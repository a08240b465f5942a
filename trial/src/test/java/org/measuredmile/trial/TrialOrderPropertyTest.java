package org.measuredmile.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/// Whatever a trial uses is there before it, in whichever order the trials are listed.
class TrialOrderPropertyTest {
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void aFigureIsWorkedOutBeforeTheTrialsThatUseIt(long seed) {
        var shuffled = new ArrayList<>(Trials.ALL);
        Collections.shuffle(shuffled, new Random(seed));

        followsItsUses(TrialOrder.byUses(shuffled));
    }

    @Test
    void evenWhenEveryTrialIsListedAfterThoseThatUseIt() {
        followsItsUses(TrialOrder.byUses(Trials.ALL.reversed()));
        followsItsUses(TrialOrder.byUses(TrialOrder.byUses(Trials.ALL).reversed()));
    }

    private static void followsItsUses(List<Trial> ordered) {
        assertThat(ordered).containsExactlyInAnyOrderElementsOf(Trials.ALL);
        int uses = 0;
        for (int i = 0; i < ordered.size(); i++) {
            for (var use : ordered.get(i).declaration().uses()) {
                int by = ordered.indexOf(Trials.delivering(use.figure()).orElseThrow());
                assertThat(by)
                        .as(ordered.get(i).declaration().id() + " uses " + use.figure())
                        .isLessThanOrEqualTo(i);
                uses++;
            }
        }
        assertThat(uses).isPositive();
    }

    /// A scatter relative to the figure grows with it, an absolute one does not.
    @ParameterizedTest
    @CsvSource({"true, 4, 0.08, 0.2", "true, -4, 0.08, 0.2", "false, 4, 0.02, 0.05"})
    void aScatterIsAShareOfTheFigureOrInItsUnit(boolean relative, double value, double runs, double days) {
        var scatter = new Scatter(0.02, 12, 0.05, 6, relative);

        assertThat(scatter.betweenRunsAt(value)).isEqualTo(runs);
        assertThat(scatter.betweenDaysAt(value)).isEqualTo(days);
    }

    @Test
    void aKeyAdmitsItsOwnValuesAndAnyWhereItHasNone() {
        var battery = VariantKey.of("battery", "battery", "in", "out");

        assertThat(battery.admits("in")).isTrue();
        assertThat(battery.admits("half")).isFalse();
        assertThat(new VariantKey("level", "level", List.of(), "").admits("7")).isTrue();
    }
}
