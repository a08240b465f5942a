package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.measuredmile.desk.web.edit.Runs;
import org.measuredmile.desk.web.edit.SaidForm;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.ReadingPrinter;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.recording.spoken.CameraOffset;
import org.measuredmile.recording.spoken.SpokenAgainstTrace;
import org.measuredmile.recording.spoken.SpokenClip;
import org.measuredmile.recording.spoken.SpokenReading;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.Trials;

/// Makes the page of a clip's words.
public final class Clips {
    private final Printing printing;
    private final String dayId;
    private final DayReduction.Result.Reduced reduced;
    private final SpokenClip clip;

    public Clips(Printing printing, String dayId, DayReduction.Result.Reduced reduced, SpokenClip clip) {
        this.printing = printing;
        this.dayId = dayId;
        this.reduced = reduced;
        this.clip = clip;
    }

    /// A clip of the day beside the day's recordings; nothing when there is no such file of words.
    public static Optional<SpokenClip> find(DayReduction.Result.Reduced reduced, String file) {
        var others = new ArrayList<Recording>();
        for (Decoding decoding : reduced.recordings().values()) {
            if (decoding instanceof Decoding.Decoded(Recording recording)) {
                others.add(recording);
            }
        }
        return reduced.recordings().get(file) instanceof Decoding.Decoded(Recording words) && SpokenClip.isOne(words)
                ? Optional.of(SpokenClip.of(words, others))
                : Optional.empty();
    }

    /// What was said at a time of the clip, as [SaidForm.Said#at] writes it.
    public Optional<SaidForm.Said> said(String file, String at) {
        return clip.lines().stream()
                .map(line -> SaidForm.said(reduced, file, line))
                .filter(one -> one.at().equals(at))
                .findFirst();
    }

    /// @param open the number whose form is shown; empty text for none
    public ClipView view(String file, String open) {
        boolean isSet = !clip.found().isEmpty();
        var unset = clip.beside().stream().filter(one -> one.found().isEmpty()).toList();
        var rows = new ArrayList<ClipView.Row>();
        for (SpokenClip.Line line : clip.lines()) {
            rows.add(row(line, SaidForm.said(reduced, file, line), open));
        }
        return new ClipView(
                "Said in " + file,
                Paths.day(dayId),
                Paths.clip(dayId, file),
                Printing.count(rows.size(), "number", "numbers"),
                clocks(isSet ? clip.found() : clip.beside()),
                clocks(isSet ? unset : List.of()),
                Printing.count(unset.size(), "recording", "recordings") + " of the day that it does not fit, and why",
                rows,
                clip.beside().isEmpty()
                        ? "No recording of this day has a speed, so the clip’s clock can’t be set. Send the recording"
                                + " of the ride."
                        : "");
    }

    private static List<ClipView.Clock> clocks(List<SpokenClip.Beside> beside) {
        return beside.stream().map(Clips::clock).toList();
    }

    private static ClipView.Clock clock(SpokenClip.Beside beside) {
        return switch (beside.offset()) {
            case CameraOffset.Found found ->
                new ClipView.Clock(
                        "valid",
                        "set",
                        beside.recording(),
                        String.format(
                                        Locale.ROOT,
                                        "add %.1f\u00a0s to the clip’s time, 95\u00a0%% from %.1f to %.1f\u00a0s; %d "
                                                + "of %d speeds said agree with the %s.",
                                        found.offsetS(),
                                        found.interval95S().low(),
                                        found.interval95S().high(),
                                        found.agreeing(),
                                        found.said(),
                                        beside.speed().kind().title())
                                .replace('-', '−'));
            case CameraOffset.NotFound(String _, String message, String remedy, var _) ->
                new ClipView.Clock(
                        "refused",
                        "not set",
                        beside.recording(),
                        message.replaceAll("(?<= )-(?=\\d)", "−") + ". " + Printing.capital(remedy) + ".");
        };
    }

    private ClipView.Row row(SpokenClip.Line line, SaidForm.Said said, String open) {
        SpokenReading reading = line.reading();
        Optional<Proposal> proposal = proposal(line);
        return new ClipView.Row(
                said.at(),
                ReadingPrinter.byTheClock(reading.timeS(), 1),
                said.time()
                        .map(at -> Printing.clock(at, reduced.day().timeZone()))
                        .orElse(""),
                reading.text(),
                reading.kind().map(Clips::word).orElse("a number"),
                reading.typed(),
                other(reading),
                reading.confidence().words(),
                mark(line),
                agreement(line),
                proposal.map(Proposal::words).orElse(""),
                SaidForm.accepted(reduced.day(), said).stream().map(this::taken).toList(),
                said.at().equals(open) ? Optional.of(form(reading, proposal)) : Optional.empty());
    }

