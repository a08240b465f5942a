package org.measuredmile.desk.cli;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.Trials;

/// A reduced day as text for people: each trial's figures, runs with their reasons, findings, and what would narrow.
final class DayText {
    private final Shown shown;

    DayText(Shown shown) {
        this.shown = shown;
    }

    void print(DayReduction.Result.Reduced reduced) {
        var day = reduced.day();
        shown.line(reduced.bike().title() + ", " + day.date() + (day.place().isEmpty() ? "" : ", " + day.place()));
        configuration(day);
        for (var trial : Trials.ALL) {
            var outcome = reduced.outcomes().get(trial.declaration().id());
            if (outcome != null) {
                print(reduced.day(), trial.declaration(), outcome);
            }
        }
        for (var notRidden : day.notRidden()) {
            shown.line("");
            shown.line("not ridden: "
                    + (notRidden.trial() + " " + notRidden.variant().text()).strip() + ": " + notRidden.reason());
        }
        recordings(reduced);
        if (!reduced.findings().isEmpty()) {
            shown.line("");
            shown.line("The day's files");
            shown.findings("  ", reduced.findings());
        }
        if (reduced.figures().isEmpty()) {
            shown.line("");
            shown.line("No figure comes of this day.");
        }
    }

    /// What became of each file in recordings/, with all but the notes; `mile inspect` tells those.
    private void recordings(DayReduction.Result.Reduced reduced) {
        if (reduced.recordings().isEmpty()) {
            return;
        }
        shown.line("");
        shown.line("Recordings");
        reduced.recordings().forEach((name, decoding) -> {
            shown.line("  " + name + ": "
                    + switch (decoding) {
                        case Decoding.Decoded(var recording) ->
                            recording.format().title() + ", " + recording.samples() + " samples, "
                                    + shown.time(recording.spanS());
                        case Decoding.Refused _ -> "could not be read";
                    });
            shown.findings(
                    "    ",
                    DayReduction.findingsOf(decoding).stream()
                            .filter(finding -> finding.level() != Finding.Level.NOTE)
                            .toList());
        });
    }

    private void configuration(TestDay day) {
        var set = day.configuration();
        var parts = List.of(
                        named("firmware", set.firmware()),
                        named("battery", set.battery()),
                        named("tyres", set.tyres()),
                        named("with", String.join(", ", set.accessories())))
                .stream()
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining("; "));
        if (!parts.isEmpty()) {
            shown.line(parts);
        }
    }

    private static String named(String name, String value) {
        return value.isBlank() ? "" : name + " " + value;
    }

    private void print(TestDay day, Declaration trial, Outcome outcome) {
        shown.line("");
        shown.line(trial.title() + " (" + trial.id() + " " + trial.version() + ")");
        if (trial.isReadOnce()) {
            readings(day, trial);
        }
        outcome.figures().forEach(figure -> print(trial, figure));
        runs(day, outcome.runs());
        shown.findings("  ", outcome.findings());
    }

    /// The readings of a trial that gives no figures, as they were written.
    private void readings(TestDay day, Declaration trial) {
        day.readings().stream()
                .filter(one -> one.run().isEmpty())
                .forEach(one -> trial.reading(one.name())
                        .ifPresent(spec -> shown.line("  " + spec.title() + ": " + one.written())));
    }

    private void print(Declaration trial, Figure figure) {
        String title = trial.figure(figure.key().figure())
                .map(spec -> spec.title())
                .orElse(figure.key().figure());
        String variant = trial.words(figure.key().variant());
        shown.line("  " + title + (variant.isEmpty() ? "" : ", " + variant));
        var thisDay = shown.printer()
                .figureInBoth(figure.value(), figure.thisDay().interval95().halfWidth(), figure.kind());
        var anyDay = shown.printer()
                .figureInBoth(figure.value(), figure.anyDay().interval95().halfWidth(), figure.kind());
        var table = new Table("    ", "", "", "");
        table.row("    this day", thisDay.first().text(), other(thisDay), counted(figure));
        table.row("    any day", anyDay.first().text(), other(anyDay), "");
        table.lines().stream().skip(1).forEach(shown::line);
        budget(figure);
        for (var narrowing : figure.narrows()) {
            double halfWidth = narrowing.intervalThen().halfWidth();
            shown.line("    would narrow: " + narrowing.what() + ", any day then ± "
                    + shown.printer()
                            .figure(figure.value(), halfWidth, figure.kind())
                            .plusMinus());
        }
        figure.assumed().forEach(assumed -> shown.line("    assumed: " + assumed));
        shown.findings("    ", figure.findings());
    }

    private static String other(org.measuredmile.quantity.QuantityPrinter.InBoth both) {
        return both.first().equals(both.other()) ? "" : both.other().text();
    }

    /// How many runs count, and the plain scatter of their values.
    private String counted(Figure figure) {
        if (figure.runs().isEmpty()) {
            return "";
        }
        String counted = "n = " + figure.counted() + " of " + figure.runs().size();
        var scatter = figure.scatterOfRuns();
        return scatter.isEmpty() ? counted : counted + ", s = " + shown.deviation(scatter.getAsDouble(), figure.kind());
    }

    /// The three heaviest contributions to the any-day interval.
    private void budget(Figure figure) {
        var budget = new Budget(figure.budget());
        String heaviest = budget.byWeight().stream()
                .limit(3)
                .filter(one -> budget.share(one) >= 0.005)
                .map(one -> one.input() + String.format(Locale.ROOT, " %.0f %%", 100 * budget.share(one)))
                .collect(Collectors.joining(", "));
        if (!heaviest.isEmpty()) {
            shown.line("    made of: " + heaviest);
        }
    }

    private void runs(TestDay day, List<RunResult> runs) {
        if (runs.isEmpty()) {
            return;
        }
        var table = new Table("  run", "", "", "counts", "lies in", "result");
        for (var run : runs) {
            String verdict = run.counted() ? "yes" : "no";
            table.row(
                    "  " + run.run(),
                    run.state().name().toLowerCase(Locale.ROOT),
                    run.direction(),
                    verdict,
                    place(day, run),
                    (values(run) + (run.reason().isEmpty() ? "" : "  " + run.reason())).strip());
        }
        table.lines().forEach(shown::line);
    }

    /// Where a run lies, and whether a person set its ends.
    private static String place(TestDay day, RunResult run) {
        return run.stretch()
                .map(stretch -> String.format(
                                Locale.ROOT, "%s %.2f to %.2f s", stretch.recording(), stretch.fromS(), stretch.toS())
                        + (day.recording(stretch.recording())
                                        .flatMap(entry -> entry.window(run.run()))
                                        .isPresent()
                                ? ", set"
                                : ""))
                .orElse("");
    }

    private String values(RunResult run) {
        return run.values().stream()
                .map(value -> value.title() + " "
                        + number(value.value(), OptionalDouble.of(value.standardUncertainty()), value.kind()))
                .collect(Collectors.joining(", "));
    }

    private String number(double value, OptionalDouble standardUncertainty, QuantityKind kind) {
        // The half-width of the 95 % interval that a normal error of this size has.
        return shown.printer()
                .figure(value, 1.96 * standardUncertainty.orElse(0), kind)
                .text();
    }
}
