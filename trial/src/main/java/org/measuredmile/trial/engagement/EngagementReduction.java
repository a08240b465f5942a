package org.measuredmile.trial.engagement;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.CandidateMatching;
import org.measuredmile.trial.CandidateMatching.Held;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.LevelRole;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunMean;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunResult.RunValue;
import org.measuredmile.trial.RunScreen;
import org.measuredmile.trial.TrialInput;

/// A day's pushes to figures: find, match, fit, average by level. See [Engagement].
final class EngagementReduction {
    private final TrialInput input;
    private final RunScreen screen;

    EngagementReduction(TrialInput input) {
        this.input = input;
        this.screen = new RunScreen(Engagement.DECLARATION, input);
    }

    Outcome outcome() {
        var matching = CandidateMatching.of(input, new PushFinder());
        if (input.runs().isEmpty() && matching.left().isEmpty()) {
            return new Outcome(List.of(), List.of(), matching.findings());
        }
        var findings = new ArrayList<Finding>(screen.findings());
        findings.addAll(matching.findings());
        var runs = new ArrayList<EngagementRun>();
        for (var run : input.runs()) {
            runs.add(new EngagementRun(run, screen.reasonNotToCount(run), matching.of(run), input));
        }
        boolean anyWritten = !runs.isEmpty();
        for (var push : matching.left()) {
            runs.add(proposed(push, anyWritten));
        }
        var byLevel = new TreeMap<Variant, List<EngagementRun>>();
        for (var run : runs) {
            byLevel.computeIfAbsent(level(run.run()), _ -> new ArrayList<>()).add(run);
        }
        var figures = new ArrayList<Figure>();
        byLevel.forEach((level, of) -> Engagement.DECLARATION
                .figures()
                .forEach(spec -> mean(spec, level, of).ifPresent(figures::add)));
        return new Outcome(figures, runs.stream().map(this::result).toList(), findings);
    }

    /// A push that no written run claims. Nothing in it tells the level.
    private EngagementRun proposed(TracedPush push, boolean anyWritten) {
        var run = CandidateMatching.proposal(push, Engagement.DECLARATION.id(), Variant.NONE);
        String screened = push.qualifies() && anyWritten ? CandidateMatching.BESIDE_WRITTEN : "";
        return new EngagementRun(run, screened, Held.found(push), input);
    }

    private Variant level(Run run) {
        return LevelRole.with(LevelRole.levelOf(run.variant()), input.bike(), input.runs())
                .only(List.of("level", "levelRole"));
    }

    private Optional<Figure> mean(FigureSpec spec, Variant level, List<EngagementRun> runs) {
        var mean = RunMean.of(Engagement.DECLARATION, spec.id(), level, input.scatter());
        double squares = 0;
        double shared = 0;
        int counted = 0;
        for (var run : runs) {
            var part = run.part(spec);
            if (part.isPresent()) {
                String reason = run.reason();
                mean.run(
                        new FigureRun(
                                run.run().id(),
                                run.run().state(),
                                reason.isEmpty(),
                                reason,
                                java.util.OptionalDouble.of(part.get().value())),
                        run.run().direction());
                if (reason.isEmpty()) {
                    squares += part.get().sd() * part.get().sd();
                    shared += part.get().sharedSd();
                    counted++;
                }
            }
        }
        if (counted > 0) {
            mean.common(Contribution.typeB("fit or reading of each run", Math.sqrt(squares) / counted));
            mean.common(Contribution.typeB("speed's scale, and what the push adds to it (assumed)", shared / counted));
        }
        if (spec.equals(Engagement.OVERRUN_DISTANCE)) {
            mean.answering(speedMps(runs) / EngagementRules.USUAL_MPS);
        }
        return mean.figureIfAny();
    }

    /// How much further the bike goes for a second more of overrun, as a mean over those that count: their own mean
    /// speed, and what the push has added to it by their end; the usual one where no run has way and time.
    private static double speedMps(List<EngagementRun> runs) {
        return runs.stream()
                .filter(run -> run.reason().isEmpty())
                .flatMap(run -> run
                        .part(Engagement.OVERRUN_DISTANCE)
                        .flatMap(way -> run.part(Engagement.OVERRUN_TIME)
                                .filter(time -> time.value() > 0)
                                .map(time ->
                                        way.value() / time.value() + EngagementRules.PUSHED_ON_MPS2 * time.value() / 2))
                        .stream())
                .mapToDouble(Double::doubleValue)
                .average()
                .orElse(EngagementRules.USUAL_MPS);
    }

    private RunResult result(EngagementRun run) {
        var values = new ArrayList<RunValue>();
        for (var spec : Engagement.DECLARATION.figures()) {
            run.part(spec)
                    .ifPresent(part ->
                            values.add(new RunValue(spec.name(), spec.title(), spec.kind(), part.value(), part.sd())));
        }
        var push = run.held().candidate();
        return new RunResult(
                        run.run().id(),
                        run.run().variant(),
                        run.run().direction(),
                        run.run().state(),
                        run.reason().isEmpty(),
                        run.reason(),
                        push.map(one -> new RunResult.Stretch(one.recording().name(), one.beginS(), one.endS())),
                        values,
                        push.map(PushPlot::of))
                .within(input.windows().of(run.run().id()), input);
    }
}
