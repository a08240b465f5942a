package org.measuredmile.publication.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.UnitSystem;

class ExpectationPlotsTest {
    private static final LinePlot.Axes AXES = new LinePlot.Axes(
            new Scale(QuantityKind.POWER_PER_MASS, UnitSystem.IMPERIAL),
            "Power over mass",
            new Scale(QuantityKind.DISTANCE, UnitSystem.IMPERIAL),
            "Range");

    private static LinePlot line(List<LinePlot.Dot> dots) {
        var curve = IntStream.rangeClosed(0, 10)
                .mapToObj(i ->
                        new LinePlot.Stretch(3 + 0.5 * i, 40_000 + 3000 * i, Interval.around(40_000 + 3000 * i, 9000)))
                .toList();
        return new LinePlot(AXES, curve, dots);
    }

    private static LinePlot.Dot dot(double across, double value, String name) {
        return new LinePlot.Dot(across, value, Interval.around(value, 4000), name);
    }

    @ParameterizedTest
    @ValueSource(doubles = {352, 760})
    void a_line_has_its_band_its_bikes_and_the_names_of_those_outside(double width) {
        var plot = line(List.of(
                dot(3, 41_000, ""),
                dot(5, 90_000, "Zornby Packhorse"),
                dot(5, 90_500, "Mirefoot Osier"),
                dot(8, 70_000, "")));
        var drawing = Drawing.of(plot.svg(width, "Range: four bikes"));
        drawing.holdsAllMarks();
        assertThat(drawing.count("curve-band")).isOne();
        assertThat(drawing.count("dot")).isEqualTo(4);
        assertThat(drawing.count("ring")).isEqualTo(2);
        assertThat(drawing.texts())
                .contains("Zornby Packhorse", "Mirefoot Osier", "Range, mi", "km", "Power over mass, W/lb", "W/kg");
        assertThat(drawing.label()).isEqualTo("Range: four bikes");
    }

    @Test
    void a_line_without_bikes_is_a_bug() {
        assertThatThrownBy(() -> line(List.of()).svg(760, "")).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(doubles = {352, 760})
    void a_control_chart_has_limits_days_and_their_signals(double width) {
        var days = IntStream.range(0, 12)
                .mapToObj(i -> new ControlPlot.Day(
                        i + 1 + " Mar",
                        i == 10 ? 0.9 : 0.02 * (i % 5),
                        Interval.around(i == 10 ? 0.9 : 0.02 * (i % 5), 0.1),
                        i == 10 ? "beyond the limits" : "",
                        i == 6))
                .toList();
        var feet = new Scale(QuantityKind.LENGTH, UnitSystem.IMPERIAL);
        var plot = new ControlPlot(feet, "Difference from the mean", Optional.of(Interval.around(0, 0.5)), days);
        var drawing = Drawing.of(plot.svg(width, "Twelve days"));
        drawing.holdsAllMarks();
        assertThat(drawing.count("dot")).isEqualTo(12);
        assertThat(drawing.count("ring")).isOne();
        assertThat(drawing.count("curve-band")).isOne();
        assertThat(drawing.texts())
                .contains("beyond the limits", "changed", "1 Mar", "Difference from the mean, ft", "m");
    }
}
