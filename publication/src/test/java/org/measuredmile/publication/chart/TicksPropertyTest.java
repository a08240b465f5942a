package org.measuredmile.publication.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.offset;

import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TicksPropertyTest {
    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void ticks_are_round_cover_the_range_and_number_four_to_seven(long seed) {
        var random = new Random(seed);
        double width = StrictMath.pow(10, random.nextDouble() * 8 - 4);
        double low = (random.nextDouble() - 0.5) * width * 20;
        Ticks ticks = Ticks.covering(low, low + width, 7);
        assertThat(ticks.ticks()).hasSizeBetween(4, 7);
        assertThat(ticks.low()).isLessThanOrEqualTo(low);
        assertThat(ticks.high()).isGreaterThanOrEqualTo(low + width);
        double step = (ticks.high() - ticks.low()) / (ticks.ticks().size() - 1);
        double mantissa = step / StrictMath.pow(10, Math.floor(StrictMath.log10(step) + 1e-9));
        assertThat(List.of(1.0, 2.0, 2.5, 5.0))
                .anySatisfy(round -> assertThat(mantissa).isCloseTo(round, offset(1e-6)));
        assertThat(ticks.low() / step).isCloseTo(Math.rint(ticks.low() / step), offset(1e-6));
    }

    @Test
    void labels_carry_no_more_digits_than_they_need() {
        assertThat(Ticks.covering(0, 0.187, 6).ticks())
                .extracting(Ticks.Tick::label)
                .containsExactly("0", "0.05", "0.1", "0.15", "0.2");
        assertThat(Ticks.covering(-1.2, 2, 9).ticks().getFirst().label()).startsWith("−");
        assertThat(Ticks.covering(900, 3800, 7).ticks().getLast().label()).isEqualTo("4,000");
    }

    @Test
    void a_range_without_width_still_gets_an_axis() {
        assertThat(Ticks.covering(20, 20, 7).ticks()).hasSizeBetween(3, 7);
        assertThat(Ticks.covering(0, 0, 7).ticks()).hasSizeBetween(3, 7);
    }

    @Test
    void seconds_beyond_a_minute_are_read_by_the_clock() {
        assertThat(Ticks.ofClock(58, 121, 7).ticks())
                .extracting(Ticks.Tick::label)
                .containsExactly("0:40", "1:00", "1:20", "1:40", "2:00", "2:20");
    }

    @Test
    void no_axis_is_made_up_for_what_is_no_range() {
        assertThatThrownBy(() -> Ticks.covering(2, 1, 7)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Ticks.covering(Double.NaN, 1, 7)).isInstanceOf(IllegalArgumentException.class);
    }
}
