package org.measuredmile.desk.web.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.recording.day.Window;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunResult.Stretch;
import org.measuredmile.trial.Trace;

/// What can be done to a run on its recording's plot: move its ends, split it in two.
///
/// Shape: pure; each gives the day as it would be, for a revision with who did it and why. A run that was only found is
/// written down by either.
/// Unit: seconds of the recording's own clock, kept to the millisecond.
public final class Windows {
    private Windows() {}

    /// A run of a trial as a page shows it, written or found.
    public record Shown(String trial, RunResult run) {}

    /// The day after a change, the ids of the runs it changed or made, and the change in words.
    public record Changed(TestDay day, List<String> runs, String what) {
        public Changed {
            runs = List.copyOf(runs);
        }
    }

    /// The ends that a plot shows for a run: those that a person set; else all that its value was taken from,
    /// with what the fit needs before and after.
    public static Optional<Stretch> of(TestDay day, RunResult run) {
        return run.stretch()
                .map(stretch -> day.recording(stretch.recording())
                        .flatMap(entry -> entry.window(run.run()))
                        .map(window -> new Stretch(stretch.recording(), window.fromS(), window.toS()))
                        .orElseGet(() -> run.trace().map(Windows::samplesOf).orElse(stretch)));
    }

    /// From the first to the last sample that the run's trace shows, to the millisecond and none of them lost
    /// by it.
    private static Stretch samplesOf(Trace trace) {
        double fromS = Double.POSITIVE_INFINITY;
        double toS = Double.NEGATIVE_INFINITY;
        for (Trace.Line line : trace.lines()) {
            if (line.role() != Trace.Role.MODEL && line.timesS().length > 0) {
                fromS = Math.min(fromS, line.timesS()[0]);
                toS = Math.max(toS, line.timesS()[line.timesS().length - 1]);
            }
        }
        return new Stretch(
                trace.recording(),
                Math.max(0, Math.floor((trace.originS() + fromS) * 1000) / 1000),
                Math.ceil((trace.originS() + toS) * 1000) / 1000);
    }

    /// The day with both ends of a run set; its state stays.
    ///
    /// Shape: the stretch is one that [WindowForm] let through.
    public static Changed moved(DayReduction.Result.Reduced reduced, Shown shown, Stretch to) {
        var written = written(reduced, shown);
        var window = Window.rounded(to.fromS(), to.toS());
        var day = withWindow(written.day(), written.id(), to.recording(), window);
        return new Changed(day, List.of(written.id()), "run " + written.id() + " set to " + words(to));
    }

    /// The day with both ends of a run set, and the run confirmed with them.
    public static Changed confirmed(DayReduction.Result.Reduced reduced, Shown shown, Stretch to) {
        var moved = moved(reduced, shown, to);
        var decision = new Runs.Decision(shown.trial(), Run.State.CONFIRMED, "");
        var runs = moved.day().runs().stream()
                .map(run -> moved.runs().contains(run.id()) ? Runs.in(run, decision) : run)
                .toList();
        return new Changed(
                DayParts.with(moved.day(), runs, moved.day().readings()),
                moved.runs(),
                moved.what() + " and confirmed");
    }

    /// The day with a run made two at a time inside it: the first keeps its id and its readings, the second
    /// gets the next id. Both are proposed, whatever the one was.
    public static Changed split(DayReduction.Result.Reduced reduced, Shown shown, double atS) {
        var whole = of(reduced.day(), shown.run()).orElseThrow();
        var written = written(reduced, shown);
        String second = Runs.nextId(reduced, written.day(), shown.trial());
        double cutS = Math.round(atS * 1000) / 1000.0;
        String cut = seconds(cutS);
        var runs = new ArrayList<Run>();
        for (Run run : written.day().runs()) {
            if (run.id().equals(written.id())) {
                runs.add(proposed(
                        run,
                        "split at " + cut + " of " + whole.recording() + "; the rest is " + second
                                + ", the readings stay here"));
                runs.add(rest(reduced, run, second, new Stretch(whole.recording(), cutS, whole.toS())));
            } else {
                runs.add(run);
            }
        }
        var day = DayParts.with(written.day(), runs, written.day().readings());
        day = withWindow(day, written.id(), whole.recording(), Window.rounded(whole.fromS(), cutS));
        day = withWindow(day, second, whole.recording(), Window.rounded(cutS, whole.toS()));
        return new Changed(
                day,
                List.of(written.id(), second),
                "run " + written.id() + " split at " + cut + " of " + whole.recording() + ", the rest is " + second);
    }

    /// The day with a run that nobody had found or written: confirmed, since a person marked it on the plot.
    public static Changed added(DayReduction.Result.Reduced reduced, String trial, Variant variant, Stretch stretch) {
        String id = Runs.nextId(reduced, reduced.day(), trial);
        var runs = new ArrayList<>(reduced.day().runs());
        runs.add(new Run(
                id,
                trial,
                variant,
                reduced.day().riders().stream().findFirst().map(Rider::code).orElse(""),
                Runs.start(reduced, stretch),
                "",
                "",
                Run.State.CONFIRMED,
                "",
                "marked on the plot",
                Place.NOWHERE));
        var day = DayParts.with(reduced.day(), runs, reduced.day().readings());
        day = withWindow(day, id, stretch.recording(), Window.rounded(stretch.fromS(), stretch.toS()));
        return new Changed(day, List.of(id), "run " + id + " of " + trial + " added, " + words(stretch));
    }

    private static Run proposed(Run run, String split) {
        String was = run.state() == Run.State.VOID ? "was void: " + run.reason() + "; " : "";
        String note = run.note().isEmpty() ? was + split : run.note() + "; " + was + split;
        return new Run(
                run.id(),
                run.trial(),
                run.variant(),
                run.rider(),
                run.start(),
                run.course(),
                run.direction(),
                Run.State.PROPOSED,
                "",
                note,
                run.place());
    }

    private static Run rest(DayReduction.Result.Reduced reduced, Run run, String id, Stretch stretch) {
        return new Run(
                id,
                run.trial(),
                run.variant(),
                run.rider(),
                Runs.start(reduced, stretch),
                run.course(),
                run.direction(),
                Run.State.PROPOSED,
                "",
                "split from " + run.id(),
                Place.NOWHERE);
    }

    private record Written(TestDay day, String id) {}

    /// The day in which the run stands in runs.csv, and its id there.
    private static Written written(DayReduction.Result.Reduced reduced, Shown shown) {
        if (Runs.isWritten(reduced.day(), shown.run())) {
            return new Written(reduced.day(), shown.run().run());
        }
        var proposed = new Runs.Decision(shown.trial(), Run.State.PROPOSED, "");
        var day = Runs.decided(reduced, shown.run(), proposed);
        return new Written(day, day.runs().getLast().id());
    }

    /// The day in which a run has its ends in one recording and in no other.
    static TestDay withWindow(TestDay day, String run, String file, Window window) {
        var elsewhere = day.recordings().stream()
                .map(entry -> entry.file().equals(file) ? entry : entry.withoutWindow(run))
                .toList();
        var fresh = new RecordingEntry(file, "", List.of(), 0, "").naming(run, window);
        return DayParts.withRecordings(
                day,
                DayParts.exchanged(
                        elsewhere, entry -> entry.file().equals(file), entry -> entry.naming(run, window), fresh));
    }

    private static String words(Stretch stretch) {
        return seconds(stretch.fromS()) + " to " + seconds(stretch.toS()) + " of " + stretch.recording();
    }

    static String seconds(double value) {
        return String.format(Locale.ROOT, "%.3f s", value);
    }
}
