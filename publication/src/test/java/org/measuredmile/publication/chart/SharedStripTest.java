package org.measuredmile.publication.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.trial.Better;

class SharedStripTest {
    private static final Scale METRES = new Scale(QuantityKind.LENGTH, UnitSystem.METRIC);

    private static Optional<SharedStrip.Place> place(double value, double halfWidth) {
        return Optional.of(new SharedStrip.Place(value, Interval.around(value, halfWidth)));
    }

    @Test
    void each_result_has_a_line_and_a_mark_and_all_share_one_axis() {
        var strip = new SharedStrip(METRES, Better.LESS, List.of(place(6, 0.4), place(7, 0.4), place(6.5, 0.4)));
        var drawing = Drawing.of(strip.svg(330));
        drawing.holdsAllMarks();
        assertThat(drawing.count("series-mark")).isEqualTo(3);
        assertThat(drawing.count("series-post")).isEqualTo(3);
        assertThat(drawing.count("axis")).isOne();
        assertThat(drawing.count("better")).isOne();
        assertThat(drawing.texts()).containsExactly("5.5", "6", "6.5", "7", "7.5");
    }

    @Test
    void a_bike_without_a_result_has_no_line_and_keeps_its_mark_for_others_rows() {
        var strip = new SharedStrip(METRES, Better.NEITHER, List.of(place(6, 0.4), Optional.empty(), place(7, 0.4)));
        String svg = strip.svg(330);
        assertThat(svg).contains("class=\"s1\"", "class=\"s3\"").doesNotContain("class=\"s2\"");
        assertThat(Drawing.of(svg).count("better")).isZero();
    }

    @Test
    void an_interval_narrower_than_its_mark_is_drawn_as_the_mark_alone() {
        var strip = new SharedStrip(METRES, Better.LESS, List.of(place(6, 0.001), place(9, 0.001)));
        assertThat(Drawing.of(strip.svg(330)).count("series-post")).isZero();
    }

    @Test
    void nothing_to_draw_is_refused() {
        var strip = new SharedStrip(METRES, Better.LESS, List.of(Optional.empty()));
        assertThatThrownBy(() -> strip.svg(330)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void six_series_have_six_different_marks() {
        var paths = new HashSet<String>();
        IntStream.rangeClosed(1, SeriesMark.MOST).forEach(number -> paths.add(new SeriesMark(number).at(8, 8, 5)));
        assertThat(paths).hasSize(SeriesMark.MOST);
        assertThat(new SeriesMark(1).key()).contains("series-key s1", "aria-hidden");
        assertThatThrownBy(() -> new SeriesMark(7)).isInstanceOf(IllegalArgumentException.class);
    }
}
