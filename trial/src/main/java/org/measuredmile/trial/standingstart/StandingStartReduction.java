package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.CandidateMatching;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.ResolvedReadings.Value;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunScreen;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;

/// One day's starts to figures: find them in the recordings, match them to the written runs, screen, fit,
/// average.
final class StandingStartReduction {
    private final TrialInput input;
    private final RunScreen screen;
    private final List<Finding> findings = new ArrayList<>();

    StandingStartReduction(TrialInput input) {
        this.input = input;
        this.screen = new RunScreen(StandingStart.DECLARATION, input);
    }

    Outcome outcome() {
        var candidates = candidates();
        if (input.runs().isEmpty() && candidates.values().stream().allMatch(List::isEmpty)) {
            return new Outcome(List.of(), List.of(), findings);
        }
        findings.addAll(0, screen.findings());
        var matching = CandidateMatching.of(input, candidates, "starts");
        findings.addAll(matching.findings());
        var runs = new ArrayList<StartRun>();
        for (var run : input.runs()) {
            runs.add(written(run, Optional.ofNullable(matching.byRun().get(run.id()))));
        }
        boolean anyWritten = !runs.isEmpty();
        for (var start : matching.left()) {
            runs.add(proposed(start, anyWritten));
        }
        var said = new StandingStartFindings(input, runs);
        findings.addAll(said.ofDay());
        findings.addAll(said.ofRuns());
        return new Outcome(
                new StandingStartFigures(input, runs).all(),
                runs.stream().map(StandingStartReduction::result).toList(),
                findings);
    }

    /// The starts of every recording that may hold runs of this trial.
    private SortedMap<String, List<TracedStart>> candidates() {
        var byRecording = new TreeMap<String, List<TracedStart>>();
        for (var recording : input.recordingsToSearch()) {
            byRecording.put(recording.name(), startsIn(recording));
        }
        return byRecording;
    }

    private List<TracedStart> startsIn(Recording recording) {
        var source = SpeedSource.best(recording);
        if (source.isEmpty()) {
            if (!input.runsIn(recording).isEmpty()) {
                findings.add(Finding.refused(
                        "no-speed",
                        Place.in(recording.name()),
                        "the recording has neither speed nor positions",
                        "time the start by hand, or use a logger that writes speed"));
            }
            return List.of();
        }
        var starts = StartFinder.find(recording, source.get());
        if (!starts.isEmpty() && StartFinder.isTooCoarse(source.get())) {
            findings.add(Finding.refused(
                    "too-coarse",
                    Place.in(recording.name()),
                    StartFinder.tooCoarse(source.get()),
                    StartFinder.COARSE_REMEDY));
        }
        return starts;
    }

    private StartRun written(Run run, Optional<TracedStart> start) {
        return new StartRun(
                run,
                screen.reasonNotToCount(run),
                readings(run, StandingStart::timeReading),
                readings(run, StandingStart::distanceReading),
                start,
                StartPower.of(input, run));
    }

    private Map<Target, Value> readings(Run run, Function<Target, String> name) {
        var values = new EnumMap<Target, Value>(Target.class);
        for (var target : Target.values()) {
            input.readings().of(run.id(), name.apply(target)).ifPresent(value -> values.put(target, value));
        }
        return values;
    }

    /// A start that no written run claims: proposed to a person, and counted meanwhile only where nobody
    /// wrote any run. Its drive cannot be told from its speed.
    private StartRun proposed(TracedStart start, boolean anyWritten) {
        String drive = input.bike().drive().equals("pedal") ? "pedal" : "throttle";
        var run = new Run(
                start.recording().name() + " at " + StandingStartWords.seconds(start.beginS()),
                StandingStart.DECLARATION.id(),
                Variant.of("drive", drive).with("to", Target.TWENTY.id()),
                "",
                Optional.empty(),
                "",
                "",
                Run.State.PROPOSED,
                "",
                "",
                Place.atTime(start.recording().name(), start.beginS()));
        String screened = "";
        if (start.qualifies()) {
            screened = anyWritten
                    ? "found beside the written runs; write it into runs.csv to count it"
                    : screen.reasonNotToCount(run);
        }
        return new StartRun(run, screened, Map.of(), Map.of(), Optional.of(start), Optional.empty());
    }

    private static RunResult result(StartRun run) {
        return new RunResult(
                run.run().id(),
                run.run().variant(),
                run.run().direction(),
                run.run().state(),
                run.reason().isEmpty(),
                run.reason(),
                run.traced()
                        .map(start -> new RunResult.Stretch(start.recording().name(), start.beginS(), start.endS())),
                StartValues.of(run),
                run.traced().flatMap(StartPlot::of));
    }
}
