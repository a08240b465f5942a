package org.measuredmile.comparison.control;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;

class DayAndTesterTest {
    private static final LocalDate FIRST = LocalDate.of(2031, 3, 3);
    private static final Seed SEED = new Seed(20_310_303).child("day and tester");

    /// Spreads between testers, days and runs.
    private record Truth(double tester, double day, double run) {}

    /// The control bike over some days, ridden in turn by some testers, four runs a day.
    private static List<Observation> ridden(Truth truth, int days, int testers, RandomGenerator random) {
        double[] ofTester = new double[testers];
        for (int i = 0; i < testers; i++) {
            ofTester[i] = truth.tester() * Draw.normal(random);
        }
        var all = new ArrayList<Observation>();
        for (int day = 0; day < days; day++) {
            int tester = day % testers;
            double today = 10 + ofTester[tester] + truth.day() * Draw.normal(random);
            for (int run = 0; run < 4; run++) {
                all.add(new Observation(
                        "control", FIRST.plusDays(day), "T" + tester, today + truth.run() * Draw.normal(random)));
            }
        }
        return all;
    }

    private static DayAndTester estimated(List<Observation> observations) {
        return DayAndTester.of(observations, false).orElseThrow();
    }

    @Test
    void testers_and_days_are_told_apart_where_each_tester_rode_on_three_days() {
        var found = estimated(ridden(new Truth(0.5, 0.3, 0.2), 24, 6, SEED.stream(1)));
        assertThat(found.why()).isEmpty();
        assertThat(found.components())
                .extracting(DayAndTester.Component::words)
                .containsExactly("between testers", "between days");
        assertThat(found.components())
                .allSatisfy(one -> assertThat(one.interval95().contains(one.standardDeviation()))
                        .isTrue());
        assertThat(found.components().get(0).interval95().contains(0.5)).isTrue();
        assertThat(found.components().get(1).interval95().contains(0.3)).isTrue();
    }

    /// 120 fleets: a coverage of 95 % is told to 4 % (two standard deviations).
    @Test
    void intervals_hold_the_spread_between_days() {
        int held = 0;
        for (int i = 0; i < 120; i++) {
            var found = estimated(ridden(new Truth(0, 0.3, 0.3), 12, 1, SEED.child("held").stream(i)));
            held += found.components().getFirst().interval95().contains(0.3) ? 1 : 0;
        }
        assertThat(held).isBetween(108, 119);
    }

    @Test
    void one_tester_leaves_nothing_to_say_of_testers() {
        var found = estimated(ridden(new Truth(0, 0.3, 0.2), 8, 1, SEED.stream(2)));
        assertThat(found.why()).startsWith("one tester");
        assertThat(found.components())
                .singleElement()
                .satisfies(one -> assertThat(one.words()).isEqualTo("between days"));
    }

    @Test
    void testers_that_share_no_bike_cannot_be_told_from_bikes() {
        var all = new ArrayList<Observation>();
        for (var one : ridden(new Truth(0, 0.3, 0.2), 8, 2, SEED.stream(3))) {
            all.add(new Observation("bike of " + one.tester(), one.date(), one.tester(), one.value()));
        }
        var found = estimated(all);
        assertThat(found.why()).contains("testers can't be told from bikes");
        assertThat(found.components()).hasSize(1);
    }

    @Test
    void a_tester_of_two_days_cannot_be_told_from_them() {
        var found = estimated(ridden(new Truth(0.2, 0.3, 0.2), 5, 2, SEED.stream(4)));
        assertThat(found.why()).contains("fewer than 3");
        assertThat(found.components())
                .singleElement()
                .satisfies(one -> assertThat(one.words()).isEqualTo("between days, testers among it"));
    }

    @Test
    void bikes_of_one_day_say_nothing() {
        var day = List.of(new Observation("a", FIRST, "T1", 1), new Observation("a", FIRST, "T1", 1.1));
        assertThat(DayAndTester.of(day, false)).isEmpty();
    }

    @Test
    void shares_do_not_depend_on_the_unit() {
        var metres = ridden(new Truth(0, 0.3, 0.2), 8, 1, SEED.stream(5));
        var feet = metres.stream()
                .map(one -> new Observation(one.bike(), one.date(), one.tester(), one.value() / 0.3048))
                .toList();
        double one = DayAndTester.of(metres, true).orElseThrow().run();
        double other = DayAndTester.of(feet, true).orElseThrow().run();
        assertThat(one).isCloseTo(other, org.assertj.core.api.Assertions.within(1e-9));
    }
}
