package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.measuredmile.publication.chart.BudgetBars;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.Trials;

/// Tells where each figure of a test day comes from; a run's plot is drawn once a page, at the first figure it made.
final class Origins {
    private final Printing printing;
    private final String dayId;
    private final DayReduction.Result.Reduced reduced;
    private final Set<String> drawn = new HashSet<>();

    Origins(Printing printing, String dayId, DayReduction.Result.Reduced reduced) {
        this.printing = printing;
        this.dayId = dayId;
        this.reduced = reduced;
    }

    OriginView of(Figure figure) {
        var bars = new BudgetBars(printing.scale(figure.kind()), figure.budget());
        return new OriginView(
                summary(figure),
                steps(figure),
                runs(figure),
                trace(figure),
                FindingView.of(figure.findings()),
                figure.budget().isEmpty() ? "" : bars.svg(520),
                figure.budget().isEmpty() ? "" : bars.svg(330),
                covers(figure),
                figure.narrows().stream().map(one -> narrowing(figure, one)).toList(),
                figure.assumed().stream().map(Printing::capital).toList(),
                figure.used().stream().map(Origins::used).toList(),
                figure.inputs().stream().map(Origins::input).toList());
    }

    private static String summary(Figure figure) {
        long recordings = figure.inputs().stream()
                .filter(one -> one.kind().equals("recording"))
                .count();
        String runs = Printing.count(figure.runs().size(), "run", "runs");
        return "Origin: " + runs
                + (recordings == 0
                        ? ", written readings"
                        : ", " + Printing.count(recordings, "recording", "recordings"));
    }

    private List<OriginView.Step> steps(Figure figure) {
        return List.of(
                new OriginView.Step("Instruments", instruments(figure)),
                new OriginView.Step("Recordings", recordings(figure)),
                new OriginView.Step("Runs", runLines(figure)),
                new OriginView.Step("Reduction", reduction(figure)),
                new OriginView.Step(
                        "Figure",
                        List.of(
                                printing.anyDay(figure).text(),
                                "this day " + printing.thisDay(figure).text(),
                                "any day: 95 % with " + degrees(figure.anyDay()))));
    }

    private List<String> instruments(Figure figure) {
        TestDay day = reduced.day();
        var runs = figure.runs().stream().map(Figure.FigureRun::run).toList();
        var named = Stream.concat(
                        day.readings().stream()
                                .filter(reading -> runs.contains(reading.run()))
                                .map(reading -> reading.instrument()),
                        day.recordings().stream()
                                .filter(entry -> entry.runs().stream().anyMatch(runs::contains))
                                .map(entry -> entry.instrument()))
                .filter(id -> !id.isEmpty())
                .distinct()
                .flatMap(id -> day.instrument(id).stream())
                .map(Origins::instrument)
                .toList();
        return named.isEmpty() ? List.of("none named; the usual ones taken") : named;
    }

    private static String instrument(Instrument one) {
        return one.id() + ", " + one.kind().id().replace('-', ' ')
                + one.calibration()
                        .flatMap(Instrument.Calibration::date)
                        .map(date -> ", calibrated " + Printing.shortDay(date))
                        .orElse("");
    }

    private static List<String> recordings(Figure figure) {
        var lines = new ArrayList<String>();
        for (var input : figure.inputs()) {
            if (input.kind().equals("recording") || input.kind().equals("readings")) {
                lines.add(input.name() + " " + Printing.hash(input.sha256()));
            }
        }
        return lines.isEmpty() ? List.of("none") : lines;
    }

    private static List<String> runLines(Figure figure) {
        var lines = new ArrayList<String>();
        lines.add(figure.counted() + " of " + figure.runs().size() + " count");
        figure.runs().stream()
                .filter(run -> !run.counted())
                .limit(3)
                .forEach(run -> lines.add(run.run() + ": " + RunWords.reason(run.reason())));
        return lines;
    }

    private static List<String> reduction(Figure figure) {
        String title = Trials.find(figure.trial())
                .map(trial -> trial.declaration().title())
                .orElse(figure.trial());
        var lines = new ArrayList<String>();
        lines.add(title + ", version " + figure.version());
        figure.inputs().stream()
                .filter(one -> one.kind().equals("scatter"))
                .forEach(one -> lines.add("scatter of " + one.name()));
        return lines;
    }

    private List<OriginView.RunRow> runs(Figure figure) {
        return figure.runs().stream()
                .map(run -> new OriginView.RunRow(
                        run.run(),
                        Paths.run(dayId, run.run()),
                        RunWords.state(run.state(), run.counted()),
                        run.counted(),
                        ownValue(figure, run.value()),
                        RunWords.reason(run.reason())))
                .toList();
    }

    /// A run's own value, to the digits that its figure's this-day interval warrants.
    private String ownValue(Figure figure, OptionalDouble value) {
        if (value.isEmpty()) {
            return "";
        }
        var printed = printing.printer()
                .figure(value.getAsDouble(), figure.thisDay().interval95().halfWidth(), figure.kind());
        return printed.value() + (printed.unit().isEmpty() ? "" : "\u00a0" + printed.unit());
    }

    private Optional<OriginView.TraceView> trace(Figure figure) {
        Optional<Outcome> outcome = Optional.ofNullable(reduced.outcomes().get(figure.trial()));
        var made = figure.runs().stream()
                .filter(Figure.FigureRun::counted)
                .map(Figure.FigureRun::run)
                .toList();
        return outcome.stream()
                .flatMap(one -> one.runs().stream())
                .filter(run -> made.contains(run.run()))
                .filter(run -> run.trace().filter(Traces::canDraw).isPresent())
                .findFirst()
                .filter(run -> drawn.add(figure.trial() + " " + run.run()))
                .map(run -> draw(run));
    }

    private OriginView.TraceView draw(RunResult run) {
        return Traces.of(run, run.trace().orElseThrow(), new Traces.Place(printing, dayId));
    }

    private String covers(Figure figure) {
        return "The whole is the standard uncertainty of the any-day interval, "
                + degrees(figure.anyDay()) + ". These runs alone: "
                + printing.thisDay(figure).text() + ", "
                + degrees(figure.thisDay()) + ".";
    }

    private static String degrees(Uncertainty uncertainty) {
        double degrees = uncertainty.degreesOfFreedom();
        return degrees > 1000
                ? "no limit of degrees of freedom"
                : String.format(java.util.Locale.ROOT, "%.1f degrees of freedom", degrees);
    }

    private String narrowing(Figure figure, Figure.Narrowing one) {
        var then = printing.printer().figure(figure.value(), one.intervalThen().halfWidth(), figure.kind());
        return Printing.capital(one.what()) + ": then ± " + then.plusMinus()
                + (then.unit().isEmpty() ? "" : "\u00a0" + then.unit());
    }

    private static String used(Figure.Used used) {
        return used.key().text() + ", " + Printing.hash(used.sha256());
    }

    private static OriginView.Input input(Figure.InputHash one) {
        boolean hasBytes = !one.kind().equals("scatter") && !one.kind().equals("trial");
        return new OriginView.Input(
                one.kind(),
                one.name(),
                one.sha256(),
                Printing.hash(one.sha256()),
                hasBytes ? Paths.content(one.sha256(), one.name()) : "");
    }
}