    private static String word(QuantityKind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /// The value in the units of both systems, those that it was not said in.
    private String other(SpokenReading reading) {
        if (reading.kind().isEmpty() || reading.kind().get() == QuantityKind.TIME) {
            return "";
        }
        QuantityKind kind = reading.kind().get();
        var first = kind.shown(printing.system());
        var second = kind.shown(printing.system().other());
        boolean isFirst = reading.unit().filter(first::equals).isPresent();
        return isFirst && first == second
                ? ""
                : QuantityPrinter.in(isFirst ? second : first, reading.value(), 2)
                        .text();
    }

    private static String mark(SpokenClip.Line line) {
        return switch (line.trace()
                .map(SpokenAgainstTrace::agreement)
                .orElse(SpokenAgainstTrace.Agreement.NOT_COMPARED)) {
            case AGREES -> "valid";
            case DISAGREES -> "widened";
            case NOT_COMPARED -> "noted";
        };
    }

    private String agreement(SpokenClip.Line line) {
        if (!line.reading().isSpeed()) {
            return "No speed, so not compared.";
        }
        if (line.trace().isEmpty()) {
            return "Not compared: the clip’s clock is not set.";
        }
        SpokenAgainstTrace trace = line.trace().get();
        if (trace.traceMps().isEmpty()) {
            return "Not compared: nothing was recorded then.";
        }
        var unit = QuantityKind.SPEED.shown(printing.system());
        String had = "the trace has "
                + QuantityPrinter.in(unit, trace.traceMps().getAsDouble(), 1).text();
        if (trace.agreement() == SpokenAgainstTrace.Agreement.AGREES) {
            return "Agrees; " + had + ".";
        }
        double more = trace.differenceMps().orElse(0);
        return "Disagrees; " + had + ", which is "
                + QuantityPrinter.in(unit, Math.abs(more), 1).text() + (more > 0 ? " less." : " more.");
    }

    /// The reading that a number may be, and of which run.
    private record Proposal(Declaration trial, ReadingSpec spec, Optional<String> run) {
        String words() {
            return trial.title() + ": " + spec.title()
                    + run.map(id -> ", run " + id).orElse("");
        }
    }

    private Optional<Proposal> proposal(SpokenClip.Line line) {
        if (line.reading().kind().isEmpty()) {
            return Optional.empty();
        }
        QuantityKind kind = line.reading().kind().get();
        return runAt(line)
                .flatMap(run -> trialOf(run.run())
                        .flatMap(trial -> trial.readings().stream()
                                .filter(spec -> spec.kind() == kind
                                        && spec.scope() == ReadingSpec.Scope.RUN
                                        && run.variant().covers(spec.when()))
                                .findFirst()
                                .map(spec -> new Proposal(trial, spec, Optional.of(run.run())))))
                .or(() -> Trials.ALL.stream()
                        .map(one -> one.declaration())
                        .filter(trial -> !trial.isReadOnce())
                        .flatMap(trial -> trial.readings().stream()
                                .filter(spec -> spec.kind() == kind)
                                .map(spec -> new Proposal(trial, spec, Optional.empty())))
                        .findFirst());
    }

    /// The written run in whose stretch of the recording it was said.
    private Optional<RunResult> runAt(SpokenClip.Line line) {
        if (line.recording().isEmpty() || line.trace().isEmpty()) {
            return Optional.empty();
        }
        double atS = line.trace().get().traceTimeS();
        String recording = line.recording().get().recording();
        return reduced.outcomes().values().stream()
                .flatMap(outcome -> outcome.runs().stream())
                .filter(run -> Runs.isWritten(reduced.day(), run))
                .filter(run -> run.stretch()
                        .filter(stretch ->
                                stretch.recording().equals(recording) && stretch.fromS() <= atS && atS <= stretch.toS())
                        .isPresent())
                .findFirst();
    }

    private Optional<Declaration> trialOf(String run) {
        return reduced.day().runs().stream()
                .filter(one -> one.id().equals(run))
                .findFirst()
                .flatMap(one -> Trials.find(one.trial()))
                .map(one -> one.declaration());
    }

    private ClipView.Taken taken(Reading reading) {
        String title = trialOf(reading.run())
                .flatMap(trial -> trial.reading(reading.name()))
                .map(ReadingSpec::title)
                .orElse(reading.name().replace('-', ' '));
        boolean isOfDay = reading.run().isEmpty();
        return new ClipView.Taken(
                reading.written() + ", " + title + (isOfDay ? " of the day" : " of run " + reading.run()) + ", by "
                        + reading.by(),
                isOfDay ? Paths.day(dayId) : Paths.run(dayId, reading.run()));
    }

    private ClipView.Form form(SpokenReading said, Optional<Proposal> proposal) {
        var readings = new ArrayList<RunView.Choice>();
        for (var trial : Trials.ALL) {
            var declaration = trial.declaration();
            declaration.readings().stream()
                    .filter(spec -> spec.kind() != QuantityKind.WORD)
                    .filter(spec -> said.kind().isEmpty()
                            || said.kind().get().si().dimension()
                                    == spec.kind().si().dimension())
                    .forEach(spec -> readings.add(new RunView.Choice(
                            declaration.id() + "/" + spec.name(), declaration.title() + ": " + spec.title())));
        }
        return new ClipView.Form(
                readings,
                runs(),
                reduced.day().riders().stream()
                        .map(rider -> new RunView.Choice(rider.code(), rider.code()))
                        .toList(),
                proposal.map(one -> one.trial().id() + "/" + one.spec().name()).orElse(""),
                proposal.flatMap(Proposal::run).orElse(""),
                said.typed(),
                said.kind().map(kind -> kind.shown(printing.system()).symbol()).orElse(""));
    }

    private List<RunView.Choice> runs() {
        var runs = new ArrayList<RunView.Choice>();
        for (Run run : reduced.day().runs()) {
            var trial = Trials.find(run.trial()).map(one -> one.declaration());
            String how = trial.map(one -> one.words(run.variant())).orElse("");
            runs.add(new RunView.Choice(
                    run.id(),
                    run.id() + ", " + trial.map(Declaration::title).orElse(run.trial())
                            + (how.isEmpty() ? "" : ", " + how)
                            + (run.rider().isEmpty() ? "" : ", ridden by " + run.rider())));
        }
        runs.add(new RunView.Choice(SaidForm.NEW, "a new run, not written yet"));
        return runs;
    }
}
