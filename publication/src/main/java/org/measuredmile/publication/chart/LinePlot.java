package org.measuredmile.publication.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.measuredmile.quantity.Interval;

/// Bikes by two quantities, with the line of what is to be expected and the band for a further bike.
///
/// Unit: SI. Shape: the curve is drawn from its first to its last place and no further; dots have posts at
/// the ends of their 95 % intervals. Bikes that lie outside the band carry their names and an open ring;
/// the others stand in the table beside the plot.
public record LinePlot(Axes axes, List<Stretch> curve, List<Dot> dots) {
    private static final double HEIGHT = 330;
    private static final double TOP = 34;
    private static final double DOT = 3.5;
    private static final double RING = 7;
    private static final double LINE = 13;

    /// What is drawn across and up, and the words over each.
    public record Axes(Scale across, String acrossWords, Scale up, String upWords) {}

    /// The line at one place, and the band there.
    public record Stretch(double across, double value, Interval band) {}

    /// A bike; `name` is empty where it is not to be named.
    public record Dot(double across, double value, Interval interval95, String name) {}

    public LinePlot {
        curve = List.copyOf(curve);
        dots = List.copyOf(dots);
    }

    /// The drawing at a width of 320 and more.
    ///
    /// Error: IllegalArgumentException without any dot.
    public String svg(double width, String sentence) {
        if (dots.isEmpty()) {
            throw new IllegalArgumentException("no bikes to draw");
        }
        double bottom = TOP + HEIGHT;
        var values = Stream.concat(
                        dots.stream().map(Dot::interval95), curve.stream().map(Stretch::band))
                .flatMapToDouble(one -> DoubleStream.of(one.low(), one.high()));
        var pane = Pane.over(axes.up(), values, TOP, bottom, width);
        var ends = dots.stream().mapToDouble(Dot::across).summaryStatistics();
        var ticks = axes.across().ticks(ends.getMin(), ends.getMax(), width < 500 ? 5 : 8);
        var lying = Axis.over(ticks, pane.left() + 10, pane.right() - 10);
        var svg = new Svg("plot", width, bottom + (axes.across().hasOther() ? 74 : 54), sentence);
        pane.draw(svg, title(axes.upWords(), axes.up()), width);
        across(svg, lying, bottom, width);
        svg.path("curve-band", band(lying, pane));
        svg.path("interval", line(lying, pane));
        var named = new ArrayList<Label>();
        for (var dot : dots) {
            draw(svg, dot, lying, pane);
            if (!dot.name().isEmpty()) {
                named.add(new Label(x(lying, dot.across()), pane.at(dot.value()), dot.name()));
            }
        }
        labels(svg, named, pane);
        return svg.close();
    }

    private static String title(String words, Scale scale) {
        return scale.symbol().isEmpty() ? words : words + ", " + scale.symbol();
    }

    private double x(Axis lying, double across) {
        return lying.at(axes.across().shown(across));
    }

    private void across(Svg svg, Axis lying, double bottom, double width) {
        svg.path("axis", lying.lying(bottom + 8, 5));
        for (Ticks.Tick tick : lying.ticks()) {
            svg.text("mid", lying.at(tick.value()), bottom + 26, tick.label());
        }
        double wordsY = bottom + 46;
        if (axes.across().hasOther()) {
            var there = axes.across().other();
            var beside = lying.beside(
                    there.shown(axes.across().unit().toSi(lying.low())),
                    there.shown(axes.across().unit().toSi(lying.high())));
            for (Ticks.Tick tick : beside.ticks()) {
                svg.text("mid", beside.at(tick.value()), bottom + 44, tick.label());
            }
            svg.text("right", lying.fromPx() - 14, bottom + 44, there.symbol());
            wordsY = bottom + 64;
        }
        svg.text("strong right", width - 2, wordsY, title(axes.acrossWords(), axes.across()));
    }

    private String band(Axis lying, Pane pane) {
        var path = new StringBuilder();
        for (var one : curve) {
            path.append(path.isEmpty() ? 'M' : 'L')
                    .append(point(lying, one.across(), pane.at(one.band().high())));
        }
        for (var one : curve.reversed()) {
            path.append('L')
                    .append(point(lying, one.across(), pane.at(one.band().low())));
        }
        return path.isEmpty() ? "" : path.append('Z').toString();
    }

    private String line(Axis lying, Pane pane) {
        var path = new StringBuilder();
        for (var one : curve) {
            path.append(path.isEmpty() ? 'M' : 'L').append(point(lying, one.across(), pane.at(one.value())));
        }
        return path.toString();
    }

    private String point(Axis lying, double across, double y) {
        return Svg.number(x(lying, across)) + " " + Svg.number(y);
    }

    private void draw(Svg svg, Dot dot, Axis lying, Pane pane) {
        double x = x(lying, dot.across());
        double low = pane.at(dot.interval95().low());
        double high = pane.at(dot.interval95().high());
        if (low - high > 3 * DOT) {
            svg.path("others", Svg.post(x, low, high) + Svg.line(low, x - 4, x + 4) + Svg.line(high, x - 4, x + 4));
        }
        if (!dot.name().isEmpty()) {
            svg.circle("ring", x, pane.at(dot.value()), RING);
        }
        svg.circle("dot", x, pane.at(dot.value()), DOT);
    }

    private record Label(double x, double y, String words) {
        boolean meets(Label other) {
            double apart = Math.abs(x - other.x);
            return Math.abs(y - other.y) < LINE && apart < Svg.widthOf(words) + Svg.widthOf(other.words);
        }

        Label lower() {
            return new Label(x, y + LINE, words);
        }
    }

    /// Names beside their rings, on whichever side there is room, one under another where they would meet.
    private static void labels(Svg svg, List<Label> wanted, Pane pane) {
        var placed = new ArrayList<Label>();
        for (var one : wanted) {
            var label = one;
            while (placed.stream().anyMatch(label::meets)) {
                label = label.lower();
            }
            placed.add(label);
            boolean rightwards = label.x() + 12 + Svg.widthOf(label.words()) <= pane.right();
            svg.text(
                    rightwards ? "said" : "said right",
                    rightwards ? label.x() + 11 : label.x() - 11,
                    label.y() + 4,
                    label.words());
        }
    }
}
