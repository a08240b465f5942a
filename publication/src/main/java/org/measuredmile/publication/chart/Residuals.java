package org.measuredmile.publication.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.Rounding;
import org.measuredmile.trial.Trace;

/// Sample minus model, wherever a model line covers a sample's time.
///
/// Unit: seconds; the SI unit of the trace.
final class Residuals {
    private final List<Residual> residuals;

    private record Residual(double timeS, double value) {}

    /// Where the strip lies and what its numbers are.
    record Strip(Scale scale, double top, double height) {}

    private Residuals(List<Residual> residuals) {
        this.residuals = List.copyOf(residuals);
    }

    static Residuals of(Trace trace) {
        var found = new ArrayList<Residual>();
        for (Trace.Line samples : trace.lines()) {
            if (samples.role() != Trace.Role.SAMPLES) {
                continue;
            }
            for (int i = 0; i < samples.timesS().length; i++) {
                double model = modelAt(trace, samples.timesS()[i]);
                if (!Double.isNaN(model)) {
                    found.add(new Residual(samples.timesS()[i], samples.values()[i] - model));
                }
            }
        }
        return new Residuals(found);
    }

    /// The model at a time, between its points by straight lines; NaN where no model line reaches.
    private static double modelAt(Trace trace, double timeS) {
        for (Trace.Line model : trace.lines()) {
            double[] times = model.timesS();
            boolean covers = model.role() == Trace.Role.MODEL
                    && times.length > 1
                    && timeS >= times[0]
                    && timeS <= times[times.length - 1];
            if (covers) {
                int found = Arrays.binarySearch(times, timeS);
                int after = found >= 0 ? found : -found - 1;
                if (after == 0 || times[after] == timeS) {
                    return model.values()[after];
                }
                double part = (timeS - times[after - 1]) / (times[after] - times[after - 1]);
                return model.values()[after - 1] + part * (model.values()[after] - model.values()[after - 1]);
            }
        }
        return Double.NaN;
    }

    int size() {
        return residuals.size();
    }

    /// The half-width that holds 95 % of the residuals.
    private double half95() {
        double[] sizes = residuals.stream()
                .mapToDouble(one -> Math.abs(one.value()))
                .sorted()
                .toArray();
        return sizes[(int) Math.min(sizes.length - 1, Math.ceil(0.95 * sizes.length) - 1)];
    }

    String within95(Scale scale) {
        double shown = scale.unit().differenceFromSi(half95());
        return QuantityPrinter.digits(Rounding.toSignificant(shown, 2)) + " " + scale.symbol();
    }

    void draw(Svg svg, Axis time, Strip strip) {
        double half = strip.scale().unit().differenceFromSi(half95());
        double largest = residuals.stream()
                .mapToDouble(one -> Math.abs(strip.scale().unit().differenceFromSi(one.value())))
                .max()
                .orElse(1);
        double reach = Math.max(largest, 1e-9);
        double middle = strip.top() + strip.height() / 2;
        double pixels = strip.height() / 2 / reach;
        svg.rect(
                "band",
                new Svg.Box(time.fromPx(), middle - half * pixels, time.toPx() - time.fromPx(), 2 * half * pixels));
        svg.path("guide", Svg.line(middle, time.fromPx(), time.toPx()));
        svg.path(
                "others",
                residuals.stream()
                        .map(one -> Svg.post(
                                time.at(one.timeS()),
                                middle,
                                middle - strip.scale().unit().differenceFromSi(one.value()) * pixels))
                        .collect(Collectors.joining()));
        numbers(svg, strip, new double[] {half, pixels});
    }

    private static void numbers(Svg svg, Strip strip, double[] halfAndPixels) {
        double middle = strip.top() + strip.height() / 2;
        double offset = halfAndPixels[0] * halfAndPixels[1];
        String number = QuantityPrinter.digits(Rounding.toSignificant(halfAndPixels[0], 2));
        svg.path(
                "axis",
                Svg.post(36, middle - offset, middle + offset)
                        + Svg.line(middle - offset, 31, 36)
                        + Svg.line(middle, 31, 36)
                        + Svg.line(middle + offset, 31, 36));
        double apart = Math.max(offset, 13);
        svg.text("right", 30, middle - apart + 4, "+" + number);
        svg.text("right", 30, middle + 4, "0");
        svg.text("right", 30, middle + apart + 4, "\u2212" + number);
        svg.text("", 44, strip.top() - 6, "sample minus model; the band holds 95 %");
    }
}
