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
}
