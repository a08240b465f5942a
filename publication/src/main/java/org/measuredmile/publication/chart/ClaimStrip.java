package org.measuredmile.publication.chart;

import java.util.List;
import java.util.stream.DoubleStream;
import org.measuredmile.quantity.Interval;
import org.measuredmile.trial.Better;

/// A claim as a flagged dashed post, and beside it the intervals that were held against it.
///
/// Unit: SI.
/// Shape: results from the top down; the last is the one that the verdict rests on and is drawn as the subject.
public record ClaimStrip(Scale scale, Better better, List<Held> results, Strip.Flag claim) {
    private static final double WIDTH = 320;
    private static final double FIRST_Y = 22;
    private static final double ROW = 20;

    /// A result with its interval, and what it is: `as measured`.
    public record Held(double value, Interval interval95, String words) {}

    public ClaimStrip {
        results = List.copyOf(results);
    }

    /// The drawing, 320 wide.
    public String svg(String title) {
        double axisY = FIRST_Y + ROW * results.size();
        Axis axis = axis();
        var svg = new Svg("strip", WIDTH, axisY + 15, sentence(title));
        svg.path("axis", axis.lying(axisY, 4));
        svg.path("better", axis.better(better, axisY));
        for (Ticks.Tick tick : axis.ticks()) {
            svg.text("mid", axis.at(tick.value()), axisY + 14, tick.label());
        }
        Marks.flag(svg, axis.at(scale.shown(claim.value())), claim.words(), WIDTH);
        svg.path("claim", Svg.post(axis.at(scale.shown(claim.value())), 33, axisY));
        for (int i = 0; i < results.size(); i++) {
            var held = results.get(i);
            boolean isSubject = i == results.size() - 1;
            Marks.interval(
                    svg,
                    axis,
                    new Marks.Shown(scale, held.value(), held.interval95()),
                    FIRST_Y + ROW * i,
                    isSubject ? Marks.Weight.SUBJECT : Marks.Weight.PLAIN);
        }
        return svg.close();
    }

    private Axis axis() {
        var ends = DoubleStream.concat(
                        DoubleStream.of(claim.value()),
                        results.stream()
                                .flatMapToDouble(held -> DoubleStream.of(
                                        held.value(),
                                        held.interval95().low(),
                                        held.interval95().high())))
                .summaryStatistics();
        return Axis.over(scale.ticks(ends.getMin(), ends.getMax(), 6), 14, WIDTH - 14);
    }

    private String sentence(String title) {
        var words = new StringBuilder(title);
        for (var held : results) {
            words.append("; ")
                    .append(held.words())
                    .append(' ')
                    .append(scale.printer()
                            .figure(held.value(), held.interval95().halfWidth(), scale.kind())
                            .text());
        }
        return words + "; " + claim.words() + Marks.betterWords(better);
    }
}
