package org.measuredmile.publication.chart;

import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;
import org.measuredmile.trial.Trace;

/// A run's recording with its events: samples as rings, the fitted model as a line, events as posts through all strips,
/// and under them sample minus model on the same time axis.
///
/// Shape: drawn for a width; where samples stand closer than 3 px they become a line.
public final class TracePlot {
    private static final double PLOT = 290;
    private static final double RESIDUALS = 64;
    private static final double GAP = 34;

    private final Trace trace;
    private final Scale scale;
    private final double width;
    private final Axis time;
    private final EventLabels labels;
    private final Axis upright;

    /// Error: IllegalArgumentException for a trace without a single sample or model point.
    public TracePlot(Trace trace, Scale scale, double width) {
        this.trace = trace;
        this.scale = scale;
        this.width = width;
        var times = trace.lines().stream()
                .flatMapToDouble(line -> DoubleStream.of(line.timesS()))
                .summaryStatistics();
        if (times.getCount() == 0) {
            throw new IllegalArgumentException("a trace without points");
        }
        boolean narrow = width < 500;
        double right = scale.hasOther() ? 44 : 14;
        var ticks =
                Ticks.covering(times.getMin(), times.getMax(), narrow ? 6 : 9).within(times.getMin(), times.getMax());
        double high = Math.max(times.getMax(), times.getMin() + 1e-6);
        this.time = new Axis(times.getMin(), high, 44, width - right, ticks);
        this.labels = EventLabels.placed(trace.events(), time, width);
        double top = labels.height() + 34;
        this.upright = uprightAxis(top, top + PLOT);
    }

    private Axis uprightAxis(double top, double bottom) {
        var values = trace.lines().stream()
                .flatMapToDouble(line -> DoubleStream.of(line.values()))
                .summaryStatistics();
        double lowest = scale.shown(values.getMin());
        double highest = Math.max(scale.shown(values.getMax()), lowest + 1e-6);
        double room = 0.03 * (highest - lowest);
        // Noise about rest reaches a little under zero; the axis still begins there.
        double low = lowest < 0 && lowest > -room ? 0 : lowest - (lowest > 0 && lowest < room ? lowest : 0);
        double high = highest + room;
        return new Axis(low, high, bottom, top, Ticks.covering(low, high, 8).within(low, high));
    }

    /// The drawing.
    ///
    /// @param title what run it is
    public String svg(String title) {
        double bottom = upright.fromPx();
        var residuals = Residuals.of(trace);
        boolean hasStrip = residuals.size() >= 3;
        double stripTop = bottom + GAP;
        double timeY = hasStrip ? stripTop + RESIDUALS + 12 : bottom + 16;
        var svg = new Svg("plot", width, timeY + 44, sentence(title, residuals));
        frame(svg);
        labels.draw(svg, upright.toPx(), hasStrip ? timeY - 4 : bottom + 6);
        for (Trace.Line line : trace.lines()) {
            line(svg, line);
        }
        if (hasStrip) {
            residuals.draw(svg, time, new Residuals.Strip(scale, stripTop, RESIDUALS));
        }
        svg.path("axis", time.lying(timeY, 5));
        for (Ticks.Tick tick : time.ticks()) {
            svg.text("mid", time.at(tick.value()), timeY + 19, tick.label());
        }
        svg.text("right", width - 4, timeY + 37, "s after " + trace.originWords());
        return svg.close();
    }

    private void frame(Svg svg) {
        for (Ticks.Tick tick : upright.ticks()) {
            svg.path("guide", Svg.line(upright.at(tick.value()), time.fromPx(), time.toPx()));
            svg.text("right", 30, upright.at(tick.value()) + 4, tick.label());
        }
        svg.path("axis", upright.upright(36, -5));
        svg.text("strong", 4, upright.toPx() - 14, quantity());
        if (scale.hasOther()) {
            Scale there = scale.other();
            Axis beside = upright.beside(
                    there.shown(scale.unit().toSi(upright.low())),
                    there.shown(scale.unit().toSi(upright.high())));
            svg.path("axis", beside.upright(width - 36, 5));
            for (Ticks.Tick tick : beside.ticks()) {
                svg.text("", width - 27, beside.at(tick.value()) + 4, tick.label());
            }
            svg.text("right", width - 4, upright.toPx() - 14, there.symbol());
        }
    }

    private String quantity() {
        String words = scale.kind().name().toLowerCase(Locale.ROOT).replace('_', ' ');
        String name = words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
        return scale.symbol().isEmpty() ? name : name + ", " + scale.symbol();
    }

    private void line(Svg svg, Trace.Line line) {
        switch (line.role()) {
            case MODEL -> svg.path("subject-line", joined(line));
            case SAMPLES -> samples(svg, line);
            case DROPPED -> dropped(svg, line);
        }
    }

    private void samples(Svg svg, Trace.Line line) {
        int count = line.timesS().length;
        double apart = count < 2
                ? Double.POSITIVE_INFINITY
                : (time.at(line.timesS()[count - 1]) - time.at(line.timesS()[0])) / (count - 1);
        if (apart < 3) {
            svg.path("others trace-line", joined(line));
            return;
        }
        for (int i = 0; i < count; i++) {
            double value = scale.shown(line.values()[i]);
            svg.sample(time.at(line.timesS()[i]), upright.at(value), said(line.timesS()[i], value));
        }
    }

    private String said(double timeS, double shown) {
        return String.format(Locale.ROOT, "%.2f s, %.2f %s", timeS, shown, scale.symbol());
    }

    /// A dropped sample is an open ring with a stroke through it.
    private void dropped(Svg svg, Trace.Line line) {
        for (int i = 0; i < line.timesS().length; i++) {
            double x = time.at(line.timesS()[i]);
            double y = upright.at(scale.shown(line.values()[i]));
            svg.circle("sample", x, y, 2.6);
            svg.path(
                    "others",
                    "M" + Svg.number(x - 4) + " " + Svg.number(y + 4) + "L" + Svg.number(x + 4) + " "
                            + Svg.number(y - 4));
        }
    }

    private String joined(Trace.Line line) {
        var path = new StringBuilder();
        for (int i = 0; i < line.timesS().length; i++) {
            path.append(i == 0 ? 'M' : 'L')
                    .append(Svg.number(time.at(line.timesS()[i])))
                    .append(' ')
                    .append(Svg.number(upright.at(scale.shown(line.values()[i]))));
        }
        return path.toString();
    }

    private String sentence(String title, Residuals residuals) {
        var words = new StringBuilder(title);
        int samples = trace.lines().stream()
                .filter(line -> line.role() == Trace.Role.SAMPLES)
                .mapToInt(line -> line.timesS().length)
                .sum();
        words.append(": ").append(samples).append(" samples of ").append(trace.recording());
        List<Trace.Event> events = trace.events();
        for (Trace.Event event : events) {
            words.append("; ").append(event.title()).append(" at ").append(EventLabels.timeOf(event));
        }
        if (residuals.size() >= 3) {
            words.append("; 95 % of samples lie within ")
                    .append(residuals.within95(scale))
                    .append(" of the model");
        }
        return words.toString();
    }
}
