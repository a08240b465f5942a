package org.measuredmile.publication.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.Trace;

class ChartsTest {
    private static final Scale FEET = new Scale(QuantityKind.LENGTH, UnitSystem.IMPERIAL);
    private static final Scale MPH = new Scale(QuantityKind.SPEED, UnitSystem.IMPERIAL);

    @Test
    void a_strip_shows_posts_and_dot_the_others_and_the_better_end() {
        var drawing = Drawing.of(strip(List.of(6.1, 6.9, 7.4)).svg("Stopping distance"));
        drawing.holdsAllMarks();
        assertThat(drawing.count("subject-dot")).isOne();
        assertThat(drawing.count("subject-line")).isOne();
        assertThat(drawing.count("better")).isOne();
        assertThat(drawing.texts()).containsExactly("20", "21", "22", "23", "24", "25");
        assertThat(drawing.label())
                .isEqualTo("Stopping distance: 21.40 ± 0.61 ft; 3 other bikes from 20.01 to 24.28; less is better");
    }

    @Test
    void a_strip_of_a_single_bike_says_that_there_is_no_other() {
        assertThat(Drawing.of(strip(List.of()).svg("Mass")).label()).contains("no other bike yet");
    }

    @Test
    void an_interval_narrower_than_its_dot_is_drawn_as_the_dot_alone() {
        var strip = new Strip(FEET, Better.NEITHER, 6, Interval.around(6, 0.001), List.of(5.0, 9.0), Optional.empty());
        var drawing = Drawing.of(strip.svg("Length"));
        assertThat(drawing.count("subject-line")).isZero();
        assertThat(drawing.count("better")).isZero();
    }

    @Test
    void a_strip_is_the_same_text_every_time() {
        var strip = new Strip(FEET, Better.LESS, 6.096, new Interval(5.7912, 6.4008), List.of(), Optional.empty());
        assertThat(Drawing.plain(strip.svg("Stop"))).isEqualTo("""
                        <svg class="strip" viewBox="0 0 320 48" width="320" height="48" role="img" \
                        aria-label="Stop: 20.0 ± 1.0 ft; no other bike yet; less is better">\
                        <path class="axis" d="M14 33H306M14 33V37M87 33V37M160 33V37M233 33V37M306 33V37"/>\
                        <path class="better" d="M10 33L17 29.5V36.5Z"/>\
                        <text class="mid" x="14" y="47">19</text><text class="mid" x="87" y="47">19.5</text>\
                        <text class="mid" x="160" y="47">20</text><text class="mid" x="233" y="47">20.5</text>\
                        <text class="mid" x="306" y="47">21</text>\
                        <path class="subject-line" d="M14 18H306M14 13V23M306 13V23"/>\
                        <circle class="subject-dot" cx="160" cy="18" r="4"/></svg>""");
    }

    @Test
    void the_tiles_of_a_standing_share_one_axis() {
        var places = List.of(
                new StandingTile.Place(6.05, Interval.around(6.05, 0.16)),
                new StandingTile.Place(8.51, Interval.around(8.51, 0.22)));
        var tile = new StandingTile(FEET, Better.LESS, new StandingTile.Size(350, 38), places);
        Drawing.of(tile.head()).holdsAllMarks();
        Drawing.of(tile.foot()).holdsAllMarks();
        var first = Drawing.of(tile.row(places.getFirst(), StandingTile.Kind.SUBJECT));
        var last = Drawing.of(tile.row(places.getLast(), StandingTile.Kind.LEDGER));
        first.holdsAllMarks();
        last.holdsAllMarks();
        assertThat(first.count("subject-dot")).isOne();
        assertThat(last.count("ledger-dot")).isOne();
        assertThat(Drawing.of(tile.foot()).texts()).isNotEmpty();
    }

    @Test
    void a_comb_has_a_tooth_for_every_rank_that_has_a_chance() {
        var comb = new RankComb(new double[] {0.09, 0.72, 0.19, 0.001}, 0.8);
        var drawing = Drawing.of(comb.row(false));
        drawing.holdsAllMarks();
        assertThat(drawing.count("bar")).isEqualTo(3);
        assertThat(drawing.texts()).containsExactly("72", "19");
        assertThat(drawing.label()).isEqualTo("rank 1 9 %; rank 2 72 %; rank 3 19 %");
    }

    @ParameterizedTest
    @ValueSource(doubles = {352, 860})
    void a_trace_shows_samples_model_events_and_residuals_within_its_width(double width) {
        var drawing = Drawing.of(new TracePlot(stop(25), MPH, width).svg("Run 5"));
        drawing.holdsAllMarks();
        assertThat(drawing.count("sample")).isEqualTo(51);
        assertThat(drawing.count("event")).isEqualTo(2);
        assertThat(drawing.texts()).contains("brakes bite", "standstill", "1.397 ± 0.024 s", "Speed, mph", "km/h");
        assertThat(drawing.label()).contains("51 samples", "brakes bite at", "95 % of samples");
    }

