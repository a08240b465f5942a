package org.measuredmile.publication.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

class RecordingPlotTest {
    private static final Scale KMH = new Scale(QuantityKind.SPEED, UnitSystem.METRIC);
    private static final ClockTicks TEN_O_CLOCK =
            new ClockTicks(Optional.of(Instant.parse("2031-06-30T09:00:04Z")), ZoneId.of("Europe/London"));

    @Test
    void one_sample_in_a_hundred_thousand_is_still_seen() {
        double[] values = new double[100_000];
        java.util.Arrays.fill(values, 5);
        values[61_803] = 15;
        var drawing = Drawing.of(plot(0.04, values, List.of(), 0, 4_000, true));
        drawing.holdsAllMarks();
        double highest = drawing.points().stream()
                .mapToDouble(Drawing.Point::y)
                .filter(y -> y > 30)
                .min()
                .orElseThrow();
        // The spike is the file's highest: 4 % of room above it, out of 80 px.
        assertThat(highest).isBetween(26.0, 34.0);
    }

    @Test
    void a_long_file_is_drawn_by_no_more_points_than_the_page_has_room_for() {
        double[] values = new double[200_000];
        for (int i = 0; i < values.length; i++) {
            values[i] = 6 + StrictMath.sin(i * 0.7) + (i % 13) / 10.0;
        }
        assertThat(plot(0.04, values, List.of(), 0, 8_000, true).length()).isLessThan(60_000);
    }

    @Test
    void a_gap_ends_the_line_and_tells_its_length() {
        double[] times = new double[200];
        double[] values = new double[200];
        for (int i = 0; i < times.length; i++) {
            times[i] = i < 100 ? i : i + 100;
            values[i] = 5;
        }
        var drawing = Drawing.of(plot(new Channel.Series(times, values), List.of(), 0, 299, true));
        assertThat(drawing.count("speed")).isEqualTo(2);
        assertThat(drawing.count("gap")).isOne();
        assertThat(drawing.texts()).contains("gap 2 min");
    }

    @Test
    void the_time_axis_is_the_clock_of_the_day() {
        var drawing = Drawing.of(plot(1, ramp(1_800), List.of(), 0, 1_799, true));
        // Started at 10:00:04 British Summer Time.
        assertThat(drawing.texts()).contains("10:05", "10:10", "10:25").doesNotContain("10:00", "09:05");
        var closer = Drawing.of(plot(1, ramp(1_800), List.of(), 10, 30, true));
        assertThat(closer.texts()).contains("10:00:20", "10:00:30");
    }

    @Test
    void a_run_is_posts_with_its_state_in_mark_and_word_and_leads_to_where_it_is_decided() {
        var runs = List.of(
                run("b-01", "valid", "", 100, 400),
                run("?1", "proposed", "open", 600, 900),
                run("b-02", "void", "struck", 1_100, 1_400));
        String svg = plot(1, ramp(1_800), runs, 0, 1_799, false);
        var drawing = Drawing.of(svg);
        drawing.holdsAllMarks();
        assertThat(drawing.texts()).contains("b-01 valid", "?1 proposed", "b-02 void", "Braking");
        assertThat(drawing.count("dot")).isOne();
        assertThat(drawing.count("ring")).isOne();
        assertThat(svg)
                .contains("href=\"/here#b-01\"", "data-run=\"?1\"", "role=\"group\"")
                .contains("aria-label=\"Braking, b-01, valid, 10:01:44.00 to 10:06:44.00\"");
        assertThat(drawing.label()).contains("Braking: 3 runs");
    }

    @Test
    void a_picture_brings_its_style_and_holds_no_link() {
        String svg = plot(1, ramp(1_800), List.of(run("b-01", "valid", "", 100, 400)), 0, 1_799, true);
        assertThat(svg).contains("<style>", "role=\"img\"").doesNotContain("<a ", "href");
    }

    @Test
    void closer_by_every_sample_is_a_ring_and_a_run_beyond_the_view_is_left_out() {
        var runs = List.of(run("b-01", "valid", "", 100, 400));
        var drawing = Drawing.of(plot(1, ramp(1_800), runs, 600, 640, false));
        drawing.holdsAllMarks();
        assertThat(drawing.count("sample")).isEqualTo(41);
        assertThat(drawing.count("run")).isZero();
    }

    @Test
    void a_view_without_length_is_refused() {
        assertThatThrownBy(() -> plot(1, ramp(10), List.of(), 5, 5, true)).isInstanceOf(IllegalArgumentException.class);
    }

    private static RecordingPlot.Run run(String id, String word, String css, double fromS, double toS) {
        return new RecordingPlot.Run(id, id, "Braking", word, css, fromS, toS, "/here#" + id);
    }

    private static double[] ramp(int count) {
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            values[i] = i % 100 / 15.0;
        }
        return values;
    }

    private static String plot(
            double stepS, double[] values, List<RecordingPlot.Run> runs, double fromS, double toS, boolean alone) {
        double[] times = new double[values.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = i * stepS;
        }
        return plot(new Channel.Series(times, values), runs, fromS, toS, alone);
    }

    private static String plot(
            Channel.Series series, List<RecordingPlot.Run> runs, double fromS, double toS, boolean alone) {
        var channel = new Channel(ChannelKind.SPEED, "speed", "m/s", series);
        var source = new RecordingPlot.Source("ride.csv", "Speed", channel, TEN_O_CLOCK, runs);
        return new RecordingPlot(source, new RecordingPlot.Look(KMH, 760, 80, fromS, toS, alone)).svg();
    }
}
