package org.measuredmile.trial.coastdown;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.CandidateMatching;
import org.measuredmile.trial.CandidateMatching.Held;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunScreen;
import org.measuredmile.trial.TrialInput;

/// One day's coasts to figures: find them, match them to the written runs, pair them, solve the pairs, average.
final class CoastdownReduction {
    private static final double KMH = 3.6;

    private final TrialInput input;
    private final RunScreen screen;
    private final List<Finding> findings = new ArrayList<>();

    CoastdownReduction(TrialInput input) {
        this.input = input;
        this.screen = new RunScreen(Coastdown.DECLARATION, input);
    }

    Outcome outcome() {
        var matching = CandidateMatching.of(input, new CoastSearch());
        var found = matching.left().stream().filter(this::isWorthAWord).toList();
        if (input.runs().isEmpty() && found.isEmpty()) {
            return new Outcome(List.of(), List.of(), matching.findings());
        }
        findings.addAll(screen.findings());
        findings.addAll(matching.findings());
        var runs = new ArrayList<CoastRun>();
        for (var run : input.runs()) {
            runs.add(written(run, matching.of(run)));
        }
        boolean anyWritten = !runs.isEmpty();
        var headings = new CoastHeadings(runs);
        for (var coast : found) {
            runs.add(proposed(coast, anyWritten, headings));
        }
        var pairs = pairs(runs);
        var byRun = byRun(pairs);
        var figures = new CoastdownFigures(input, runs, pairs);
        findings.addAll(figures.findings());
        return new Outcome(
                figures.all(),
                runs.stream()
                        .map(run -> result(
                                run, Optional.ofNullable(byRun.get(run.run().id()))))
                        .toList(),
                findings,
                figures.correlations());
    }

    /// Falls of speed in a recording that nobody gave to this trial are rides, not coasts: of them only those
    /// are spoken of that could be used.
    private boolean isWorthAWord(TracedCoast coast) {
        return coast.qualifies() || !input.runsIn(coast.recording()).isEmpty();
    }

    private CoastRun written(Run run, Held<TracedCoast> held) {
        var timed = timed(run);
        var coast = held.candidate();
        var usable = coast.filter(TracedCoast::qualifies);
        String reason = screen.reasonNotToCount(run);
        if (reason.isEmpty() && usable.isEmpty() && timed.isEmpty()) {
            reason = coast.map(TracedCoast::reason)
                    .orElse(
                            held.whyNone().isEmpty()
                                    ? "neither a coast in a recording nor times by hand"
                                    : held.whyNone());
        }
        if (reason.isEmpty() && run.direction().isEmpty()) {
            reason = "the direction is not written down: out or back";
        }
        return new CoastRun(
                run, run.direction(), reason, timed.isEmpty() ? coast : usable, timed, RoadSetting.of(input, run));
    }

    /// Two splits off a watch are three speeds at three times.
    private Optional<CoastRun.Timed> timed(Run run) {
        var first = input.readings().of(run.id(), "time-from-30-to-20-kmh");
        var second = input.readings().of(run.id(), "time-from-20-to-10-kmh");
        if (first.isEmpty() || second.isEmpty()) {
            return Optional.empty();
        }
        double one = first.get().si();
        double two = second.get().si();
        double step = Math.max(first.get().resolution(), second.get().resolution()) / Math.sqrt(12);
        double splitSdS = StrictMath.hypot(CoastdownRules.HAND_S, step);
        return Optional.of(new CoastRun.Timed(
                new double[] {0, one, one + two}, new double[] {30 / KMH, 20 / KMH, 10 / KMH}, splitSdS));
    }

    /// A coast that no written run claims is proposed and never counts by itself: its speed alone does not tell it
    /// from soft pedalling or a dragging brake.
    private CoastRun proposed(TracedCoast coast, boolean anyWritten, CoastHeadings headings) {
        var run = CandidateMatching.proposal(coast, Coastdown.DECLARATION.id(), Variant.NONE);
        String reason = coast.reason();
        if (reason.isEmpty()) {
            reason = anyWritten
                    ? CandidateMatching.BESIDE_WRITTEN
                    : "nobody wrote that this was a coast, and its speed alone does not tell it from soft "
                            + "pedalling or a"
                            + " dragging brake; write it into runs.csv to count it";
        }
        return new CoastRun(
                run,
                headings.directionOf(coast),
                reason,
                Optional.of(coast),
                Optional.empty(),
                RoadSetting.of(input, run));
    }

    /// Each coast out with the next one back, or a coast back with the next one out, in the order ridden.
    private List<CoastPair> pairs(List<CoastRun> runs) {
        var pairs = new ArrayList<CoastPair>();
        Optional<CoastRun> waiting = Optional.empty();
        for (var run : runs) {
            if (!run.isUsable()) {
                continue;
            }
            if (waiting.isPresent()
                    && !waiting.get().direction().equals(run.direction())
                    && waiting.get().isByHand() == run.isByHand()) {
                boolean outFirst = waiting.get().direction().equals("out");
                var out = outFirst ? waiting.get() : run;
                var back = outFirst ? run : waiting.get();
                pairs.add(CoastPair.solved(out, back));
                waiting = Optional.empty();
            } else {
                waiting = Optional.of(run);
            }
        }
        return pairs;
    }

    private static Map<String, CoastPair> byRun(List<CoastPair> pairs) {
        var byRun = new HashMap<String, CoastPair>();
        for (var pair : pairs) {
            byRun.put(pair.out().run().id(), pair);
            byRun.put(pair.back().run().id(), pair);
        }
        return byRun;
    }

    static String reason(CoastRun run, Optional<CoastPair> pair) {
        if (!run.reason().isEmpty()) {
            return run.reason();
        }
        return pair.map(CoastPair::reason)
                .orElse("no coast the other way to pair it with; one way alone gives nothing");
    }

    private RunResult result(CoastRun run, Optional<CoastPair> pair) {
        String reason = reason(run, pair);
        var result = new RunResult(
                        run.run().id(),
                        run.run().variant(),
                        run.direction(),
                        run.run().state(),
                        reason.isEmpty(),
                        reason,
                        run.traced()
                                .map(coast ->
                                        new RunResult.Stretch(coast.recording().name(), coast.beginS(), coast.endS())),
                        List.of(),
                        CoastPlot.of(run, pair))
                .within(input.windows().of(run.run().id()), input);
        return pair.filter(CoastPair::counts)
                .map(one -> withValues(result, one))
                .orElse(result);
    }

    /// Both runs of a pair show what the pair gave.
    private static RunResult withValues(RunResult result, CoastPair pair) {
        var load = pair.found().orElseThrow().load();
        var with = result;
        for (int kmh : Coastdown.SPEEDS_KMH) {
            with = with.with(
                    figure("force-at-" + kmh + "-kmh"),
                    pair.forceN(kmh / KMH, CoastPair.setting(pair.out(), pair.back()))
                            .orElse(Double.NaN));
        }
        double told = pair.tellsApart() ? 1 : Double.NaN;
        return with.with(figure("rolling-coefficient"), told * load.rollingCoefficient())
                .with(figure("drag-area"), told * load.dragAreaM2());
    }

    private static FigureSpec figure(String name) {
        return Coastdown.DECLARATION.requireFigure("coastdown." + name);
    }
}
