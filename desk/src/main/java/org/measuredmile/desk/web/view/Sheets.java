package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.desk.web.edit.Runs;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.desk.web.edit.TypedReading;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Limit;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.VariantKey;

/// Makes the form of a trial on a test day out of the trial's declaration.
public final class Sheets {
    private final Printing printing;
    private final String dayId;
    private final DayReduction.Result.Reduced reduced;
    private final Declaration trial;
    private final Typed typed;
    private final Telling telling;

    public Sheets(
            Printing printing, String dayId, DayReduction.Result.Reduced reduced, Declaration trial, Typed typed) {
        this.printing = printing;
        this.dayId = dayId;
        this.reduced = reduced;
        this.trial = trial;
        this.typed = typed;
        this.telling = new Telling(printing, trial, reduced.day(), typed);
    }

    /// @param kept the run that was just kept; empty text for none
    public SheetView view(String kept) {
        Outcome outcome =
                Optional.ofNullable(reduced.outcomes().get(trial.id())).orElse(Outcome.NOTHING);
        return new SheetView(
                trial.title(),
                reduced.bike().title(),
                Paths.day(dayId),
                Paths.trial(dayId, trial.id()),
                Runs.nextId(reduced, trial.id()),
                trial.variants().stream()
                        .filter(VariantKey::asked)
                        .map(this::choice)
                        .toList(),
                trial.runs().bothDirections(),
                way(outcome),
                fields(ReadingSpec.Scope.RUN),
                trial.causes().stream()
                        .map(cause -> new RunView.Choice(cause.code(), Printing.capital(cause.words())))
                        .toList(),
                telling.told(),
                outcome.runs().stream().map(this::tick).toList(),
                count(outcome),
                countWords(outcome),
                soFar(outcome),
                outcome.runs().stream()
                        .filter(run -> run.run().equals(kept))
                        .findFirst()
                        .map(this::kept),
                fields(ReadingSpec.Scope.DAY),
                trial.cautions(),
                blockers(),
                trial.readings().stream().anyMatch(spec -> spec.kind() == QuantityKind.TIME),
                !trial.isReadOnce(),
                typed);
    }

    private SheetView.Choice choice(VariantKey key) {
        String field = "variant." + key.name();
        return new SheetView.Choice(
                field,
                Printing.capital(key.title()),
                key.values().stream()
                        .map(value -> new RunView.Choice(value.value(), Printing.capital(value.words())))
                        .toList(),
                typed.getOr(field, key.usual()),
                typed.fault(field));
    }

    /// The way of the next run: where they go both ways, the other than the last.
    private String way(Outcome outcome) {
        if (!typed.get("direction").isEmpty()) {
            return typed.get("direction");
        }
        return outcome.runs().isEmpty() || !outcome.runs().getLast().direction().equals("out") ? "out" : "back";
    }

    private List<SheetView.Field> fields(ReadingSpec.Scope scope) {
        return trial.readings().stream()
                .filter(spec -> spec.scope() == scope)
                .map(this::fieldOf)
                .toList();
    }

    /// The field in which a reading is typed.
    static String field(ReadingSpec spec) {
        return (spec.scope() == ReadingSpec.Scope.DAY ? "day." : "reading.") + spec.name();
    }

    private SheetView.Field fieldOf(ReadingSpec spec) {
        String name = field(spec);
        String value = typed.values().containsKey(name) ? typed.get(name) : ofDay(spec);
        String unit = spec.kind() == QuantityKind.WORD
                ? ""
                : spec.kind().shown(printing.system()).symbol();
        // Feet and inches and minutes and seconds need more than figures and a point.
        boolean isInParts = spec.kind() == QuantityKind.TIME || unit.equals("ft");
        return new SheetView.Field(
                name,
                Printing.capital(spec.title()),
                unit,
                hint(spec),
                spec.takenBy(),
                spec.required(),
                window(spec),
                value,
                telling.other(spec, value),
                typed.fault(name),
                spec.kind() == QuantityKind.WORD ? spec.choices() : List.of(),
                !isInParts && spec.kind() != QuantityKind.WORD,
                spec.when().text(),
                trial.words(spec.when()));
    }

