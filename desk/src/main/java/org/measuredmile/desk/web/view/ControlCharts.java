package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.BikeEntry;
import org.measuredmile.comparison.control.AgainstControl;
import org.measuredmile.comparison.control.ControlChart;
import org.measuredmile.desk.ControlDays;
import org.measuredmile.desk.ControlDays.Charted;
import org.measuredmile.desk.ControlWords;
import org.measuredmile.desk.CsvText;
import org.measuredmile.publication.chart.ControlPlot;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.Trials;

/// Makes the page of the control bike and its table as delimited text.
public final class ControlCharts {
    static final String PATH = "/standings/control";

    private static final double WIDE = 760;
    private static final double NARROW = 352;

    private final Archive archive;
    private final Printing printing;
    private final ControlDays days;

    public ControlCharts(Archive archive, Printing printing) {
        this.archive = archive;
        this.printing = printing;
        this.days = new ControlDays(archive);
    }

    /// What is asked for: a bike, a figure and its variant as text, each empty for the first there is.
    public record Wish(String bike, String figure, String variant) {}

    /// The bike asked for, or the one of the most days; empty where no bike was ridden on two.
    public Optional<BikeEntry> bike(Wish wish) {
        return wish.bike().isEmpty()
                ? ControlDays.mostRidden(archive).flatMap(archive::bike)
                : archive.bike(wish.bike());
    }

    private Optional<FigureKey> key(Map<FigureKey, Integer> keys, Wish wish) {
        var usual = keys.entrySet().stream()
                .max(Map.Entry.<FigureKey, Integer>comparingByValue().thenComparing(entry -> isPrimary(entry.getKey())))
                .map(Map.Entry::getKey);
        return keys.keySet().stream()
                .filter(key -> key.figure().equals(wish.figure()))
                .filter(key -> key.variant().text().equals(wish.variant()))
                .findFirst()
                .or(() -> wish.figure().isEmpty() ? usual : Optional.empty());
    }

    private static boolean isPrimary(FigureKey key) {
        return Trials.delivering(key.figure())
                .orElseThrow()
                .declaration()
                .requireFigure(key.figure())
                .primary();
    }

    public ControlView view(Wish wish) {
        var bike = bike(wish);
        if (bike.isEmpty()) {
            return new ControlView("", "", List.of(), List.of(), List.of());
        }
        String id = bike.get().id();
        var keys = days.keys(id);
        var chosen = key(keys, wish);
        var figures = new ArrayList<StandingsView.Choice>();
        keys.forEach((key, count) -> figures.add(new StandingsView.Choice(
                words(key) + ", " + Printing.count(count, "day", "days"),
                path(id, key),
                chosen.filter(key::equals).isPresent())));
        return new ControlView(
                bike.get().title(),
                Paths.bike(id),
                ControlDays.candidates(archive).stream()
                        .map(one -> new StandingsView.Choice(
                                one.title() + ", " + Printing.count(one.days().size(), "day", "days"),
                                PATH + "?bike=" + Paths.piece(one.id()),
                                one.id().equals(id)))
                        .toList(),
                figures,
                chosen.flatMap(key -> days.of(id, key)).map(this::chart).stream()
                        .toList());
    }

    private static String words(FigureKey key) {
        var trial = Trials.delivering(key.figure()).orElseThrow().declaration();
        String condition = trial.words(key.variant());
        String title = Printing.capital(trial.requireFigure(key.figure()).title());
        return condition.isEmpty() ? title : title + ", " + condition;
    }

    private static String path(String bike, FigureKey key) {
        return PATH + query(bike, key);
    }

    private static String query(String bike, FigureKey key) {
        return "?bike=" + Paths.piece(bike) + "&figure=" + Paths.piece(key.figure()) + "&variant="
                + Paths.piece(key.variant().text());
    }

