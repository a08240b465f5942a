package org.measuredmile.publication.chart;

import java.util.OptionalDouble;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.Printed;
import org.measuredmile.quantity.QuantityPrinter;

/// Whether a reading lies where it may: the window as a band between two posts, the reading as a dot.
///
/// Unit: SI.
public record Gauge(Scale scale, String title, Interval allowed, OptionalDouble reading) {
    private static final double WIDTH = 358;
    private static final double MIDDLE = 14;

    /// The drawing, 358 wide.
    public String svg() {
        Axis axis = axis();
        double from = axis.at(scale.shown(allowed.low()));
        double to = axis.at(scale.shown(allowed.high()));
        var svg = new Svg("plot gauge", WIDTH, 44, sentence());
        svg.rect("band", new Svg.Box(from, 6, to - from, 16));
        svg.path("event", Svg.post(from, 4, 24) + Svg.post(to, 4, 24));
        svg.path("axis", axis.lying(24, 5));
        for (Ticks.Tick tick : axis.ticks()) {
            svg.text("mid", axis.at(tick.value()), 42, tick.label());
        }
        reading.ifPresent(value -> svg.circle("subject-dot", axis.at(scale.shown(value)), MIDDLE, 6.5));
        return svg.close();
    }

    /// As wide as the window and the reading need, but never so wide that the window is lost.
    private Axis axis() {
        double width = allowed.high() - allowed.low();
        double low = Math.min(allowed.low() - width / 2, reading.orElse(allowed.low()));
        double high = Math.max(allowed.high() + width / 2, reading.orElse(allowed.high()));
        return Axis.over(scale.ticks(low, high, 7), 16, WIDTH - 16);
    }

    private String sentence() {
        String window = "the window is " + number(allowed.low()).value() + " to "
                + number(allowed.high()).text();
        return reading.isPresent()
                ? title + " " + number(reading.getAsDouble()).text() + "; " + window
                : title + "; " + window;
    }

    private Printed number(double si) {
        return QuantityPrinter.in(scale.unit(), si, 2);
    }
}
