package org.measuredmile.publication.chart;

import java.util.stream.DoubleStream;

/// A plain plot's ground: an upright axis with guides, the other unit at the right.
///
/// Unit: CSS pixels; values in SI.
record Pane(Scale scale, Axis upright, double left, double right) {
    private static final double NUMBERS = 46;
    private static final double SIDE = 8;

    /// A pane that holds values, its numbers to the left of `left` and the other unit's to the right of
    /// `right`.
    static Pane over(Scale scale, DoubleStream values, double top, double bottom, double width) {
        var ends = values.summaryStatistics();
        var ticks = scale.ticks(ends.getMin(), ends.getMax(), 7);
        double right = width - (scale.hasOther() ? NUMBERS : SIDE);
        return new Pane(scale, Axis.over(ticks, bottom, top), NUMBERS, right);
    }

    double at(double si) {
        return upright.at(scale.shown(si));
    }

    void draw(Svg svg, String title, double width) {
        for (Ticks.Tick tick : upright.ticks()) {
            svg.path("guide", Svg.line(upright.at(tick.value()), left, right));
            svg.text("right", left - 14, upright.at(tick.value()) + 4, tick.label());
        }
        svg.path("axis", upright.upright(left - 8, -4));
        svg.text("strong", 0, upright.toPx() - 14, title);
        if (scale.hasOther()) {
            other(svg, width);
        }
    }

    private void other(Svg svg, double width) {
        var there = scale.other();
        var beside = upright.beside(
                there.shown(scale.unit().toSi(upright.low())),
                there.shown(scale.unit().toSi(upright.high())));
        svg.path("axis", beside.upright(right + 8, 4));
        for (Ticks.Tick tick : beside.ticks()) {
            svg.text("", right + 14, beside.at(tick.value()) + 4, tick.label());
        }
        svg.text("right", width, upright.toPx() - 14, there.symbol());
    }
}
