package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.CandidateMatching;
import org.measuredmile.trial.CandidateMatching.Held;
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
        var matching = CandidateMatching.of(input, StartFinder.FINDER);
        if (input.runs().isEmpty() && matching.left().isEmpty()) {
            return new Outcome(List.of(), List.of(), matching.findings());
        }
        findings.addAll(screen.findings());
        findings.addAll(matching.findings());
        var runs = new ArrayList<StartRun>();
        for (var run : input.runs()) {
            runs.add(written(run, matching));
        }
        boolean anyWritten = !runs.isEmpty();
        for (var start : matching.left()) {
            runs.add(proposed(start, anyWritten));
        }
        var said = new StandingStartFindings(input, runs);
        findings.addAll(said.ofDay());
        findings.addAll(said.ofRuns());
        var all = new StandingStartFigures(input, runs).all();
        return new Outcome(all.figures(), runs.stream().map(this::result).toList(), findings, all.correlations());
    }

    private StartRun written(Run run, CandidateMatching<TracedStart> matching) {
        return new StartRun(
                run,
                screen.reasonNotToCount(run),
                readings(run, StandingStart::timeReading),
                readings(run, StandingStart::distanceReading),
                matching.of(run),
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
        var variant = Variant.of("drive", drive).with("to", Target.TWENTY.id());
        var run = CandidateMatching.proposal(start, StandingStart.DECLARATION.id(), variant);
        String screened = "";
        if (start.qualifies()) {
            screened = anyWritten ? CandidateMatching.BESIDE_WRITTEN : screen.reasonNotToCount(run);
        }
        return new StartRun(run, screened, Map.of(), Map.of(), Held.found(start), Optional.empty());
    }

    private RunResult result(StartRun run) {
        return new RunResult(
                        run.run().id(),
                        run.run().variant(),
                        run.run().direction(),
                        run.run().state(),
                        run.reason().isEmpty(),
                        run.reason(),
                        run.traced()
                                .map(start ->
                                        new RunResult.Stretch(start.recording().name(), start.beginS(), start.endS())),
                        StartValues.of(run),
                        run.traced().flatMap(StartPlot::of))
                .within(input.windows().of(run.run().id()), input);
    }
}
