package org.measuredmile.comparison.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/// Two worked examples computed for our references: three days, the control (bike 0) and one guest on each.
class AgainstControlReferenceTest {
    private static final int[] BIKES = {0, 0, 1, 1, 1, 0, 0, 2, 2, 2, 0, 0, 3, 3, 3};
    private static final double[] WITH_DAYS = {
        6.50, 6.62, 7.05, 7.15, 6.98, 6.20, 6.28, 6.45, 6.40, 6.52, 6.80, 6.74, 6.15, 6.05, 6.22
    };
    private static final double[] WITHOUT_DAYS = {
        6.50, 6.62, 7.05, 7.15, 6.98, 6.58, 6.52, 6.45, 6.40, 6.52, 6.50, 6.60, 6.15, 6.05, 6.22
    };

    private static List<Observation> observations(double[] values) {
        var observations = new ArrayList<Observation>();
        for (int i = 0; i < values.length; i++) {
            observations.add(
                    new Observation("bike-" + BIKES[i], LocalDate.of(2031, 3, 3).plusDays(i / 5), "T1", values[i]));
        }
        return observations;
    }

    @Test
    void what_the_days_did_is_taken_out() {
        var all = AgainstControl.all("bike-0", observations(WITH_DAYS));
        double[] values = all.stream().mapToDouble(AgainstControl::value).toArray();
        double[] halves =
                all.stream().mapToDouble(one -> one.interval95().halfWidth()).toArray();
        assertThat(values).containsExactly(new double[] {0.50349, 0.18968, -0.60651}, within(2e-4));
        assertThat(halves).containsExactly(new double[] {0.16298, 0.17216, 0.17004}, within(2e-4));
        assertThat(all.getFirst().weightAtNoDayEffect()).isEqualTo(0.0008, within(1e-4));
    }

    @Test
    void days_that_did_nothing_leave_narrower_intervals() {
        var all = AgainstControl.all("bike-0", observations(WITHOUT_DAYS));
        double[] values = all.stream().mapToDouble(AgainstControl::value).toArray();
        double[] halves =
                all.stream().mapToDouble(one -> one.interval95().halfWidth()).toArray();
        assertThat(values).containsExactly(new double[] {0.50482, -0.09574, -0.41241}, within(2e-4));
        assertThat(halves).containsExactly(new double[] {0.11508, 0.11504, 0.11504}, within(2e-4));
        assertThat(all.getFirst().weightAtNoDayEffect()).isEqualTo(0.189, within(1e-3));
    }

    @Test
    void the_likeliest_spreads_of_the_first_example() {
        // Restricted likelihood: day variance over run variance 12.673, run variance 0.005407.
        var found = DayAndTester.of(observations(WITH_DAYS), false);
        assertThat(found).isPresent();
        assertThat(found.get().bikes())
                .as("only the control was ridden on several days")
                .isOne();
        var all = observations(WITH_DAYS);
        var model = MixedModel.of(
                WITH_DAYS,
                MixedModel.Factor.of("bike", all.stream().map(Observation::bike).toList()),
                MixedModel.Factor.of("day", all.stream().map(Observation::date).toList()));
        var likeliest = RemlEstimate.of(model);
        double run = likeliest.runSpread() * likeliest.runSpread();
        double day = likeliest.spreads().getFirst() * likeliest.spreads().getFirst();
        assertThat(run).isEqualTo(0.005407, within(1e-5));
        assertThat(day / run).isEqualTo(12.673, within(0.01));
    }

    @Test
    void a_bike_that_no_day_links_with_the_control_is_not_compared() {
        var observations = new ArrayList<>(observations(WITH_DAYS).subList(0, 10));
        var elsewhere = LocalDate.of(2031, 5, 1);
        observations.add(new Observation("alone", elsewhere, "T1", 6.1));
        observations.add(new Observation("alone", elsewhere, "T1", 6.2));
        assertThat(AgainstControl.of("alone", "bike-0", observations)).isEmpty();
        assertThat(AgainstControl.of("bike-1", "bike-0", observations)).isPresent();
    }
}
