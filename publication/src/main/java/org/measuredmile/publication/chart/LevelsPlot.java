package org.measuredmile.publication.chart;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.measuredmile.quantity.Interval;

/// A figure measured at several levels, one row a level in their order, with the gain over the row before.
///
/// Unit: SI.
public record LevelsPlot(Scale scale, String title, List<Level> levels) {
    private static final double ROW = 26;
    private static final double TOP = 30;
    private static final double GAINS_WIDE = 176;
    private static final double GAINS_NARROW = 92;

    /// One level: its words, its result, the results of its single runs, and the gain over the level before.
    ///
    /// Shape: `gain` as printed, empty where there is none; `note` stands in its place ("can't be
    /// told from level 4").
    public record Level(String words, double value, Interval interval95, List<Double> runs, String gain, String note) {
        public Level {
            runs = List.copyOf(runs);
        }
    }

    public LevelsPlot {
        levels = List.copyOf(levels);
    }

    /// The drawing at a width of 320 and more; the other unit's numbers stand under the axis.
    ///
    /// Error: IllegalArgumentException without any level.
    public String svg(double width) {
        var ends = levels.stream()
                .flatMapToDouble(one -> DoubleStream.of(
                        one.value(), one.interval95().low(), one.interval95().high()))
                .summaryStatistics();
        if (ends.getCount() == 0) {
            throw new IllegalArgumentException("no levels to draw");
        }
        double names = 16
                + levels.stream()
                        .mapToDouble(one -> Svg.widthOf(one.words()))
                        .max()
                        .getAsDouble();
        double left = Math.min(names, width * 0.4);
        double right = width - (isNarrow(width) ? GAINS_NARROW : GAINS_WIDE) - 12;
        Axis axis = Axis.over(scale.ticks(ends.getMin(), ends.getMax(), isNarrow(width) ? 4 : 8), left, right);
        double bottom = TOP + ROW * levels.size();
        var svg = new Svg("plot", width, bottom + (scale.hasOther() ? 52 : 32), sentence());
        svg.path("guide", axis.guides(4, bottom));
        svg.path("axis", axis.lying(bottom + 6, 5));
        numbers(svg, axis, bottom + 24, scale);
        other(svg, axis, bottom + 44);
        boolean hasGains = levels.stream()
                .anyMatch(one -> !one.gain().isEmpty() || !one.note().isEmpty());
        if (hasGains) {
            svg.text("", gainsPx(width), 10, "gain, " + scale.symbol());
        }
        for (int i = 0; i < levels.size(); i++) {
            if (i > 0) {
                step(svg, axis, i);
            }
            row(svg, axis, i);
            gain(svg, i, width);
        }
        return svg.close();
    }

    private static boolean isNarrow(double width) {
        return width < 500;
    }

    private static double gainsPx(double width) {
        return width - (isNarrow(width) ? GAINS_NARROW : GAINS_WIDE) + 8;
    }

    private void row(Svg svg, Axis axis, int i) {
        Level level = levels.get(i);
        double y = TOP + ROW * i;
        svg.text("said right", axis.fromPx() - 12, y + 4, level.words());
        svg.path(
                "others",
                level.runs().stream()
                        .map(run -> clamped(axis, run))
                        .map(x -> Svg.post(x, y + 6, y + 11))
                        .collect(Collectors.joining()));
        Marks.interval(svg, axis, new Marks.Shown(scale, level.value(), level.interval95()), y, Marks.Weight.SUBJECT);
    }

    private double clamped(Axis axis, double si) {
        return Math.min(axis.toPx(), Math.max(axis.fromPx(), axis.at(scale.shown(si))));
    }

    /// A step from the level before down to this one.
    private void step(Svg svg, Axis axis, int i) {
        Level level = levels.get(i);
        if (level.gain().isEmpty()) {
            return;
        }
        double before = axis.at(scale.shown(levels.get(i - 1).value()));
        double low = axis.at(scale.shown(level.interval95().low()));
        double y = TOP + ROW * i;
        double to = Math.max(before, low - 4);
        svg.path("others", Svg.post(before, y - ROW + 8, y) + Svg.line(y, before, to));
    }

    /// What the row adds to the one before, at the right; a long note takes two lines.
    private void gain(Svg svg, int i, double width) {
        Level level = levels.get(i);
        double x = gainsPx(width);
        double y = TOP + ROW * i + 4;
        if (!level.gain().isEmpty()) {
            svg.text("said", x, y, level.gain());
        }
        String note = level.note();
        int middle = note.lastIndexOf(' ', note.length() / 2 + 2);
        if (note.isEmpty()) {
            return;
        }
        if (Svg.widthOf(note) <= width - x || middle < 0) {
            svg.text("", x, y, note);
        } else {
            svg.text("", x, y - 6, note.substring(0, middle));
            svg.text("", x, y + 6, note.substring(middle + 1));
        }
    }

    private static void numbers(Svg svg, Axis axis, double y, Scale scale) {
        for (Ticks.Tick tick : axis.ticks()) {
            svg.text("mid said", axis.at(tick.value()), y, tick.label());
        }
        unit(svg, axis, y, scale);
    }

    /// The unit stands at the end of the numbers, where no number is.
    private static void unit(Svg svg, Axis axis, double y, Scale scale) {
        svg.text("right", axis.fromPx() - 12, y, scale.symbol());
    }

    private void other(Svg svg, Axis axis, double y) {
        if (!scale.hasOther()) {
            return;
        }
        Scale there = scale.other();
        Axis beside = axis.beside(
                there.shown(scale.unit().toSi(axis.low())),
                there.shown(scale.unit().toSi(axis.high())));
        for (Ticks.Tick tick : beside.ticks()) {
            svg.text("mid", beside.at(tick.value()), y, tick.label());
        }
        unit(svg, axis, y, there);
    }

    private String sentence() {
        return title + ": "
                + levels.stream()
                        .map(one -> one.words() + " "
                                + scale.printer()
                                        .figure(one.value(), one.interval95().halfWidth(), scale.kind())
                                        .text()
                                + (one.gain().isEmpty() ? "" : ", gain " + one.gain())
                                + (one.note().isEmpty() ? "" : ", " + one.note()))
                        .collect(Collectors.joining("; "));
    }
}
