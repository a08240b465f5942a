package org.measuredmile.comparison.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.Uncertainty;

class ControlChartTest {
    private static final LocalDate FIRST = LocalDate.of(2031, 3, 3);

    private static List<ControlDay> days(double... values) {
        return IntStream.range(0, values.length)
                .mapToObj(i -> day(i, values[i], "1.4"))
                .toList();
    }

    private static ControlDay day(int i, double value, String configuration) {
        var own = new Uncertainty(0.1, 5, Interval.around(value, 0.25));
        return new ControlDay("day-" + i, FIRST.plusDays(7L * i), "T1", configuration, value, own);
    }

    @Test
    void nists_flow_rates_have_nists_limits() {
        // NIST/SEMATECH e-Handbook, 6.3.2.2, flow rates of ten batches: mean 50.81, mean moving range 1.8778, limits
        // 45.81 and 55.81 (50.81 ± 3·1.8778/1.128).
        var chart = ControlChart.of(days(49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1));
        assertThat(chart.mean()).isEqualTo(50.81, within(1e-9));
        var limits = chart.limits().orElseThrow();
        assertThat(limits.meanMovingRange()).isEqualTo(1.8778, within(5e-5));
        assertThat(chart.mean() + limits.interval().low()).isEqualTo(45.81, within(0.01));
        assertThat(chart.mean() + limits.interval().high()).isEqualTo(55.81, within(0.01));
        assertThat(limits.provisional()).isTrue();
        assertThat(chart.signals()).isEmpty();
    }

    @Test
    void a_day_beyond_three_standard_deviations_is_a_signal() {
        var chart = ControlChart.of(days(10, 10.1, 9.9, 10, 10.1, 9.9, 12, 10, 10.1, 9.9, 10, 10.1));
        assertThat(chart.signals()).singleElement().satisfies(point -> {
            assertThat(point.day().value()).isEqualTo(12);
            assertThat(point.signals()).containsExactly(ControlChart.Signal.BEYOND);
        });
    }

    @Test
    void the_eighth_day_on_one_side_is_a_signal_and_the_seventh_is_not() {
        double[] low = {9, 9.4, 9.1, 9.5, 9.2, 9.3, 9.1};
        double[] high = {11, 10.6, 10.9, 10.5, 10.8, 10.7, 10.9, 10.6};
        double[] all = Arrays.copyOf(low, 15);
        System.arraycopy(high, 0, all, 7, 8);
        var chart = ControlChart.of(days(all));
        assertThat(chart.signals()).singleElement().satisfies(point -> {
            assertThat(point.day().day()).isEqualTo("day-14");
            assertThat(point.signals()).containsExactly(ControlChart.Signal.RUN_OF_EIGHT);
        });
        assertThat(ControlChart.of(days(Arrays.copyOf(all, 14))).signals()).isEmpty();
    }

    @Test
    void three_days_have_no_limits_and_no_signals() {
        var chart = ControlChart.of(days(10, 20, 30));
        assertThat(chart.limits()).isEmpty();
        assertThat(chart.signals()).isEmpty();
        assertThat(chart.points().get(2).difference()).isEqualTo(10);
        assertThat(chart.points().get(2).own95()).isEqualTo(new Interval(9.75, 10.25));
    }

    @Test
    void days_are_ordered_and_a_changed_configuration_is_marked() {
        var chart = ControlChart.of(List.of(day(2, 3, "2.0"), day(0, 1, "1.4"), day(1, 2, "1.4")));
        assertThat(chart.points()).extracting(point -> point.day().day()).containsExactly("day-0", "day-1", "day-2");
        assertThat(chart.points()).extracting(ControlChart.Point::reconfigured).containsExactly(false, false, true);
    }

    @Test
    void what_days_differ_by_leaves_out_what_their_own_runs_do() {
        // Days 0.1 apart at most, each known to 0.1: nothing is left between them.
        assertThat(ControlChart.of(days(10, 10.1, 9.95, 10.02))
                        .betweenDays()
                        .orElseThrow()
                        .between())
                .isZero();
        // Standard deviation of the values 1.291; 0.1² of their variance is the days' own.
        assertThat(ControlChart.of(days(9, 10, 11, 12))
                        .betweenDays()
                        .orElseThrow()
                        .between())
                .isEqualTo(Math.sqrt(5.0 / 3 - 0.01), within(1e-9));
    }
}
