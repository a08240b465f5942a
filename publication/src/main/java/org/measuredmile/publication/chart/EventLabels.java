package org.measuredmile.publication.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.quantity.statistics.StudentT;
import org.measuredmile.trial.Trace;

/// The names and times of a trace's events, set above it in as many rows as they need not to run into each other.
final class EventLabels {
    private static final double ROW = 34;

    private final List<Placed> placed;
    private final int rows;

    /// One event's label: where its post stands, where its words begin or end, and in which row.
    private record Placed(Trace.Event event, double postX, double textX, boolean leftward, int row) {}

    private EventLabels(List<Placed> placed, int rows) {
        this.placed = List.copyOf(placed);
        this.rows = rows;
    }

    static EventLabels placed(List<Trace.Event> events, Axis time, double width) {
        var ordered = events.stream()
                .filter(event -> event.timeS() >= time.low() && event.timeS() <= time.high())
                .sorted(Comparator.comparingDouble(Trace.Event::timeS))
                .toList();
        var placed = new ArrayList<Placed>();
        var ends = new ArrayList<Double>();
        for (Trace.Event event : ordered) {
            double x = time.at(event.timeS());
            double length = length(event);
            boolean leftward = x + 6 + length > width;
            double from = leftward ? Math.max(0, x - 6 - length) : x + 6;
            int row = 0;
            while (row < ends.size() && ends.get(row) > from) {
                row++;
            }
            if (row == ends.size()) {
                ends.add(0.0);
            }
            ends.set(row, Math.max(from + length, x) + 8);
            placed.add(new Placed(event, x, leftward ? from + length : x + 6, leftward, row));
        }
        return new EventLabels(placed, ends.size());
    }

    double height() {
        return rows * ROW;
    }

    /// Posts from each label down to `toY`, and the words beside their tops.
    void draw(Svg svg, double plotTop, double toY) {
        for (Placed one : placed) {
            double y = plotTop - 34 - height() + one.row() * ROW;
            svg.path("event", Svg.post(one.postX(), y + 4, toY));
            String side = one.leftward() ? " right" : "";
            svg.text("strong" + side, one.textX(), y + 13, one.event().title());
            svg.text(side.strip(), one.textX(), y + 27, timeOf(one.event()));
        }
    }

    /// The time with the half-width of its 95 % interval.
    static String timeOf(Trace.Event event) {
        double halfWidth = StudentT.twoSided95(Double.POSITIVE_INFINITY) * event.standardUncertaintyS();
        return halfWidth > 0
                ? QuantityPrinter.desk(UnitSystem.METRIC)
                        .figure(event.timeS(), halfWidth, QuantityKind.TIME)
                        .text()
                : QuantityPrinter.in(QuantityKind.TIME.si(), event.timeS(), 2).text();
    }

    private static double length(Trace.Event event) {
        return Math.max(Svg.widthOf(event.title()), Svg.widthOf(timeOf(event)));
    }
}
