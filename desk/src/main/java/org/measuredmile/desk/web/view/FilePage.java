package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.HistoryEntry;
import org.measuredmile.archive.Revision;
import org.measuredmile.archive.StoredDay;
import org.measuredmile.recording.Channel;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Trials;
import org.measuredmile.trial.VariantKey;

/// Makes the page of one of a day's files.
public final class FilePage {
    private static final double WIDE = 1000;
    private static final double NARROW = 352;
    private static final long SKETCH = 340;

    private final Archive archive;
    private final Printing printing;
    private final DayReduction.Result.Reduced reduced;
    private final StoredDay stored;
    private final Asked asked;
    private final Optional<FileDrawing> drawing;
    private final List<FileDrawing.Placed> runs;

    /// What of the file is asked for: which run is chosen (`new` for one that is not there yet), which stretch is
    /// seen, which revision the visitor just made.
    ///
    /// Unit: seconds of the recording; a `to` of 0 leaves the stretch to the page.
    public record Asked(String file, String run, double from, double to, long kept) {}

    public FilePage(Archive archive, FileDrawing.Of of, Asked asked) {
        this.archive = archive;
        this.printing = of.printing();
        this.reduced = of.reduced();
        this.stored = archive.day(of.dayId()).orElseThrow();
        this.asked = asked;
        this.drawing = FileDrawing.of(of, asked.file());
        this.runs = drawing.map(FileDrawing::runs).orElse(List.of());
    }

    public FileView view() {
        var files = new DayFiles(printing, stored, Optional.of(reduced), List.of());
        var row = files.row(asked.file());
        var zone = reduced.day().timeZone();
        var history = archive.history(Revision.Subject.DAY, stored.id());
        var stretch = stretch();
        return new FileView(
                asked.file(),
                Days.title(reduced),
                Paths.day(stored.id()),
                Paths.file(stored.id(), asked.file()),
                row.download(),
                facts(row),
                drawing.flatMap(one -> plot(one, stretch)),
                row.track().map(small -> files.track(asked.file(), SKETCH)),
                runs.stream().map(this::run).toList(),
                fresh(stretch),
                row.findings(),
                history.reversed().stream()
                        .map(one -> HistoryView.row(one, zone))
                        .toList(),
                history.stream()
                        .filter(one -> one.number() == asked.kept())
                        .map((HistoryEntry one) -> HistoryView.row(one, zone))
                        .findFirst());
    }

    private List<BikeView.Fact> facts(DayView.FileRow row) {
        var facts = new ArrayList<BikeView.Fact>();
        add(facts, "What it is", row.format());
        add(facts, "Channels", row.channels());
        add(facts, "Rate", row.rate());
        add(facts, "Span", row.span());
        add(facts, "Size", row.size());
        drawing.flatMap(FileDrawing::curve)
                .ifPresent(curve -> add(facts, "Curve", curve.words() + "; " + curve.reason()));
        return facts;
    }

    private static void add(List<BikeView.Fact> facts, String name, String words) {
        if (!words.isBlank()) {
            facts.add(new BikeView.Fact(name, words));
        }
    }

    private record Stretch(double fromS, double toS) {}

    /// What was asked for; else the chosen run with as much again on either side; else the whole file.
    private Stretch stretch() {
        double spanS = drawing.map(FileDrawing::spanS).orElse(1.0);
        if (asked.to() - asked.from() > 0.01 && asked.from() < spanS && Double.isFinite(asked.to())) {
            return new Stretch(Math.max(0, asked.from()), Math.min(spanS, asked.to()));
        }
        return runs.stream()
                .filter(run -> run.run().run().equals(asked.run()))
                .findFirst()
                .map(run -> {
                    double room = Math.max(run.toS() - run.fromS(), 0.5);
                    double fromS = Math.clamp(run.fromS() - room, 0, Math.max(0, spanS - 0.02));
                    return new Stretch(fromS, Math.max(fromS + 0.01, Math.min(spanS, run.toS() + room)));
                })
                .orElse(new Stretch(0, spanS));
    }

