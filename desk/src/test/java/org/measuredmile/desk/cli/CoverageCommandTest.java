package org.measuredmile.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.desk.cli.Ran.mile;

import org.junit.jupiter.api.Test;

class CoverageCommandTest {
    @Test
    void eachSimulatedFigureGetsARowASeedAndFewDaysAreNotEnoughToSay() {
        var ran = mile("coverage", "--days", "3", "--seed", "7", "--json");
        assertThat(ran.json().isEmpty()).isFalse();
        assertThat(ran.json().path(0).path("days").asInt()).isEqualTo(3);
        // Three days hold all or two thirds or less: neither lies between 93 and 97 %.
        assertThat(ran.exit()).isEqualTo(1);
        assertThat(mile("coverage", "--days", "0").exit()).isEqualTo(2);
    }

    @Test
    void rowsNameTrialCoverageAndHalfWidthsAndOneStudyCanBeAskedFor() {
        var rows = mile("coverage", "--days", "2", "--seed", "7", "--study", "cut-off", "--json")
                .json();
        assertThat(rows.size()).isEqualTo(1);
        assertThat(rows.path(0).path("trial").asString()).isEqualTo("assistspeed");
        assertThat(rows.path(0).path("coverageAnyDay").isNumber()).isTrue();
        assertThat(rows.path(0).path("bestHalfWidth").path("thisDay").asDouble())
                .isPositive();
        assertThat(rows.path(0).path("coverageByScatterDecile").isArray()).isTrue();
        assertThat(mile("coverage", "--study", "no such").exit()).isEqualTo(2);
    }

    @Test
    void oneRideIsForetoldFromEverythingBut() {
        var rows = mile("coverage", "--leave-one-out", "--days", "12", "--seed", "7", "--json")
                .json();
        assertThat(rows.size()).isEqualTo(2);
        for (var row : rows) {
            // Errors of a few per cent: twice as much would tell of a wrong formula, not of chance.
            assertThat(row.path("rides").asInt()).isGreaterThan(9);
            assertThat(row.path("rmsError").asDouble()).isBetween(0.001, 0.25);
            assertThat(row.path("coverage").asDouble()).isGreaterThan(0.7);
        }
    }
}
