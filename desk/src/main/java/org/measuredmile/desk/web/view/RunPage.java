package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.measuredmile.desk.web.edit.Windows;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.Trials;

/// Makes the page of a run.
public final class RunPage {
    private final Printing printing;
    private final String dayId;
    private final DayReduction.Result.Reduced reduced;
    private final Declaration trial;
    private final Outcome outcome;
    private final RunResult run;

    private RunPage(Printing printing, String dayId, DayReduction.Result.Reduced reduced, Found found) {
        this.printing = printing;
        this.dayId = dayId;
        this.reduced = reduced;
        this.trial = found.trial();
        this.outcome = found.outcome();
        this.run = found.run();
    }

    /// A run of a day, and whose it is.
    public record Found(Declaration trial, Outcome outcome, RunResult run) {}

    /// The run of an id, of whichever trial.
    public static Optional<Found> find(DayReduction.Result.Reduced reduced, String id) {
        for (Map.Entry<String, Outcome> entry : reduced.outcomes().entrySet()) {
            var trial = Trials.find(entry.getKey());
            var run = entry.getValue().runs().stream()
                    .filter(one -> one.run().equals(id))
                    .findFirst();
            if (trial.isPresent() && run.isPresent()) {
                return Optional.of(new Found(trial.get().declaration(), entry.getValue(), run.get()));
            }
        }
        return Optional.empty();
    }

    public static RunView view(Printing printing, String dayId, DayReduction.Result.Reduced reduced, Found found) {
        return new RunPage(printing, dayId, reduced, found).view();
    }

    private RunView view() {
        return new RunView(
                trial.title() + ", run " + run.run(),
                Paths.run(dayId, run.run()),
                facts(),
                validity(),
                run.trace()
                        .filter(Traces::canDraw)
                        .map(trace -> Traces.of(run, trace, new Traces.Place(printing, dayId))),
                run.values().stream()
                        .map(value -> new RunView.ValueRow(Printing.capital(value.title()), printing.value(value)))
                        .toList(),
                readings(),
                FindingView.of(findings()),
                outcome.runs().stream().map(this::fellow).toList(),
                trial.causes().stream()
                        .map(cause -> new RunView.Choice(cause.code(), Printing.capital(cause.words())))
                        .toList(),
                ends(),
                sum());
    }

    private RunView.Ends ends() {
        var ends = Windows.of(reduced.day(), run);
        var recordings = reduced.recordings().entrySet().stream()
                .filter(one -> one.getValue() instanceof Decoding.Decoded)
                .map(one -> new RunView.Choice(one.getKey(), one.getKey()))
                .toList();
        return new RunView.Ends(
                recordings,
                ends.map(RunResult.Stretch::recording).orElse(""),
                ends.map(one -> seconds(one.fromS())).orElse(""),
                ends.map(one -> seconds(one.toS())).orElse(""));
    }

    private static String seconds(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }

    private List<BikeView.Fact> facts() {
        TestDay day = reduced.day();
        var facts = new ArrayList<BikeView.Fact>();
        facts.add(new BikeView.Fact("Bike", reduced.bike().title()));
        facts.add(new BikeView.Fact("Test day", Printing.day(day.date())));
        add(facts, "How", trial.words(run.variant()));
        add(facts, "Way", run.direction());
        written().ifPresent(one -> {
            add(
                    facts,
                    "Started",
                    one.start()
                            .map(at -> Printing.clock(at, day.timeZone()) + "\u00a0"
                                    + Printing.zoneName(at, day.timeZone()))
                            .orElse(""));
            day.rider(one.rider())
                    .ifPresent(rider -> add(
                            facts,
                            "Rider",
                            rider.code()
                                    + (rider.massAsRiddenKg().isEmpty()
                                            ? ""
                                            : ", " + printing.condition(rider.massAsRiddenKg(), QuantityKind.MASS, 0)
                                                    + " with gear")));
            add(facts, "Note", one.note());
        });
        run.stretch()
                .ifPresent(stretch -> add(
                        facts,
                        "Recording",
                        stretch.recording()
                                + String.format(Locale.ROOT, ", %.1f to %.1f\u00a0s", stretch.fromS(), stretch.toS())));
        add(facts, "Reduced by", trial.title() + ", version " + trial.version());
        return facts;
    }

    private static void add(List<BikeView.Fact> facts, String name, String words) {
        if (!words.isBlank()) {
            facts.add(new BikeView.Fact(name, words));
        }
    }

    private Optional<Run> written() {
        return reduced.day().runs().stream()
                .filter(one -> one.id().equals(run.run()))
                .findFirst();
    }

    private RunView.Validity validity() {
        String word = Printing.capital(RunWords.state(run.state(), run.counted()));
        String reason = Printing.capital(RunWords.reason(run.reason()));
        String sentence = run.counted() ? "Every limit is kept; it counts." : reason + (reason.isEmpty() ? "" : ".");
        boolean proposed = run.state() == Run.State.PROPOSED;
        return new RunView.Validity(
                RunWords.mark(run.state(), run.counted()),
                word,
                proposed ? "Found in the recording; nobody has decided on it yet. " + sentence : sentence,
                proposed,
                run.state() == Run.State.VOID);
    }

    private List<RunView.ReadingRow> readings() {
        return reduced.day().readings().stream()
                .filter(reading -> reading.run().equals(run.run()))
                .map(reading -> new RunView.ReadingRow(
                        Printing.capital(trial.reading(reading.name())
                                .map(ReadingSpec::title)
                                .orElse(reading.name())),
                        reading.written(),
                        reading.by(),
                        reading.place().text()))
                .toList();
    }

    private List<Finding> findings() {
        return outcome.findings().stream().filter(this::isAboutThis).toList();
    }

    /// Whether a finding names this run, or its recording without naming any run or time in it.
    private boolean isAboutThis(Finding finding) {
        if (finding.message().matches("(?s).*\\b[Rr]un " + Pattern.quote(run.run()) + "(?![\\w-]).*")) {
            return true;
        }
        boolean isOfRecording = run.stretch()
                .filter(stretch -> finding.place().source().equals(stretch.recording()))
                .isPresent();
        return isOfRecording
                && !finding.place().where().endsWith(" s")
                && !finding.message().matches("(?s)[Rr]un .*");
    }

    private DayView.Tick fellow(RunResult one) {
        return new DayView.Tick(
                one.run(),
                Paths.run(dayId, one.run()),
                RunWords.state(one.state(), one.counted()),
                one.run().equals(run.run()) ? "now" : one.counted() ? "" : "struck");
    }

    private RunView.Line sum() {
        var lines = outcome.figures().stream()
                .filter(figure ->
                        figure.runs().stream().anyMatch(one -> one.run().equals(run.run())))
                .map(figure -> new DayView.Line(
                        Printing.capital(
                                trial.requireFigure(figure.key().figure()).title()),
                        trial.words(figure.key().variant()),
                        printing.thisDay(figure),
                        "any day " + printing.anyDay(figure).text(),
                        figure.counted() + " of " + Printing.count(figure.runs().size(), "run", "runs")))
                .toList();
        return new RunView.Line(trial.title(), Paths.trial(dayId, trial.id()), lines);
    }
}
