package org.measuredmile.comparison.control;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;

class AgainstControlPropertyTest {
    private static final LocalDate FIRST = LocalDate.of(2031, 3, 3);
    private static final Seed SEED = new Seed(20_310_303).child("against control");
    private static final int TIMES = 150;
    private static final double RUN = 0.3;

    /// Each day three runs of the control and four of a guest, which is 1 above it.
    private static List<Observation> ridden(int days, double dayDeviation, RandomGenerator random) {
        var all = new ArrayList<Observation>();
        for (int day = 0; day < days; day++) {
            double today = dayDeviation * Draw.normal(random);
            for (int run = 0; run < 7; run++) {
                boolean isControl = run < 3;
                double value = today + (isControl ? 0 : 1) + RUN * Draw.normal(random);
                all.add(new Observation(isControl ? "control" : "guest-" + day, FIRST.plusDays(day), "T1", value));
            }
        }
        return all;
    }

    /// 150 fleets tell a coverage of 94 % to 3.9 %, each side of 3 % to 2.8 % (two standard deviations): 93
    /// to 97 % was found for the method at 400, see docs/decisions/0077.
    @ParameterizedTest
    @CsvSource({"3, 0.4", "6, 0.4"})
    void intervals_hold_the_difference_whatever_the_days_do(int days, double dayDeviation) {
        int above = 0;
        int below = 0;
        for (int i = 0; i < TIMES; i++) {
            var random = SEED.child(days + " " + dayDeviation).stream(i);
            var found = AgainstControl.of("guest-0", "control", ridden(days, dayDeviation, random))
                    .orElseThrow();
            above += found.interval95().low() > 1 ? 1 : 0;
            below += found.interval95().high() < 1 ? 1 : 0;
        }
        assertThat(1 - (above + below) / (double) TIMES).as("coverage").isBetween(0.9, 0.994);
        assertThat(above / (double) TIMES).as("too high").isLessThan(0.06);
        assertThat(below / (double) TIMES).as("too low").isLessThan(0.06);
    }
}
