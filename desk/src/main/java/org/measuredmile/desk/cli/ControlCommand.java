package org.measuredmile.desk.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.control.AgainstControl;
import org.measuredmile.desk.ControlDays;
import org.measuredmile.desk.ControlDays.Charted;
import org.measuredmile.desk.ControlWords;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.Trials;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/// `mile control [BIKE] [FIGURE]`: what days and testers do to the figures of a bike that is ridden again
/// and again.
@Command(
        name = "control",
        description = "Show the control bike day by day, with limits, and how much days and testers differ.",
        mixinStandardHelpOptions = true)
final class ControlCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Parameters(
            arity = "0..2",
            paramLabel = "[BIKE] [FIGURE]",
            description = "the control bike's id (default: the bike of the most test days) and a figure's id "
                    + "(default: a line for each figure of two days and more)")
    private List<String> asked = List.of();

    @Override
    public Integer call() {
        try (var archive = chosen.open()) {
            String figure = figure();
            String bike = bike(archive);
            var days = new ControlDays(archive);
            var charts = charts(days, bike, figure);
            if (shown.asJson()) {
                shown.json(Json.array(charts, ControlJson::write));
            } else if (figure.isEmpty()) {
                overview(bike, charts);
            } else {
                charts.forEach(this::print);
            }
            boolean calls =
                    charts.stream().anyMatch(one -> !one.chart().signals().isEmpty());
            return charts.isEmpty() || calls ? Mile.DATA_SAY_NO : Mile.DONE;
        }
    }

    private String figure() {
        return asked.stream()
                .filter(word -> Trials.delivering(word).isPresent())
                .findFirst()
                .orElse("");
    }

    private String bike(Archive archive) {
        var named =
                asked.stream().filter(word -> Trials.delivering(word).isEmpty()).toList();
        if (named.size() > 1) {
            throw new Trouble("\"" + named.get(1) + "\" is no figure; give one as `mile reduce --json` names it");
        }
        if (named.isEmpty()) {
            return ControlDays.mostRidden(archive)
                    .orElseThrow(() -> new Trouble("no bike was ridden on two test days: there is no control bike yet; "
                            + "ride one bike again on every test day"));
        }
        String bike = named.getFirst();
        return archive.bike(bike)
                .orElseThrow(() -> new Trouble("\"" + bike + "\" is neither a bike of this archive nor a figure"))
                .id();
    }

    private static List<Charted> charts(ControlDays days, String bike, String figure) {
        var charts = new ArrayList<Charted>();
        for (FigureKey key : days.keys(bike).keySet()) {
            if (figure.isEmpty() || key.figure().equals(figure)) {
                days.of(bike, key).ifPresent(charts::add);
            }
        }
        return charts;
    }

    private void overview(String bike, List<Charted> charts) {
        shown.line(bike + ", ridden again and again; a day's difference is told from its runs alone");
        var table = new Table("figure", "days", "mean", "between days", "to look at");
        for (var one : charts) {
            var chart = one.chart();
            String mean = one.chart()
                    .betweenDays()
                    .map(found -> shown.printer()
                            .figure(
                                    found.mean(),
                                    1.96 * found.standardUncertainty(),
                                    one.spec().kind())
                            .text())
                    .orElse("");
            table.row(
                    one.key().text(),
                    Integer.toString(chart.days().size()),
                    mean,
                    ControlWords.betweenDays(one, shown.printer()),
                    chart.signals().isEmpty() ? "" : chart.signals().size() + " of them");
        }
        table.lines().forEach(shown::line);
    }

    private void print(Charted charted) {
        var chart = charted.chart();
        var trial = Trials.delivering(charted.key().figure()).orElseThrow().declaration();
        shown.line(charted.bike() + ": " + charted.spec().title() + ", "
                + trial.words(charted.key().variant()));
        shown.line(ControlWords.limits(charted, shown.printer()));
        var table = new Table("date", "tester", "from the mean", "");
        for (var point : chart.points()) {
            table.row(
                    point.day().date().toString(),
                    point.day().tester(),
                    ControlWords.difference(point, charted.spec().kind(), shown.printer()),
                    ControlWords.remark(point));
        }
        table.lines().forEach(shown::line);
        ControlWords.components(charted, shown.printer()).forEach(shown::line);
        others(charted);
        shown.line("");
    }

    private void others(Charted charted) {
        if (charted.others().isEmpty()) {
            return;
        }
        shown.line("less the control bike, with what the days did taken out:");
        var table = new Table("bike", "difference", "");
        for (AgainstControl other : charted.others()) {
            table.row(
                    other.bike(),
                    shown.printer()
                            .difference(
                                    other.value(),
                                    other.interval95().halfWidth(),
                                    charted.spec().kind())
                            .text(),
                    other.interval95().contains(0) ? "can't be told apart" : "");
        }
        table.lines().forEach(shown::line);
    }
}
