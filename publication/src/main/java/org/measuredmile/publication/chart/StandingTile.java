package org.measuredmile.publication.chart;

import java.util.List;
import java.util.stream.DoubleStream;
import org.measuredmile.quantity.Interval;
import org.measuredmile.trial.Better;

/// The tiles of a standings table: a head with the axis, a tile a row, a foot with the other unit; stacked without gaps
/// they join into one plot.
///
/// Unit: SI. Shape: every tile is 350 wide; rows are `rowHeight` high.
public final class StandingTile {
    private static final double WIDTH = 350;
    private static final double EDGE = 16;

    private final Scale scale;
    private final Better better;
    private final double rowHeight;
    private final Axis axis;

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
    public StandingTile(Scale scale, Better better, double rowHeight, List<Place> places) {
        this.scale = scale;
        this.better = better;
        this.rowHeight = rowHeight;
        var ends = places.stream()
                .flatMapToDouble(
                        one -> DoubleStream.of(one.value(), one.interval95().low(), one.interval95().high()))
                .summaryStatistics();
        if (ends.getCount() == 0) {
            throw new IllegalArgumentException("no places to draw");
        }
        this.axis = Axis.over(scale.ticks(ends.getMin(), ends.getMax(), 7), EDGE, WIDTH - EDGE);
    }

    /// The axis with its numbers above it.
    public String head() {
        var svg = new Svg("", WIDTH, 26, "");
        svg.path("axis", axis.lying(22, -5));
        svg.path("better", axis.better(better, 22));
        for (Ticks.Tick tick : axis.ticks()) {
            svg.text("mid", axis.at(tick.value()), 12, tick.label());
        }
        return svg.close();
    }

    /// One row: guides, interval, dot.
    public String row(Place place, Kind kind) {
        var svg = new Svg("", WIDTH, rowHeight, "");
        svg.path("guide", axis.guides(0, rowHeight));
        Marks.interval(
                svg, axis, new Marks.Shown(scale, place.value(), place.interval95()), rowHeight / 2, kind.weight);
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
        var svg = new Svg("", WIDTH, 24, "");
        svg.path("axis", there.lying(2, 4));
        for (Ticks.Tick tick : there.ticks()) {
            svg.text("mid", there.at(tick.value()), 18, tick.label());
        }
        return svg.close();
    }
}
