package org.measuredmile.comparison.control;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.statistics.Sample;

/// The control bike's days, each as its difference from the mean of all of them, with limits.
///
/// Shape: by date. The mean runs on: every new day moves it. Limits are there from [#LEAST_DAYS] on and
/// provisional below [#SETTLED_DAYS], because so few moving ranges say little.
/// Unit: the SI unit of the figure.
/// Source: NIST/SEMATECH e-Handbook, 6.3.2.2 (individuals chart: x̄ ± 3·MR̄/1.128) and 6.3.2 (rules).
public record ControlChart(List<ControlDay> days, double mean, Optional<Limits> limits, List<Point> points) {
    static final int LEAST_DAYS = 4;
    static final int SETTLED_DAYS = 12;

    /// Turns a mean moving range of two into a standard deviation.
    private static final double RANGE_OF_TWO = 1.128;
    private static final double WIDTHS = 3;
    private static final int RUN = 8;

    /// Limits of the differences.
    ///
    /// Shape: `standardDeviation` is what one day differs by from another, by moving ranges.
    public record Limits(double meanMovingRange, double standardDeviation, Interval interval, boolean provisional) {}

    /// Why a day is out of the ordinary.
    public enum Signal {
        /// Beyond three standard deviations: by chance one day in 370.
        BEYOND("beyond the limits"),
        /// The last of eight days in a row on the same side of the mean: by chance one such eight in 128.
        RUN_OF_EIGHT("eighth day in a row on one side");

        private final String words;

        Signal(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /// One day's difference from the mean, with that day's own 95 % interval around it.
    public record Point(ControlDay day, double difference, Interval own95, boolean reconfigured, List<Signal> signals) {
        public Point {
            signals = List.copyOf(signals);
        }
    }

    public ControlChart {
        days = List.copyOf(days);
        points = List.copyOf(points);
    }

    /// The chart of some days of one bike in one figure and variant.
    ///
    /// Error: IllegalArgumentException without any day.
    public static ControlChart of(List<ControlDay> unordered) {
        var days = unordered.stream()
                .sorted(Comparator.comparing(ControlDay::date).thenComparing(ControlDay::day))
                .toList();
        var values = Sample.of(days.stream().mapToDouble(ControlDay::value).toArray());
        double mean = values.mean();
        var limits = limits(values.array());
        return new ControlChart(days, mean, limits, points(days, mean, limits));
    }

    private static Optional<Limits> limits(double[] values) {
        if (values.length < LEAST_DAYS) {
            return Optional.empty();
        }
        double sum = 0;
        for (int i = 1; i < values.length; i++) {
            sum += Math.abs(values[i] - values[i - 1]);
        }
        double meanRange = sum / (values.length - 1);
        double deviation = meanRange / RANGE_OF_TWO;
        return Optional.of(
                new Limits(meanRange, deviation, Interval.around(0, WIDTHS * deviation), values.length < SETTLED_DAYS));
    }

    private static List<Point> points(List<ControlDay> days, double mean, Optional<Limits> limits) {
        var points = new ArrayList<Point>();
        int sameSide = 0;
        double side = 0;
        for (int i = 0; i < days.size(); i++) {
            var day = days.get(i);
            double difference = day.value() - mean;
            double here = Math.signum(difference);
            sameSide = here == 0 ? 0 : here == side ? sameSide + 1 : 1;
            side = here;
            var signals = new ArrayList<Signal>();
            if (limits.isPresent() && !limits.get().interval().contains(difference)) {
                signals.add(Signal.BEYOND);
            }
            if (limits.isPresent() && sameSide >= RUN) {
                signals.add(Signal.RUN_OF_EIGHT);
            }
            var own = day.thisDay().interval95();
            boolean reconfigured = i > 0 && !days.get(i - 1).configuration().equals(day.configuration());
            points.add(new Point(
                    day, difference, new Interval(own.low() - mean, own.high() - mean), reconfigured, signals));
        }
        return points;
    }

    /// The days that call for a look.
    public List<Point> signals() {
        return points.stream().filter(point -> !point.signals().isEmpty()).toList();
    }

    /// What days differ by beyond what each day's own runs leave open; empty for fewer than two days.
    ///
    /// Shape: the square root of the variance between days; 0 says that nothing was seen.
    public Optional<RandomEffects> betweenDays() {
        return days.size() < 2
                ? Optional.empty()
                : Optional.of(RandomEffects.of(
                        days.stream().mapToDouble(ControlDay::value).toArray(),
                        days.stream()
                                .mapToDouble(day -> day.thisDay().standard())
                                .toArray()));
    }
}
