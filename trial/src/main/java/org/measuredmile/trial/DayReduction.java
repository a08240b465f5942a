package org.measuredmile.trial;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.measuredmile.recording.ColumnSettings;
import org.measuredmile.recording.CrossChecks;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.check.Beside;
import org.measuredmile.recording.check.DayChecks;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.DayRead;
import org.measuredmile.recording.day.DayReader;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.recording.reader.Readers;
import org.measuredmile.trial.Figure.InputHash;

/// A whole test day, from its files to figures: read, decode, reduce every trial in the order of
/// their uses.
///
/// Shape: the same files, scatter record and trial versions give the same result, bit for bit.
public final class DayReduction {
    private final TestDay day;
    private final Bike bike;
    private final ScatterRecord scatter;
    private final SortedMap<String, Decoding> decodings;
    private final SortedMap<String, Recording> recordings = new TreeMap<>();
    private final List<InputHash> inputs;
    private final List<Beside> besides;
    private final SortedMap<FigureKey, Figure> figures = new TreeMap<>();
    private final SortedMap<String, Outcome> outcomes = new TreeMap<>();
    private final List<Correlation> correlations = new ArrayList<>();

    private DayReduction(
            DayRead.Read read, ScatterRecord scatter, SortedMap<String, Decoding> decodings, List<InputHash> inputs) {
        this.day = read.day();
        this.bike = read.bike();
        this.scatter = scatter;
        this.inputs = inputs;
        var checks = checked(decodings);
        this.besides = checks.besides();
        this.decodings = new TreeMap<>();
        decodings.forEach((name, decoding) -> this.decodings.put(name, noted(decoding, checks)));
        recordings.keySet().removeAll(checks.leftOut());
    }

    /// What the recordings that figures may come of say against each other and against the day.
    private DayChecks checked(SortedMap<String, Decoding> decodings) {
        decodings.forEach((name, decoding) -> {
            if (decoding instanceof Decoding.Decoded(Recording recording) && recording.mayGiveFigures()) {
                recordings.put(name, recording);
            }
        });
        var sha256 = new TreeMap<String, String>();
        inputs.stream()
                .filter(one -> one.kind().equals("recording"))
                .forEach(one -> sha256.put(one.name(), one.sha256()));
        return DayChecks.of(day, recordings, sha256);
    }

    /// A recording with what it says against itself, the others and the day.
    private static Decoding noted(Decoding decoding, DayChecks checks) {
        if (!(decoding instanceof Decoding.Decoded(Recording recording)) || !recording.mayGiveFigures()) {
            return decoding;
        }
        var found = new LinkedHashSet<>(CrossChecks.of(recording));
        found.addAll(checks.byFile().getOrDefault(decoding.name(), List.of()));
        recording.findings().forEach(found::remove);
        return new Decoding.Decoded(recording.noting(List.copyOf(found)));
    }

    /// What became of a day's files.
    public sealed interface Result {
        /// The day could be worked on.
        ///
        /// Shape: `recordings` by file name, refused ones among them; `outcomes` by trial id, for
        /// every trial that had anything to say; `findings` are those of the day's own files.
        record Reduced(
                TestDay day,
                Bike bike,
                SortedMap<String, Decoding> recordings,
                SortedMap<String, Outcome> outcomes,
                List<Finding> findings,
                List<InputHash> inputs)
                implements Result {
            public Reduced {
                recordings = Collections.unmodifiableSortedMap(new TreeMap<>(recordings));
                outcomes = Collections.unmodifiableSortedMap(new TreeMap<>(outcomes));
                findings = List.copyOf(findings);
                inputs = List.copyOf(inputs);
            }

            /// Every figure of every trial, in the order of [Trials#ALL].
            public List<Figure> figures() {
                return Trials.ALL.stream()
                        .flatMap(trial -> Optional.ofNullable(
                                outcomes.get(trial.declaration().id()))
                                .stream())
                        .flatMap(outcome -> outcome.figures().stream())
                        .toList();
            }

            /// How figures lean on each other, as their trials say.
            public List<Correlation> correlations() {
                return outcomes.values().stream()
                        .flatMap(outcome -> outcome.correlations().stream())
                        .toList();
            }

            /// The day's findings, those of its recordings and those of its trials.
            public List<Finding> allFindings() {
                var all = new ArrayList<>(findings);
                recordings.values().forEach(decoding -> all.addAll(findingsOf(decoding)));
                outcomes.values().forEach(outcome -> all.addAll(outcome.findings()));
                return all;
            }
        }

        /// The day's own files could not be used; its recordings were decoded all the same.
        record Unusable(String name, List<Finding> findings, SortedMap<String, Decoding> recordings) implements Result {
            public Unusable {
                findings = List.copyOf(findings);
                recordings = Collections.unmodifiableSortedMap(new TreeMap<>(recordings));
            }
        }
    }

    /// The findings of a decoding, whichever way it ended.
    public static List<Finding> findingsOf(Decoding decoding) {
        return decoding.findings();
    }

    /// Reads, decodes and reduces a test day.
    ///
    /// Error: IOException only when a source of bytes fails by itself.
    public static Result reduce(DayFolder folder, ScatterRecord scatter) throws IOException {
        var inputs = new ArrayList<InputHash>();
        folder.texts().forEach((path, bytes) -> inputs.add(new InputHash(kindOf(path), path, Sha256.of(bytes))));
        var read = DayReader.read(folder);
        var decodings = new TreeMap<String, Decoding>();
        for (var entry : folder.recordings().entrySet()) {
            try (var source = new BufferedInputStream(entry.getValue().open(), 1 << 16)) {
                var bytes = new Sha256.Hashing(source);
                for (var decoding : Readers.decodeAll(entry.getKey(), bytes, name -> columnsOf(read, name))) {
                    boolean within = decoding.name().startsWith(entry.getKey() + "/");
                    decodings.put(within ? decoding.name() : entry.getKey(), decoding);
                }
                inputs.add(new InputHash("recording", entry.getKey(), bytes.finish()));
            }
        }
        return switch (read) {
            case DayRead.Unusable(String name, List<Finding> findings) ->
                new Result.Unusable(name, findings, decodings);
            case DayRead.Read usable -> new DayReduction(usable, scatter, decodings, inputs).reduced(usable.findings());
        };
    }

