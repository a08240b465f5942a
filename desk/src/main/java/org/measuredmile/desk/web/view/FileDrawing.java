package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.measuredmile.desk.web.edit.Runs;
import org.measuredmile.desk.web.edit.Windows;
import org.measuredmile.publication.chart.ClockTicks;
import org.measuredmile.publication.chart.RecordingPlot;
import org.measuredmile.publication.chart.TrackSketch;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.Trials;

/// One of a day's recordings as its drawings show it: the curve, the runs found in it, the way it went.
public final class FileDrawing {
    private final Printing printing;
    private final String dayId;
    private final DayReduction.Result.Reduced reduced;
    private final Recording recording;
    private final Optional<Curves.Curve> curve;

    private FileDrawing(Of of, Recording recording) {
        this.printing = of.printing();
        this.dayId = of.dayId();
        this.reduced = of.reduced();
        this.recording = recording;
        this.curve = Curves.of(recording);
    }

    /// Whose file it is, and how its numbers are printed.
    public record Of(Printing printing, String dayId, DayReduction.Result.Reduced reduced) {}

    /// A run that lies in the recording.
    ///
    /// Unit: seconds of the recording.
    record Placed(Declaration trial, RunResult run, String label, double fromS, double toS) {
        Placed labelled(String words) {
            return new Placed(trial, run, words, fromS, toS);
        }

        boolean isProposed() {
            return run.state() == Run.State.PROPOSED;
        }

        String css() {
            return isProposed() ? "open" : run.counted() ? "" : "struck";
        }

        String word() {
            return RunWords.state(run.state(), run.counted());
        }
    }

    /// How large a drawing is and what stretch it shows.
    ///
    /// Unit: pixels of the page; seconds of the recording.
    public record View(double width, double height, double fromS, double toS, boolean alone) {}

    /// The file's drawing; empty where the file could not be read.
    public static Optional<FileDrawing> of(Of of, String file) {
        return of.reduced().recordings().get(file) instanceof Decoding.Decoded(Recording recording)
                ? Optional.of(new FileDrawing(of, recording))
                : Optional.empty();
    }

    Optional<Curves.Curve> curve() {
        return curve;
    }

    Recording recording() {
        return recording;
    }

    /// The recording's length, in seconds; at least a hundredth, so that there is something to draw.
    public double spanS() {
        double last = recording.timesS().length == 0 ? 0 : recording.timesS()[recording.timesS().length - 1];
        return Math.max(0.01, last);
    }

    /// The recording's clock as set right by its offset, in the day's zone.
    public ClockTicks clock() {
        double offsetS = reduced.day()
                .recording(recording.name())
                .map(RecordingEntry::clockOffsetS)
                .orElse(0.0);
        return new ClockTicks(
                recording.start().map(start -> start.plusMillis(Math.round(1000 * offsetS))),
                reduced.day().timeZone());
    }

    /// The runs that lie in the recording, by trial and time.
    List<Placed> runs() {
        var placed = new ArrayList<Placed>();
        int unnamed = 0;
        for (var trial : Trials.ALL) {
            var outcome = reduced.outcomes().get(trial.declaration().id());
            var here = new ArrayList<Placed>();
            for (RunResult run : outcome == null ? List.<RunResult>of() : outcome.runs()) {
                endsOf(run)
                        .filter(ends -> ends.recording().equals(recording.name()))
                        .ifPresent(ends ->
                                here.add(new Placed(trial.declaration(), run, run.run(), ends.fromS(), ends.toS())));
            }
            here.sort(Comparator.comparingDouble(Placed::fromS));
            for (Placed one : here) {
                placed.add(Runs.isWritten(reduced.day(), one.run()) ? one : one.labelled("?" + ++unnamed));
            }
        }
        return placed;
    }

    /// Where a run lies: where its value was taken, or where a person set its ends though no value came of it.
    private Optional<RunResult.Stretch> endsOf(RunResult run) {
        return Windows.of(reduced.day(), run)
                .or(() -> reduced.day()
                        .recording(recording.name())
                        .flatMap(entry -> entry.window(run.run()))
                        .map(window -> new RunResult.Stretch(recording.name(), window.fromS(), window.toS())));
    }

    /// How high the curve's drawing is.
    public double heightOf(double curveHeight) {
        return RecordingPlot.heightOf(
                (int) runs().stream().map(run -> run.trial().id()).distinct().count(), curveHeight);
    }

    /// The curve with the runs; empty where no channel can be drawn.
    public Optional<String> trace(View view) {
        return curve.map(shown -> {
            var source = new RecordingPlot.Source(
                    recording.name(),
                    shown.words(),
                    shown.channel(),
                    clock(),
                    runs().stream().map(this::mark).toList());
            var look = new RecordingPlot.Look(
                    printing.scale(shown.channel().kind().quantity()),
                    view.width(),
                    view.height(),
                    view.fromS(),
                    view.toS(),
                    view.alone());
            return new RecordingPlot(source, look).svg();
        });
    }

    private RecordingPlot.Run mark(Placed run) {
        return new RecordingPlot.Run(
                run.run().run(),
                run.label(),
                run.trial().title(),
                run.word(),
                run.css(),
                run.fromS(),
                run.toS(),
                Paths.file(dayId, recording.name(), run.run().run()));
    }

    /// The way it went; empty where no positions were recorded.
    public Optional<String> track(double width, double height) {
        return TrackSketch.of(recording.track(), printing.system(), width, height)
                .map(sketch -> sketch.svg(recording.name()));
    }

    boolean hasTrack() {
        return recording.track().size() > 1;
    }
}