    private Optional<FileView.Plot> plot(FileDrawing drawing, Stretch seen) {
        if (drawing.curve().isEmpty()) {
            return Optional.empty();
        }
        Channel channel = drawing.curve().get().channel();
        double step = channel.medianStepS();
        String revision = Long.toString(stored.revision().number());
        return Optional.of(new FileView.Plot(
                drawn(drawing, seen, WIDE, 300),
                drawn(drawing, seen, NARROW, 200),
                Paths.file(stored.id(), asked.file()) + "/trace.svg?" + DayFiles.version(revision, printing.system()),
                caption(channel),
                drawing.clock()
                        .start()
                        .map(one -> Long.toString(one.toEpochMilli()))
                        .orElse(""),
                reduced.day().timeZone().getId(),
                seconds(drawing.spanS()),
                seconds(step > 0 ? Math.max(0.001, step) : 0.1),
                seconds(seen.fromS()),
                seconds(seen.toS()),
                steps(seen, drawing.spanS())));
    }

    private static String drawn(FileDrawing drawing, Stretch seen, double width, double height) {
        return drawing.trace(new FileDrawing.View(width, height, seen.fromS(), seen.toS(), false))
                .orElse("");
    }

    private static String caption(Channel channel) {
        return "Each step across holds the lowest and the highest of its samples, so that no spike is lost; closer by, "
                + "every sample is a ring. Nothing is smoothed, gaps stay gaps. "
                + Printing.count(channel.size(), "sample", "samples") + " in all.";
    }

    private List<FileView.Step> steps(Stretch seen, double spanS) {
        double wide = seen.toS() - seen.fromS();
        double middle = (seen.fromS() + seen.toS()) / 2;
        return List.of(
                step("closer", "Closer", middle - wide / 4, middle + wide / 4),
                step("wider", "Wider", Math.max(0, middle - wide), Math.min(spanS, middle + wide)),
                step("earlier", "Earlier", Math.max(0, seen.fromS() - wide / 2), Math.max(wide, seen.toS() - wide / 2)),
                step(
                        "later",
                        "Later",
                        Math.min(seen.fromS() + wide / 2, spanS - wide),
                        Math.min(spanS, seen.toS() + wide / 2)),
                step("whole", "Whole file", 0, spanS));
    }

    private FileView.Step step(String id, String words, double fromS, double toS) {
        String run = asked.run().isEmpty() ? "" : "&run=" + Paths.query(asked.run());
        return new FileView.Step(
                id,
                words,
                Paths.file(stored.id(), asked.file()) + "?from=" + seconds(Math.max(0, fromS)) + "&to=" + seconds(toS)
                        + run + "#plot");
    }

    private FileView.RunRow run(FileDrawing.Placed one) {
        var clock = drawing.orElseThrow().clock();
        var run = one.run();
        return new FileView.RunRow(
                "." + runs.indexOf(one),
                run.run(),
                one.label(),
                one.trial().title(),
                one.trial().words(run.variant()),
                RunWords.mark(run.state(), run.counted()),
                one.word(),
                Printing.capital(RunWords.reason(run.reason())),
                seconds(one.fromS()),
                seconds(one.toS()),
                seconds((one.fromS() + one.toS()) / 2),
                clock.exact(one.fromS()),
                clock.exact(one.toS()),
                String.format(Locale.ROOT, "%.2f\u00a0s", one.toS() - one.fromS()),
                Paths.run(stored.id(), run.run()),
                one.isProposed(),
                run.state() == org.measuredmile.recording.day.Run.State.VOID,
                run.run().equals(asked.run()),
                one.trial().causes().stream()
                        .map(cause -> new RunView.Choice(cause.code(), Printing.capital(cause.words())))
                        .toList());
    }

    private FileView.NewRun fresh(Stretch seen) {
        boolean isChosen = asked.run().equals("new");
        var trials = Trials.ALL.stream()
                .map(trial -> trial.declaration())
                .filter(trial -> !trial.isReadOnce())
                .map(trial -> new FileView.TrialChoice(
                        trial.id(),
                        trial.title(),
                        trial.variants().stream()
                                .filter(VariantKey::asked)
                                .map(FilePage::field)
                                .toList()))
                .toList();
        return new FileView.NewRun(
                isChosen ? seconds(seen.fromS()) : "", isChosen ? seconds(seen.toS()) : "", isChosen, trials);
    }

    private static FileView.VariantField field(VariantKey key) {
        return new FileView.VariantField(
                key.name(),
                Printing.capital(key.title()),
                key.usual(),
                key.values().stream()
                        .map(value -> new RunView.Choice(
                                value.value(), value.words().isEmpty() ? value.value() : value.words()))
                        .toList());
    }

    private static String seconds(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }
}
