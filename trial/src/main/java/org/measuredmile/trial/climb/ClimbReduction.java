package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.CandidateMatching;
import org.measuredmile.trial.CandidateMatching.Held;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunScreen;
import org.measuredmile.trial.TrialInput;

/// One day's climbs to figures: find them in the recordings, match them to the written runs, screen, time, average,
/// and bring to reference.
final class ClimbReduction {
    private final TrialInput input;
    private final RunScreen screen;

    ClimbReduction(TrialInput input) {
        this.input = input;
        this.screen = new RunScreen(Climb.DECLARATION, input);
    }

    Outcome outcome() {
        var matching = CandidateMatching.of(input, new ClimbSearch(input));
        boolean isFound = matching.left().stream().anyMatch(TracedClimb::qualifies);
        if (input.runs().isEmpty() && !isFound) {
            return new Outcome(List.of(), List.of(), List.of());
        }
        var findings = new ArrayList<Finding>();
        findings.addAll(screen.findings());
        findings.addAll(matching.findings());
        var runs = new ArrayList<ClimbRun>();
        for (var run : input.runs()) {
            var hill = Hill.of(input, run);
            runs.add(new ClimbRun(input, run, hill, screen.reasonNotToCount(run), matching.of(run)));
        }
        boolean anyWritten = !runs.isEmpty();
        for (var climb : matching.left()) {
            runs.add(proposed(climb, anyWritten));
        }
        var figures = new ClimbFigures(input, runs);
        var all = new ArrayList<>(figures.all());
        var reference = new ReferenceFigures(input, figures);
        all.addAll(reference.all());
        var gains = PedallingGain.of(figures, all);
        gains.forEach(gain -> all.add(gain.figure()));
        all.addAll(SteepestStart.of(input, runs));
        var foretold = ForetoldClimb.of(input, figures.groups());
        foretold.forEach(one -> all.add(one.figure()));
        var said = new ClimbFindings(input, runs);
        findings.addAll(said.ofDay());
        findings.addAll(said.ofRuns());
        findings.addAll(new ImpliedLengths(runs).findings());
        findings.addAll(GradeAgreement.of(input, runs));
        findings.addAll(figures.findings());
        findings.addAll(reference.findings());
        gains.forEach(gain -> findings.add(gain.finding()));
        foretold.forEach(one -> findings.add(one.finding()));
        return new Outcome(all, runs.stream().map(this::result).toList(), findings);
    }

    /// A climb that no written run claims: proposed to a person, and counted meanwhile only where nobody wrote any
    /// run. Its drive cannot be told from its speed.
    private ClimbRun proposed(TracedClimb climb, boolean anyWritten) {
        String drive = input.bike().drive().equals("pedal") ? "pedal" : "throttle";
        var hill = Hill.of(climb.course());
        var variant = Variant.of("drive", drive);
        var run = CandidateMatching.proposal(climb, Climb.DECLARATION.id(), variant);
        String screened = "";
        if (climb.qualifies()) {
            screened = anyWritten ? CandidateMatching.BESIDE_WRITTEN : screen.reasonNotToCount(run);
        }
        return new ClimbRun(input, run, hill, screened, Held.found(climb));
    }

    private RunResult result(ClimbRun run) {
        Run written = run.run();
        return new RunResult(
                        written.id(),
                        written.variant(),
                        written.direction(),
                        written.state(),
                        run.counts(),
                        run.reason(),
                        run.traced()
                                .map(climb ->
                                        new RunResult.Stretch(climb.recording().name(), climb.beginS(), climb.endS())),
                        ClimbValues.of(run),
                        run.traced().flatMap(ClimbPlot::of))
                .within(input.windows().of(written.id()), input);
    }
}