    /// A time may always be told by frames; what they need behind them is shown.
    private String hint(ReadingSpec spec) {
        if (spec.kind() != QuantityKind.TIME) {
            return spec.hint();
        }
        String frames = "or frames 1203 to 1266" + TypedReading.behindFrames(reduced.day());
        return spec.hint().isEmpty() ? frames : spec.hint() + "; " + frames;
    }

    private String ofDay(ReadingSpec spec) {
        return spec.scope() == ReadingSpec.Scope.RUN
                ? ""
                : reduced.day().readings().stream()
                        .filter(one -> one.run().isEmpty() && one.name().equals(spec.name()))
                        .map(Reading::written)
                        .findFirst()
                        .orElse("");
    }

    /// What counts, in the crew's unit; the plausible range where no limit is set.
    private String window(ReadingSpec spec) {
        Variant chosen = telling.variant();
        return trial.limits().stream()
                .filter(limit -> limit.reading().equals(spec.name()) && chosen.covers(limit.when()))
                .findFirst()
                .map(limit -> "counts from " + range(spec.kind(), limit.allowed()))
                .orElse("");
    }

    private String range(QuantityKind kind, Interval si) {
        var unit = kind.shown(printing.system());
        return QuantityPrinter.in(unit, si.low(), 2).value() + " to "
                + QuantityPrinter.in(unit, si.high(), 2).text();
    }

    private DayView.Tick tick(RunResult run) {
        return new DayView.Tick(
                run.run(),
                Paths.run(dayId, run.run()),
                RunWords.state(run.state(), run.counted()),
                run.counted() ? "valid" : "struck");
    }

    private static long counted(Outcome outcome) {
        return outcome.runs().stream().filter(RunResult::counted).count();
    }

    /// How many runs count, out of those usual while there are fewer.
    private String count(Outcome outcome) {
        if (trial.isReadOnce()) {
            return Long.toString(read());
        }
        long counted = counted(outcome);
        return counted > trial.runs().usual()
                ? Long.toString(counted)
                : counted + " of " + trial.runs().usual();
    }

    private String countWords(Outcome outcome) {
        if (trial.isReadOnce()) {
            return "of " + trial.readings().size() + " read";
        }
        int usual = trial.runs().usual();
        return counted(outcome) > usual ? "runs count; " + usual + " a variant" : "runs count";
    }

    /// How many of the trial's readings of the day are there.
    private long read() {
        return trial.readings().stream().filter(spec -> !ofDay(spec).isEmpty()).count();
    }

    private List<SheetView.Line> soFar(Outcome outcome) {
        return outcome.figures().stream()
                .filter(figure -> trial.figure(figure.key().figure())
                        .filter(FigureSpec::primary)
                        .isPresent())
                .map(this::line)
                .toList();
    }

    private SheetView.Line line(Figure figure) {
        String title = trial.requireFigure(figure.key().figure()).title();
        return new SheetView.Line(
                Printing.capital(title),
                trial.words(figure.key().variant()),
                printing.thisDay(figure),
                "mean of " + Printing.count(figure.counted(), "run", "runs") + ", this day",
                printing.anyDay(figure).text());
    }

    private SheetView.Kept kept(RunResult run) {
        return new SheetView.Kept(
                run.run(),
                Paths.run(dayId, run.run()),
                run.counted(),
                RunWords.state(run.state(), run.counted()),
                Printing.capital(RunWords.reason(run.reason())),
                run.values().stream()
                        .map(value -> new RunView.ValueRow(Printing.capital(value.title()), printing.value(value)))
                        .toList());
    }

    private List<String> blockers() {
        var blockers = new ArrayList<String>();
        boolean checked =
                reduced.day().preRideCheck().filter(PreRideCheck::isTicked).isPresent();
        if (trial.needsPreRideCheck() && !checked) {
            blockers.add("No run of this trial counts before a second person has ticked the pre-ride check.");
        }
        return blockers;
    }

    /// The answer to what is typed now, for the script that asks while somebody types.
    public SheetView.Told told() {
        return telling.told();
    }

    /// A limit with the reading it is about.
    record Watched(Limit limit, ReadingSpec spec) {}
}
