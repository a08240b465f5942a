package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.RecordingPart;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.MatchedTails;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunMean;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunResult.Stretch;
import org.measuredmile.trial.RunScreen;
import org.measuredmile.trial.RunWindows;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.assistspeed.RecordedLevels.Announced;

/// A day's assist levels, from recordings and readings to figures.
final class AssistSpeedReduction {
    private final TrialInput input;
    private final AssistSpeedRules rules;
    private final RunScreen screen;
    private final CutOffs cutOffs;
    private final LevelFigures figures;
    private final RunWindows windows;
    private final List<LevelPass> passes = new ArrayList<>();
    private final Map<String, RunResult> byRun = new LinkedHashMap<>();
    private final List<RunResult> stretches = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    AssistSpeedReduction(TrialInput input, AssistSpeedRules rules) {
        this.input = input;
        this.rules = rules;
        this.screen = new RunScreen(AssistSpeed.DECLARATION, input);
        this.cutOffs = new CutOffs(cutOffs());
        this.figures = new LevelFigures(input, rules, cutOffs);
        this.windows = input.windows();
    }

    Outcome outcome() {
        findings.addAll(screen.findings());
        var runsOf = RunsInRecordings.of(input, findings);
        for (var recording : input.recordingsToSearch()) {
            if (runsOf.containsKey(recording.name())) {
                read(windows.outside(recording), runsOf.get(recording.name()));
            }
        }
        for (var run : input.runs()) {
            windows.of(run.id()).ifPresent(stretch -> readSet(run, stretch));
        }
        var typed = new TypedLevels(input);
        for (var pass : passes) {
            typed.disagreement(pass).ifPresent(findings::add);
        }
        for (var run : input.runs()) {
            readTyped(run, typed);
        }
        var results = Gains.valued(inOrder());
        var made = new ArrayList<>(Gains.noted(figures.of(passes, results)));
        made.addAll(new LevelsAtReference(input, cutOffs).of(made, passes));
        made.addAll(cutOffs.figures());
        return new Outcome(made, results, findings);
    }

    private List<RunResult> inOrder() {
        var ordered = new ArrayList<RunResult>();
        for (var run : input.runs()) {
            String none = "no recording of it and no speed was written down";
            ordered.add(byRun.getOrDefault(run.id(), RunResult.of(run, reasonOf(run, none), List.of()))
                    .within(windows.of(run.id()), input));
            stretches.stream()
                    .filter(one -> one.run().startsWith(run.id() + "/"))
                    .forEach(ordered::add);
        }
        stretches.stream()
                .filter(one -> input.runs().stream().noneMatch(run -> one.run().startsWith(run.id() + "/")))
                .forEach(ordered::add);
        return ordered;
    }

    private String reasonOf(Run run, String otherwise) {
        String reason = screen.reasonNotToCount(run);
        if (!reason.isEmpty()) {
            return reason;
        }
        return AssistSpeed.saysItsLevel(run.variant()) ? otherwise : "its variant does not say which level";
    }

    /// A run whose ends a person set: steady stretches between them are of its level, whatever lies outside.
    private void readSet(Run run, Stretch stretch) {
        var recording = input.recordings().get(stretch.recording());
        if (recording == null) {
            String lost = "the recording " + stretch.recording() + ", which holds its ends, could not be read";
            byRun.put(run.id(), RunResult.of(run, reasonOf(run, lost), List.of()));
            return;
        }
        var part = RecordingPart.between(recording, stretch.fromS(), stretch.toS());
        switch (SpeedTrace.of(part, input.instrumentOf(recording), rules)) {
            case SpeedTrace.Read.Refused(Finding finding) -> {
                String why = RunWindows.words(stretch) + ": " + finding.message();
                byRun.put(run.id(), RunResult.of(run, reasonOf(run, why), List.of()));
            }
            case SpeedTrace.Read.Usable(SpeedTrace trace) -> {
                var levels = new RecordedLevels(trace, rules, figures);
                levels.allOf(new Announced(run, reasonOf(run, "")));
                keep(levels);
            }
        }
    }

    private void read(Recording recording, List<Run> runs) {
        boolean isAllSet = runs.isEmpty()
                && windows.byRun().values().stream()
                        .anyMatch(one -> one.recording().equals(recording.name()));
        switch (SpeedTrace.of(recording, input.instrumentOf(recording), rules)) {
            case SpeedTrace.Read.Refused(Finding finding) -> {
                if (!isAllSet) {
                    findings.add(finding);
                }
                runs.forEach(run ->
                        byRun.put(run.id(), RunResult.of(run, reasonOf(run, finding.message()), List.of())));
            }
            case SpeedTrace.Read.Usable(SpeedTrace trace) -> read(trace, runs);
        }
    }

    private void read(SpeedTrace trace, List<Run> runs) {
        var levels = new RecordedLevels(trace, rules, figures);
        var announced =
                runs.stream().map(run -> new Announced(run, reasonOf(run, ""))).toList();
        if (announced.isEmpty()) {
            levels.proposed(windTooStrong());
        } else if (announced.size() == 1) {
            levels.allOf(announced.getFirst());
        } else {
            levels.inOrder(announced);
        }
        keep(levels);
    }

    private void keep(RecordedLevels levels) {
        passes.addAll(levels.passes());
        findings.addAll(levels.findings());
        for (var result : levels.results()) {
            if (result.run().contains("/")) {
                stretches.add(result);
            } else {
                byRun.put(result.run(), result);
            }
        }
    }

    /// The day's wind against the trial's limit, for stretches that are nobody's run yet.
    private String windTooStrong() {
        return input.readings()
                .ofDay("wind-speed")
                .filter(wind -> wind.si() > rules.mostWindMps())
                .map(wind -> "wind " + AssistSpeedWords.speed(wind.si()) + ", at most "
                        + AssistSpeedWords.speed(rules.mostWindMps()))
                .orElse("");
    }

    private void readTyped(Run run, TypedLevels typed) {
        var read = typed.speedOf(run);
        boolean isRecorded = byRun.containsKey(run.id())
                && byRun.get(run.id()).value("speed").isPresent();
        if (read.isEmpty() || isRecorded) {
            return;
        }
        String reason = reasonOf(run, "");
        byRun.put(run.id(), typed.result(run, reason, read.get()));
        if (reason.isEmpty()) {
            passes.add(typed.pass(run, read.get()));
        }
    }

    /// The cut-off speeds that were noted, by drive.
    private List<Figure> cutOffs() {
        var figures = new ArrayList<Figure>();
        for (var drive : List.of("pedal", "throttle")) {
            var mean = RunMean.of(
                    AssistSpeed.DECLARATION,
                    AssistSpeed.CUT_OFF,
                    org.measuredmile.recording.day.Variant.of("drive", drive),
                    input.scatter());
            for (var run : input.runs()) {
                var read = input.readings().of(run.id(), "cut-off");
                if (read.isPresent() && run.variant().has("drive", drive)) {
                    String reason = reasonOf(run, "");
                    mean.run(
                            new FigureRun(
                                    run.id(),
                                    run.state(),
                                    reason.isEmpty(),
                                    reason,
                                    OptionalDouble.of(read.get().si())),
                            run.direction());
                }
            }
            mean.firstCounted()
                    .flatMap(run -> input.readings().of(run, "cut-off"))
                    .ifPresent(read -> mean.readOff(read, 1, SpeedScale.of(read).relative()));
            mean.figureIfAny()
                    .map(figure -> MatchedTails.of(figure, "between days"))
                    .ifPresent(figures::add);
        }
        return figures;
    }
}
