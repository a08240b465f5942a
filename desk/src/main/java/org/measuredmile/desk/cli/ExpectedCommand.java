package org.measuredmile.desk.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.expected.Expectation;
import org.measuredmile.comparison.expected.ExpectedLine;
import org.measuredmile.comparison.expected.Fitting;
import org.measuredmile.comparison.expected.JudgedBike;
import org.measuredmile.comparison.expected.Lines;
import org.measuredmile.desk.ExpectedWords;
import org.measuredmile.desk.TestedBikes;
import org.measuredmile.trial.Trials;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/// `mile expected LINE`: what is to be expected of a bike for what it carries, and which bikes do
/// otherwise.
@Command(
        name = "expected",
        description =
                "Show an expected-value line: a figure against what a bike carries, with a band for a further bike.",
        mixinStandardHelpOptions = true)
final class ExpectedCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "LINE",
            description = "which line; without it the lines there are")
    private @Nullable String id;

    @Override
    public Integer call() {
        if (id == null) {
            return list();
        }
        String asked = id;
        var line = Lines.of(asked).orElseThrow(() -> unknown(asked));
        try (var archive = chosen.open()) {
            var expectation = Fitting.of(line, TestedBikes.all(archive));
            if (shown.asJson()) {
                shown.json(Json.array().add(ExpectedJson.write(expectation)));
            } else {
                print(expectation);
            }
            return expectation instanceof Expectation.Fitted ? Mile.DONE : Mile.DATA_SAY_NO;
        }
    }

    private static Trouble unknown(String asked) {
        return new Trouble("\"" + asked + "\" is no line; give one of "
                + Lines.ALL.stream().map(ExpectedLine::id).collect(Collectors.joining(", ")));
    }

    private int list() {
        if (shown.asJson()) {
            shown.json(Json.array(Lines.ALL, ExpectedJson::declaration));
        } else {
            var table = new Table("line", "figure", "against");
            Lines.ALL.forEach(line ->
                    table.row(line.id(), line.figure().id(), line.across().words()));
            table.lines().forEach(shown::line);
        }
        return Mile.DONE;
    }

    private void print(Expectation expectation) {
        var line = expectation.line();
        var trial = Trials.delivering(line.figure().id()).orElseThrow().declaration();
        shown.line(line.title() + ": " + line.figure().title() + ", " + trial.words(expectation.variant())
                + ", against " + line.across().words());
        switch (expectation) {
            case Expectation.Fitted fitted -> fitted(fitted);
            case Expectation.NoLine none -> shown.line("no line: " + none.why());
        }
        var reasons = new LinkedHashMap<String, List<String>>();
        expectation
                .leftOut()
                .forEach(one -> reasons.computeIfAbsent(one.reason(), reason -> new ArrayList<>())
                        .add(one.title()));
        reasons.forEach((reason, bikes) -> shown.line("not on it: " + bikes.size() + " (" + reason + ")"));
    }

    private void fitted(Expectation.Fitted fitted) {
        var line = fitted.line();
        shown.line(ExpectedWords.slope(fitted, shown.printer()));
        shown.line(ExpectedWords.band(fitted));
        shown.findings("", fitted.findings());
        var table = new Table(line.across().words(), "bike", "result", "expected", "");
        for (var bike : fitted.bikes()) {
            table.row(
                    ExpectedWords.across(bike.across(), line.across().kind(), shown.printer()),
                    bike.title(),
                    shown.printer()
                            .figure(
                                    bike.value(),
                                    bike.interval95().halfWidth(),
                                    line.figure().kind())
                            .text(),
                    shown.printer()
                            .figure(
                                    bike.expected(),
                                    bike.band().halfWidth(),
                                    line.figure().kind())
                            .text(),
                    bike.place() == JudgedBike.Place.INSIDE ? "" : ExpectedWords.place(bike));
        }
        table.lines().forEach(shown::line);
    }
}
