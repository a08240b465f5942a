package org.measuredmile.publication.chart;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.measuredmile.quantity.Interval;

/// The control bike's days in their order, each as its difference from the mean, with the limits.
///
/// Unit: SI. Shape: one place a day, evenly apart; posts are a day's own 95 % interval. A day that calls
/// for a look has a ring and its words; a day before which the configuration changed has a dashed post and
/// a flag.
public record ControlPlot(Scale scale, String words, Optional<Interval> limits, List<Day> days) {
    private static final double HEIGHT = 260;
    private static final double TOP = 40;
    private static final double DOT = 4;
    private static final double RING = 7;

    /// A day: what stands under it, its difference with the day's own interval, and what it is to be looked
    /// at for.
    public record Day(String date, double difference, Interval own95, String signal, boolean reconfigured) {}

    public ControlPlot {
        days = List.copyOf(days);
    }

    /// The drawing at a width of 320 and more.
    ///
    /// Error: IllegalArgumentException without any day.
    public String svg(double width, String sentence) {
        if (days.isEmpty()) {
            throw new IllegalArgumentException("no days to draw");
        }
        double bottom = TOP + HEIGHT;
        var intervals = Stream.concat(days.stream().map(Day::own95), limits.stream());
        var values = intervals.flatMapToDouble(one -> DoubleStream.of(one.low(), one.high(), 0));
        var pane = Pane.over(scale, values, TOP, bottom, width);
        var svg = new Svg("plot", width, bottom + 44, sentence);
        pane.draw(svg, words + ", " + scale.symbol(), width);
        limits.ifPresent(interval -> limits(svg, pane, interval));
        svg.path("axis", Svg.line(pane.at(0), pane.left(), pane.right()));
        double step = (pane.right() - pane.left()) / days.size();
        int every = (int) Math.ceil(days.size() * (width < 500 ? 52.0 : 58.0) / (pane.right() - pane.left()));
        for (int i = 0; i < days.size(); i++) {
            double x = pane.left() + (i + 0.5) * step;
            day(svg, pane, days.get(i), x);
            if (i % every == 0) {
                svg.text("mid", x, bottom + 22, days.get(i).date());
            }
        }
        return svg.close();
    }

    private void limits(Svg svg, Pane pane, Interval interval) {
        double high = pane.at(interval.high());
        double low = pane.at(interval.low());
        svg.rect("curve-band", new Svg.Box(pane.left(), high, pane.right() - pane.left(), low - high));
        svg.path("claim", Svg.line(high, pane.left(), pane.right()) + Svg.line(low, pane.left(), pane.right()));
        svg.text("said", pane.left() + 4, high - 5, "limits");
    }

    private void day(Svg svg, Pane pane, Day day, double x) {
        double y = pane.at(day.difference());
        double low = pane.at(day.own95().low());
        double high = pane.at(day.own95().high());
        if (day.reconfigured()) {
            svg.path("claim", Svg.post(x - 9, TOP - 4, pane.upright().fromPx()));
            svg.text("said right", x - 13, TOP - 6, "changed");
        }
        svg.path("interval", Svg.post(x, low, high) + Svg.line(low, x - 5, x + 5) + Svg.line(high, x - 5, x + 5));
        if (!day.signal().isEmpty()) {
            svg.circle("ring", x, y, RING);
            boolean rightwards = x + 12 + Svg.widthOf(day.signal()) <= pane.right();
            svg.text(rightwards ? "said" : "said right", rightwards ? x + 11 : x - 11, y + 4, day.signal());
        }
        svg.circle("dot", x, y, DOT);
    }
}
