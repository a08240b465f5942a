package org.measuredmile.desk;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.measuredmile.comparison.control.ControlChart;
import org.measuredmile.comparison.control.DayAndTester;
import org.measuredmile.desk.ControlDays.Charted;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.Rounding;
import org.measuredmile.quantity.Unit;

/// The sentences of a control chart, alike on the command line and on its page. Testers only by their
/// codes, and of their differences only the spread.
public final class ControlWords {
    private ControlWords() {}

    /// A day's difference from the mean with that day's own half-width.
    public static String difference(ControlChart.Point point, QuantityKind kind, QuantityPrinter printer) {
        return printer.difference(point.difference(), point.own95().halfWidth(), kind)
                .text();
    }

    /// What a day is to be looked at for, and whether the bike was changed before it.
    public static String remark(ControlChart.Point point) {
        var words = new ArrayList<String>();
        point.signals().forEach(signal -> words.add(signal.words()));
        if (point.reconfigured()) {
            words.add("configuration changed before it");
        }
        return String.join("; ", words);
    }

    /// Where mean and limits lie and how far they are to be trusted.
    public static String limits(Charted charted, QuantityPrinter printer) {
        var chart = charted.chart();
        String mean = "mean of " + chart.days().size() + " days " + deviationFree(chart.mean(), charted, printer);
        return chart.limits()
                .map(limits -> mean + "; limits ± " + spread(limits.interval().high(), charted, printer)
                        + ", 2.66 times the mean step from day to day"
                        + (limits.provisional() ? ", provisional with so few days" : ""))
                .orElse(mean + "; too few days for limits");
    }

    private static String deviationFree(double mean, Charted charted, QuantityPrinter printer) {
        return charted.chart()
                .limits()
                .map(limits -> printer.figure(
                        mean, limits.standardDeviation(), charted.spec().kind()))
                .map(printed -> new org.measuredmile.quantity.Printed(printed.value(), "", printed.unit()).text())
                .orElseGet(() -> printer.value(mean, charted.spec().kind(), 2).text());
    }

    /// A standard deviation between days with the trial's own declared one: `0.21 m (declared 0.19 m)`.
    public static String betweenDays(Charted charted, QuantityPrinter printer) {
        double declared = charted.spec().prior().betweenDaysAt(charted.chart().mean());
        return charted.chart()
                .betweenDays()
                .map(found -> (found.between() == 0 ? "none seen" : spread(found.between(), charted, printer))
                        + " (declared " + spread(declared, charted, printer) + ")")
                .orElse("");
    }

    private static String spread(double si, Charted charted, QuantityPrinter printer) {
        var unit = charted.spec().kind().shown(printer.system());
        return QuantityPrinter.digits(Rounding.toSignificant(unit.differenceFromSi(si), 2)) + "\u00a0" + unit.symbol();
    }

    /// How much testers and days differ, a line each.
    public static List<String> components(Charted charted, QuantityPrinter printer) {
        var lines = new ArrayList<String>();
        if (charted.components().isEmpty()) {
            return lines;
        }
        var found = charted.components().get();
        lines.add(
                "standard deviations on the same bike, from " + found.runs() + " runs on " + found.days() + " days by "
                        + found.testers() + (found.testers() == 1 ? " tester" : " testers") + " on " + found.bikes()
                        + (found.bikes() == 1 ? " bike:" : " bikes:"));
        for (var component : found.components()) {
            lines.add("  " + component.words() + ": " + component(found, component, charted, printer));
        }
        lines.add("  between runs: " + spread(found, found.run(), charted, printer));
        if (!charted.chart().signals().isEmpty()) {
            lines.add("  the days that call for a look are in it");
        }
        if (!found.why().isEmpty()) {
            lines.add("  " + found.why());
        }
        return lines;
    }

    private static String component(
            DayAndTester found, DayAndTester.Component component, Charted charted, QuantityPrinter printer) {
        Interval interval = component.interval95();
        String value = component.standardDeviation() == 0
                ? "none seen"
                : spread(found, component.standardDeviation(), charted, printer);
        String upTo = spread(found, interval.high(), charted, printer);
        return value + " (95 %: "
                + (interval.low() == 0
                        ? "up to " + upTo
                        : "from " + spread(found, interval.low(), charted, printer) + " to " + upTo)
                + ")";
    }

    private static String spread(DayAndTester found, double value, Charted charted, QuantityPrinter printer) {
        return found.relative()
                ? QuantityPrinter.digits(Rounding.toSignificant(Unit.PER_CENT.fromSi(value), 2)) + "\u00a0%"
                : spread(value, charted, printer);
    }

    /// The days that call for a look, in words, each date as `dated` prints it; empty where none does.
    public static String signals(Charted charted, Function<LocalDate, String> dated) {
        return charted.chart().signals().stream()
                .map(point -> dated.apply(point.day().date()) + " (" + remark(point) + ")")
                .collect(Collectors.joining(", "));
    }
}
