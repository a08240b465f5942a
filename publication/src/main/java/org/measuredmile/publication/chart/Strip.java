package org.measuredmile.publication.chart;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.measuredmile.quantity.Interval;
import org.measuredmile.trial.Better;

/// Where a result lies among the others: posts and dot on an axis that says which end is better.
///
/// Unit: SI; `others` are the values of the other bikes in the same variant.
/// Shape: `flag` is a claim or a limit, drawn as a dashed post.
public record Strip(
        Scale scale, Better better, double value, Interval interval95, List<Double> others, Optional<Flag> flag) {
    private static final double WIDTH = 320;
    private static final double AXIS_Y = 33;
    private static final double OWN_Y = 18;

    /// Something to be met or kept to, and its words.
    public record Flag(double value, String words) {}

    public Strip {
        others = List.copyOf(others);
    }

    /// The drawing, 320 wide.
    public String svg(String title) {
        Axis axis = axis();
        var svg = new Svg("strip", WIDTH, 48, sentence(title));
        svg.path("axis", axis.lying(AXIS_Y, 4));
        svg.path("better", axis.better(better, AXIS_Y));
        svg.path(
                "others",
                others.stream()
                        .map(other -> Svg.post(axis.at(scale.shown(other)), AXIS_Y - 9, AXIS_Y - 3))
                        .collect(Collectors.joining()));
        for (Ticks.Tick tick : axis.ticks()) {
            svg.text("mid", axis.at(tick.value()), 47, tick.label());
        }
        flag.ifPresent(one -> Marks.flag(svg, axis.at(scale.shown(one.value())), one.words(), WIDTH));
        Marks.interval(svg, axis, new Marks.Shown(scale, value, interval95), OWN_Y, Marks.Weight.SUBJECT);
        return svg.close();
    }

    private Axis axis() {
        var ends = DoubleStream.concat(
                        DoubleStream.of(value, interval95.low(), interval95.high()),
                        DoubleStream.concat(
                                others.stream().mapToDouble(Double::doubleValue),
                                flag.stream().mapToDouble(Flag::value)))
                .summaryStatistics();
        return Axis.over(scale.ticks(ends.getMin(), ends.getMax(), 7), 14, WIDTH - 14);
    }

    private String sentence(String title) {
        String own = title + ": "
                + scale.printer()
                        .figure(value, interval95.halfWidth(), scale.kind())
                        .text();
        String among = others.isEmpty()
                ? "; no other bike yet"
                : "; " + others.size() + " other" + (others.size() == 1 ? " bike" : " bikes") + " from "
                        + plain(others.stream()
                                .mapToDouble(Double::doubleValue)
                                .min()
                                .getAsDouble())
                        + " to "
                        + plain(others.stream()
                                .mapToDouble(Double::doubleValue)
                                .max()
                                .getAsDouble());
        return own + among + flag.map(one -> "; " + one.words()).orElse("") + Marks.betterWords(better);
    }

    private String plain(double si) {
        return scale.printer().figure(si, interval95.halfWidth(), scale.kind()).value();
    }
}