    private ControlView.Chart chart(Charted charted) {
        var kind = charted.spec().kind();
        var chart = charted.chart();
        var plot = new ControlPlot(
                printing.scale(kind),
                "Difference from the mean",
                chart.limits().map(ControlChart.Limits::interval),
                chart.points().stream().map(ControlCharts::day).toList());
        String signals = ControlWords.signals(charted, Printing::shortDay);
        String sentence =
                charted.spec().title() + " day by day: " + chart.days().size() + " days, "
                        + (signals.isEmpty() ? "none calls for a look" : "to be looked at " + signals);
        return new ControlView.Chart(
                Printing.capital(charted.spec().title()),
                Trials.delivering(charted.key().figure())
                        .orElseThrow()
                        .declaration()
                        .words(charted.key().variant()),
                Printing.capital(ControlWords.limits(charted, printing.printer())) + ".",
                ControlWords.betweenDays(charted, printing.printer()),
                plot.svg(WIDE, sentence),
                plot.svg(NARROW, sentence),
                signals,
                chart.points().reversed().stream()
                        .map(point -> row(point, charted))
                        .toList(),
                ControlWords.components(charted, printing.printer()).stream()
                        .map(String::strip)
                        .map(Printing::capital)
                        .toList(),
                others(charted),
                PATH + "/csv" + query(charted.bike(), charted.key()));
    }

    private static ControlPlot.Day day(ControlChart.Point point) {
        String signal =
                point.signals().isEmpty() ? "" : point.signals().getFirst().words();
        String date = Printing.shortDay(point.day().date());
        return new ControlPlot.Day(
                date.substring(0, date.lastIndexOf(' ')),
                point.difference(),
                point.own95(),
                signal,
                point.reconfigured());
    }

    private ControlView.Row row(ControlChart.Point point, Charted charted) {
        return new ControlView.Row(
                Printing.shortDay(point.day().date()),
                Paths.day(point.day().day()),
                point.day().tester(),
                ControlWords.difference(point, charted.spec().kind(), printing.printer()),
                ControlWords.remark(point));
    }

    private List<ControlView.Other> others(Charted charted) {
        var titles = new TreeMap<String, String>();
        archive.bikes().forEach(bike -> titles.put(bike.id(), bike.title()));
        var kind = charted.spec().kind();
        return charted.others().stream()
                .sorted(java.util.Comparator.comparingDouble(AgainstControl::value))
                .map(other -> {
                    double half = other.interval95().halfWidth();
                    String first = printing.printer()
                            .difference(other.value(), half, kind)
                            .text();
                    String second = printing.printer()
                            .other()
                            .difference(other.value(), half, kind)
                            .text();
                    return new ControlView.Other(
                            titles.getOrDefault(other.bike(), other.bike()),
                            Paths.bike(other.bike()),
                            first,
                            first.equals(second) ? "" : second,
                            other.interval95().contains(0) ? "can’t be told apart" : "told apart");
                })
                .toList();
    }

    /// The days as delimited text: a line a day, SI units, every digit; empty where nothing is there to
    /// chart.
    public Optional<String> csv(Wish wish) {
        return bike(wish)
                .map(BikeEntry::id)
                .flatMap(id -> key(days.keys(id), wish).flatMap(key -> days.of(id, key)))
                .map(ControlCharts::csv);
    }

    private static String csv(Charted charted) {
        var out = new CsvText()
                .line(
                        "day",
                        "date",
                        "bike",
                        "figure",
                        "variant",
                        "tester",
                        "value",
                        "unit",
                        "difference",
                        "own-low",
                        "own-high",
                        "limit-low",
                        "limit-high",
                        "configuration-changed",
                        "signals");
        var limits = charted.chart().limits().map(ControlChart.Limits::interval);
        for (var point : charted.chart().points()) {
            out.line(
                    point.day().day(),
                    point.day().date().toString(),
                    charted.bike(),
                    charted.key().figure(),
                    charted.key().variant().text(),
                    point.day().tester(),
                    CsvText.number(point.day().value()),
                    charted.spec().kind().si().symbol(),
                    CsvText.number(point.difference()),
                    CsvText.number(point.own95().low()),
                    CsvText.number(point.own95().high()),
                    limits.map(one -> CsvText.number(one.low())).orElse(""),
                    limits.map(one -> CsvText.number(one.high())).orElse(""),
                    point.reconfigured() ? "yes" : "no",
                    ControlWords.remark(point));
        }
        return out.text();
    }
}
