package org.measuredmile.publication.chart;

import org.measuredmile.quantity.Interval;
import org.measuredmile.trial.Better;

/// The marks that the charts share: posts and dot, a flagged post.
final class Marks {
    private static final double DOT = 4;

    private Marks() {}

    /// How heavily a result is drawn.
    enum Weight {
        SUBJECT("subject-line", "subject-dot"),
        PLAIN("interval", "dot"),
        /// A result of earlier years, without recordings.
        LEDGER("others ledger-line", "ledger-dot");

        private final String line;
        private final String dot;

        Weight(String line, String dot) {
            this.line = line;
            this.dot = dot;
        }
    }

    /// A value with its interval, in SI, and the scale it is shown on.
    record Shown(Scale scale, double value, Interval interval95) {}

    /// The interval with posts 10 high and its dot; no posts where the line is shorter than the dot.
    static void interval(Svg svg, Axis axis, Shown shown, double y, Weight weight) {
        double from = axis.at(shown.scale().shown(shown.interval95().low()));
        double to = axis.at(shown.scale().shown(shown.interval95().high()));
        double dot = axis.at(shown.scale().shown(shown.value()));
        if (to - from > 3 * DOT) {
            svg.path(weight.line, Svg.line(y, from, to) + Svg.post(from, y - 5, y + 5) + Svg.post(to, y - 5, y + 5));
        }
        svg.circle(weight.dot, dot, y, DOT);
    }

    /// A dashed post with a flag and its words, on whichever side there is room.
    static void flag(Svg svg, double x, String words, double width) {
        svg.path("claim", Svg.post(x, 8, 33));
        svg.path("claim-top", "M" + Svg.number(x - 4.5) + " 1.5H" + Svg.number(x + 4.5) + "L" + Svg.number(x) + " 8Z");
        boolean right = x + 8 + Svg.widthOf(words) <= width;
        svg.text(right ? "said" : "said right", right ? x + 8 : x - 8, 9, words);
    }

    static String betterWords(Better better) {
        return switch (better) {
            case LESS -> "; less is better";
            case MORE -> "; more is better";
            case NEITHER -> "";
        };
    }
}
