package org.measuredmile.publication.chart;

import java.util.List;
import java.util.stream.DoubleStream;
import org.measuredmile.quantity.Interval;
import org.measuredmile.trial.Better;

/// The tiles of a standings table: a head with the axis, a tile a row, a foot with the other unit; stacked without gaps
/// they join into one plot.
///
/// Unit: SI. Shape: every tile of a column has the column's width; on a narrow one only the axis' ends carry numbers.
public final class StandingTile {
    private static final double EDGE = 16;
    private static final double NARROW = 200;

    private final Scale scale;
    private final Better better;
    private final Size size;
    private final Axis axis;

    /// How wide a column and how high a row is.
    ///
    /// Unit: CSS pixels.
    public record Size(double width, double rowHeight) {}

    /// A row's place on the axis.
    public record Place(double value, Interval interval95) {}

    /// How a row is drawn.
    public enum Kind {
        SUBJECT(Marks.Weight.SUBJECT),
        MEASURED(Marks.Weight.PLAIN),
        LEDGER(Marks.Weight.LEDGER);

        private final Marks.Weight weight;

        Kind(Marks.Weight weight) {
            this.weight = weight;
        }
    }

    /// Tiles whose axis covers all the places.
    ///
    /// Error: IllegalArgumentException without any place.
    public StandingTile(Scale scale, Better better, Size size, List<Place> places) {
        this.scale = scale;
        this.better = better;
        this.size = size;
        var ends = places.stream()
                .flatMapToDouble(one -> DoubleStream.of(
                        one.value(), one.interval95().low(), one.interval95().high()))
                .summaryStatistics();
        if (ends.getCount() == 0) {
            throw new IllegalArgumentException("no places to draw");
        }
        this.axis = Axis.over(scale.ticks(ends.getMin(), ends.getMax(), 7), EDGE, size.width() - EDGE);
    }

    /// The axis with its numbers above it.
    public String head() {
        var svg = new Svg("", size.width(), 26, "");
        svg.path("axis", axis.lying(22, -5));
        svg.path("better", axis.better(better, 22));
        for (Ticks.Tick tick : numbered(axis)) {
            svg.text("mid", axis.at(tick.value()), 12, tick.label());
        }
        return svg.close();
    }

    private List<Ticks.Tick> numbered(Axis any) {
        boolean allFit = size.width() >= NARROW || any.ticks().size() < 3;
        return allFit
                ? any.ticks()
                : List.of(any.ticks().getFirst(), any.ticks().getLast());
    }

    /// One row: guides, interval, dot.
    public String row(Place place, Kind kind) {
        var svg = new Svg("", size.width(), size.rowHeight(), "");
        if (size.width() >= NARROW) {
            svg.path("guide", axis.guides(0, size.rowHeight()));
        }
        Marks.interval(
                svg,
                axis,
                new Marks.Shown(scale, place.value(), place.interval95()),
                size.rowHeight() / 2,
                kind.weight);
        return svg.close();
    }

    /// The same stretch in the other unit, its numbers below; empty where the other system has no unit of its own.
    public String foot() {
        if (!scale.hasOther()) {
            return "";
        }
        Scale other = scale.other();
        double low = other.shown(scale.unit().toSi(axis.low()));
        double high = other.shown(scale.unit().toSi(axis.high()));
        Axis there = axis.beside(low, high);
        var svg = new Svg("", size.width(), 24, "");
        svg.path("axis", there.lying(2, 4));
        for (Ticks.Tick tick : there.ticks()) {
            svg.text("mid", there.at(tick.value()), 18, tick.label());
        }
        return svg.close();
    }
}