    private static ColumnSettings columnsOf(DayRead read, String recording) {
        return read instanceof DayRead.Read usable ? usable.day().columnsOf(recording) : ColumnSettings.NONE;
    }

    private static String kindOf(String path) {
        if (path.startsWith("bike/")) {
            return "bike";
        }
        return switch (path) {
            case "day.yaml" -> "day";
            case "runs.csv" -> "runs";
            case "readings.csv" -> "readings";
            case "recordings.csv" -> "recordings";
            default -> "course";
        };
    }

    private Result.Reduced reduced(List<Finding> dayFindings) {
        var findings = new ArrayList<>(dayFindings);
        for (var trial : TrialOrder.byUses(Trials.ALL)) {
            reduce(trial);
        }
        findings.addAll(strayRuns());
        findings.addAll(strayReadings());
        return new Result.Reduced(day, bike, decodings, outcomes, findings, inputs);
    }

    private void reduce(Trial trial) {
        var declaration = trial.declaration();
        var runs = day.runs().stream()
                .filter(run -> run.trial().equals(declaration.id()))
                .map(run -> completed(declaration, run))
                .toList();
        var input = new TrialInput(
                day,
                bike,
                runs,
                ReadingResolver.resolve(declaration, day),
                recordings,
                scatter,
                usedBy(declaration),
                correlations,
                besides);
        var outcome = reduced(trial, input);
        if (!outcome.equals(Outcome.NOTHING)) {
            var finished = outcome.figures().stream()
                    .map(figure -> figure.from(inputsOf(figure, outcome)))
                    .toList();
            finished.forEach(figure -> figures.put(figure.key(), figure));
            correlations.addAll(outcome.correlations());
            outcomes.put(
                    declaration.id(),
                    new Outcome(finished, outcome.runs(), outcome.findings(), outcome.correlations()));
        }
    }

    /// A fault of one trial's own code must not cost the day its other trials.
    private static Outcome reduced(Trial trial, TrialInput input) {
        try {
            return trial.reduce(input);
        } catch (RuntimeException fault) {
            String id = trial.declaration().id();
            return new Outcome(
                    List.of(),
                    List.of(),
                    List.of(Finding.refused(
                            "reduction-failed",
                            Place.NOWHERE,
                            "the reduction of " + id + " stopped: " + fault,
                            "this is a fault of the tool; nothing is lost; report it with the day's folder")));
        }
    }

    private static Run completed(Declaration declaration, Run run) {
        return new Run(
                run.id(),
                run.trial(),
                RunScreen.completed(declaration, run.variant()),
                run.rider(),
                run.start(),
                run.course(),
                run.direction(),
                run.state(),
                run.reason(),
                run.note(),
                run.place());
    }

    private SortedMap<FigureKey, Figure> usedBy(Declaration declaration) {
        var used = new TreeMap<FigureKey, Figure>();
        for (var use : declaration.uses()) {
            figures.forEach((key, figure) -> {
                if (key.figure().equals(use.figure())) {
                    used.put(key, figure);
                }
            });
        }
        return used;
    }

    /// The day's files, the recordings that the figure's runs lie in, and the scatter record where
    /// one was given.
    private List<InputHash> inputsOf(Figure figure, Outcome outcome) {
        var runIds = figure.runs().stream().map(Figure.FigureRun::run).toList();
        var found = outcome.runs().stream()
                .filter(run -> runIds.contains(run.run()))
                .flatMap(run -> run.stretch().stream())
                .map(RunResult.Stretch::recording);
        var named = day.recordings().stream()
                .filter(entry -> entry.runs().stream().anyMatch(runIds::contains))
                .map(RecordingEntry::file);
        var files = Stream.concat(found, named).distinct().toList();
        var used = new ArrayList<>(inputs.stream()
                .filter(one -> !one.kind().equals("recording") || holdsAny(one.name(), files))
                .toList());
        if (!scatter.byFigure().isEmpty()) {
            used.add(new InputHash("scatter", scatter.name(), Sha256.of(scatter.text())));
        }
        return used;
    }

    /// Whether a file is one of these, or they lie packed in it.
    private static boolean holdsAny(String file, List<String> recordings) {
        return recordings.stream().anyMatch(one -> one.equals(file) || one.startsWith(file + "/"));
    }

    private List<Finding> strayRuns() {
        return day.runs().stream()
                .filter(run -> Trials.find(run.trial()).isEmpty())
                .map(run -> Finding.warning(
                        "unknown-trial",
                        run.place(),
                        "run " + run.id() + " is of \"" + run.trial() + "\", which is no trial",
                        "write one of "
                                + String.join(
                                        ", ",
                                        Trials.ALL.stream()
                                                .map(trial ->
                                                        trial.declaration().id())
                                                .toList())))
                .toList();
    }

    private List<Finding> strayReadings() {
        return day.readings().stream()
                .filter(reading -> Trials.ALL.stream()
                        .noneMatch(trial ->
                                trial.declaration().reading(reading.name()).isPresent()))
                .map(reading -> Finding.note(
                        "unused-reading",
                        reading.place(),
                        "no trial asks for a reading \"" + reading.name() + "\"; it is kept"))
                .toList();
    }
}
