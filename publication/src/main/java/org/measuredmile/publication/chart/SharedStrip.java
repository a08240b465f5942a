package org.measuredmile.publication.chart;

import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import org.measuredmile.quantity.Interval;
import org.measuredmile.trial.Better;

/// Up to six results on one scale, one under the other, each with its interval and the mark of its series.
///
/// Unit: SI. Shape: `places` in the order of the series, empty where there is no result; its line is left out.
public record SharedStrip(Scale scale, Better better, List<Optional<Place>> places) {
    private static final double ROW = 15;
    private static final double EDGE = 14;
    private static final double MARK = 3.9;

    /// A result and its interval.
    public record Place(double value, Interval interval95) {}

    public SharedStrip {
        places = List.copyOf(places);
    }

    /// The drawing at a width; a table beside it says the same in numbers.
    ///
    /// Error: IllegalArgumentException without any place.
    public String svg(double width) {
        var ends = places.stream()
                .flatMap(Optional::stream)
                .flatMapToDouble(one -> DoubleStream.of(
                        one.value(), one.interval95().low(), one.interval95().high()))
                .summaryStatistics();
        if (ends.getCount() == 0) {
            throw new IllegalArgumentException("no places to draw");
        }
        Axis axis = Axis.over(scale.ticks(ends.getMin(), ends.getMax(), 7), EDGE, width - EDGE);
        long rows = places.stream().filter(Optional::isPresent).count();
        double bottom = 6 + ROW * rows;
        var svg = new Svg("strip", width, bottom + 22, "");
        svg.path("guide", axis.guides(2, bottom));
        svg.path("axis", axis.lying(bottom + 2, 4));
        svg.path("better", axis.better(better, bottom + 2));
        for (Ticks.Tick tick : axis.ticks()) {
            svg.text("mid", axis.at(tick.value()), bottom + 18, tick.label());
        }
        double y = 3 + ROW / 2;
        for (int i = 0; i < places.size(); i++) {
            if (places.get(i).isPresent()) {
                row(svg, axis, places.get(i).get(), new Line(new SeriesMark(i + 1), y));
                y += ROW;
            }
        }
        return svg.close();
    }

    /// Whose line it is and how high it lies.
    private record Line(SeriesMark mark, double y) {}

    private void row(Svg svg, Axis axis, Place place, Line line) {
        double from = axis.at(scale.shown(place.interval95().low()));
        double to = axis.at(scale.shown(place.interval95().high()));
        double y = line.y();
        var group = new TreeMap<String, String>();
        group.put("class", line.mark().cssClass());
        svg.begin("g", group);
        if (to - from > 3 * MARK) {
            svg.path(
                    "series-post",
                    Svg.line(y, from, to) + Svg.post(from, y - 4.5, y + 4.5) + Svg.post(to, y - 4.5, y + 4.5));
        }
        svg.path("series-mark", line.mark().at(axis.at(scale.shown(place.value())), y, MARK));
        svg.end("g");
    }
}