    @Test
    void samples_too_dense_for_rings_become_a_line() {
        var drawing = Drawing.of(new TracePlot(stop(1000), MPH, 352).svg("Run 5"));
        assertThat(drawing.count("sample")).isZero();
        assertThat(drawing.count("trace-line")).isOne();
    }

    @ParameterizedTest
    @ValueSource(doubles = {352, 760})
    void levels_stand_in_rows_with_their_gains(double width) {
        var levels = List.of(
                new LevelsPlot.Level("off", 4.3, Interval.around(4.3, 0.14), List.of(4.25, 4.36), "", ""),
                new LevelsPlot.Level("level 1", 5.6, Interval.around(5.6, 0.1), List.of(), "+2.7", ""),
                new LevelsPlot.Level(
                        "level 2", 5.61, Interval.around(5.61, 0.1), List.of(), "", "can't be told from level 1"));
        var drawing = Drawing.of(new LevelsPlot(MPH, "Speed by level", levels).svg(width));
        drawing.holdsAllMarks();
        assertThat(drawing.count("subject-dot")).isEqualTo(3);
        assertThat(drawing.texts()).contains("off", "level 1", "+2.7", "gain, mph", "mph", "km/h");
        assertThat(String.join(" ", drawing.texts())).contains("can't be told from level 1");
        assertThat(drawing.label()).contains("gain +2.7").contains("can't be told from level 1");
    }

    @Test
    void a_gain_is_printed_however_little_room_lies_between_two_levels() {
        var levels = List.of(
                new LevelsPlot.Level("level 1", 5.6, Interval.around(5.6, 0.5), List.of(), "", ""),
                new LevelsPlot.Level("level 2", 5.7, Interval.around(5.7, 0.5), List.of(), "+0.22 ± 0.12", ""));
        assertThat(Drawing.of(new LevelsPlot(MPH, "Speed by level", levels).svg(352))
                        .texts())
                .contains("+0.22 ± 0.12");
    }

    @ParameterizedTest
    @ValueSource(doubles = {352, 470})
    void a_budget_shows_scatter_open_and_judgement_filled(double width) {
        var bars = new BudgetBars(
                FEET,
                List.of(
                        Contribution.typeB("Speed scale of the receiver, calibrated on the second of March", 0.026),
                        Contribution.typeA("Scatter of the runs", 0.045, 5)));
        var drawing = Drawing.of(bars.svg(width));
        drawing.holdsAllMarks();
        assertThat(drawing.count("bar")).isOne();
        assertThat(drawing.count("bar-open")).isOne();
        assertThat(drawing.texts()).contains("Together", "0.15", "0.17", "0.085");
        assertThat(drawing.label()).endsWith("together 0.17 ft");
    }

    @Test
    void a_gauge_shows_the_window_and_where_the_reading_lies() {
        var window = new Interval(8.524, 9.357);
        var inside = Drawing.of(new Gauge(MPH, "entry speed", window, OptionalDouble.of(9.07)).svg());
        inside.holdsAllMarks();
        assertThat(inside.label()).isEqualTo("entry speed 20.29 mph; the window is 19.07 to 20.93 mph");
        var far = Drawing.of(new Gauge(MPH, "entry speed", window, OptionalDouble.of(14)).svg());
        far.holdsAllMarks();
        assertThat(far.count("subject-dot")).isOne();
    }

    @Test
    void words_from_outside_are_escaped() {
        var strip = strip(List.of()).svg("<script>\"&");
        assertThat(strip).contains("&lt;script&gt;&quot;&amp;").doesNotContain("<script>");
    }

    private static Strip strip(List<Double> others) {
        return new Strip(FEET, Better.LESS, 6.5227, Interval.around(6.5227, 0.186), others, Optional.empty());
    }

    /// Two seconds around a stop from 9 m/s, with samples a little off the model.
    private static Trace stop(int samplesPerSecond) {
        int samples = 2 * samplesPerSecond + 1;
        double[] times = new double[samples];
        double[] values = new double[samples];
        for (int i = 0; i < samples; i++) {
            times[i] = i / (double) samplesPerSecond - 0.5;
            values[i] = model(times[i]) + (i % 3 - 1) * 0.03;
        }
        double[] modelTimes = {-0.5, 0, 1.397, 1.5};
        double[] modelValues = {9, 9, 0, 0};
        return new Trace(
                "stop.csv",
                12,
                "the bite",
                QuantityKind.SPEED,
                List.of(
                        new Trace.Line(Trace.Role.SAMPLES, "samples", times, values),
                        new Trace.Line(Trace.Role.MODEL, "model", modelTimes, modelValues)),
                List.of(
                        new Trace.Event("brakes bite", 0, 0.005, OptionalDouble.empty()),
                        new Trace.Event("standstill", 1.397, 0.0122, OptionalDouble.empty())));
    }

    private static double model(double timeS) {
        return timeS <= 0 ? 9 : Math.max(0, 9 - 9 / 1.397 * timeS);
    }
}
