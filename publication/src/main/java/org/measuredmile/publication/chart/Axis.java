package org.measuredmile.publication.chart;

import java.util.List;
import java.util.stream.Collectors;

/// Where values lie on a drawing: a straight scale from one end to the other.
///
/// Unit: values in the unit shown; positions in CSS pixels. `fromPx` may lie below `toPx` on the page (an upright
/// axis).
public record Axis(double low, double high, double fromPx, double toPx, List<Ticks.Tick> ticks) {
    /// An axis exactly as long as its ticks.
    static Axis over(Ticks ticks, double fromPx, double toPx) {
        return new Axis(ticks.low(), ticks.high(), fromPx, toPx, ticks.ticks());
    }

    double at(double value) {
        return fromPx + (value - low) / (high - low) * (toPx - fromPx);
    }

    /// The axis of the other unit along the same stretch, with its own round ticks.
    Axis beside(double lowThere, double highThere) {
        var ticks = Ticks.covering(lowThere, highThere, 8).within(lowThere, highThere);
        return new Axis(lowThere, highThere, fromPx, toPx, ticks);
    }

    /// The line and its ticks, lying, as path data.
    String lying(double y, double tickLength) {
        if (ticks.isEmpty()) {
            return "";
        }
        double first = at(ticks.getFirst().value());
        double last = at(ticks.getLast().value());
        return Svg.line(y, first, last)
                + ticks.stream()
                        .map(tick -> Svg.post(at(tick.value()), y, y + tickLength))
                        .collect(Collectors.joining());
    }

    /// The line and its ticks, upright, as path data.
    String upright(double x, double tickLength) {
        if (ticks.isEmpty()) {
            return "";
        }
        double first = at(ticks.getFirst().value());
        double last = at(ticks.getLast().value());
        return Svg.post(x, first, last)
                + ticks.stream()
                        .map(tick -> Svg.line(at(tick.value()), x, x + tickLength))
                        .collect(Collectors.joining());
    }

    /// Guides through a lying axis' ticks, as path data.
    String guides(double fromY, double toY) {
        return ticks.stream()
                .map(tick -> Svg.post(at(tick.value()), fromY, toY))
                .collect(Collectors.joining());
    }

    /// An arrowhead just beyond the better end of a lying axis, as path data; empty where neither end is better.
    String better(org.measuredmile.trial.Better better, double y) {
        return switch (better) {
            case LESS -> head(fromPx - 4, 7, y);
            case MORE -> head(toPx + 4, -7, y);
            case NEITHER -> "";
        };
    }

    private static String head(double tip, double back, double y) {
        return "M" + Svg.number(tip) + " " + Svg.number(y) + "L" + Svg.number(tip + back) + " " + Svg.number(y - 3.5)
                + "V" + Svg.number(y + 3.5) + "Z";
    }
}
