package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.recording.motion.SecondMeans.Span;
import org.measuredmile.recording.motion.SteadyPieces;
import org.measuredmile.recording.motion.WanderMixture;
import org.measuredmile.recording.motion.WanderMixture.MeanSpeed;
import org.measuredmile.trial.LevelRole;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunResult.RunValue;

/// From one recording to passes at levels: the announced order where several runs are in it, all steady stretches for
/// the one level where a single run is, and proposals where nobody said.
final class RecordedLevels {
    private final SpeedTrace trace;
    private final AssistSpeedRules rules;
    private final LevelFigures figures;
    private final List<LevelPass> passes = new ArrayList<>();
    private final List<RunResult> results = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    /// A run of the recording with the reason against it that was known before riding; empty when there is none.
    record Announced(Run run, String reason) {}

    RecordedLevels(SpeedTrace trace, AssistSpeedRules rules, LevelFigures figures) {
        this.trace = trace;
        this.rules = rules;
        this.figures = figures;
        findings.addAll(trace.findings());
    }

    List<LevelPass> passes() {
        return passes;
    }

    List<RunResult> results() {
        return results;
    }

    List<Finding> findings() {
        return findings;
    }

    private String file() {
        return trace.recording().name();
    }

    /// Several levels in the order they were announced.
    void inOrder(List<Announced> runs) {
        var speed = trace.seconds().speedMps();
        var found = AnnouncedPlateaus.upTo(runs.size() + 1, speed, trace.moving(rules, rules.longestPauseS()), rules);
        if (found.size() < runs.size()) {
            String words = found.size() + " steady levels of " + AssistSpeedWords.seconds(rules.leastHeldS())
                    + " can be found, " + runs.size() + " were announced";
            findings.add(Finding.refused(
                    "levels-not-found",
                    Place.in(file()),
                    words,
                    "hold each level for half a minute, or void what was not ridden"));
            runs.forEach(one -> results.add(RunResult.of(one.run(), reasonOr(one, words), List.of())));
            return;
        }
        checkNumber(found, runs.size());
        var plateaus = found.get(runs.size() - 1).plateaus();
        var stretches = new ArrayList<SteadyStretch>();
        for (int k = 0; k < runs.size(); k++) {
            String name = AssistSpeed.levelWords(runs.get(k).run().variant());
            stretches.add(SteadyStretch.judged(trace.seconds(), plateaus.get(k), name, rules));
        }
        var means = means(stretches);
        for (int k = 0; k < runs.size(); k++) {
            addPass(runs.get(k), stretches.get(k), means.get(k));
        }
    }

    private static String reasonOr(Announced one, String words) {
        return one.reason().isEmpty() ? words : one.reason();
    }

    /// Whether another number of levels would explain the trace better by more than its extra freedom is worth.
    private void checkNumber(List<AnnouncedPlateaus.Found> found, int announced) {
        double penalty = rules.changePenalty(trace.seconds().size());
        int best = announced;
        for (int k = Math.max(1, announced - 1); k <= found.size(); k++) {
            double cost = found.get(k - 1).cost() + penalty * k;
            double ofBest = found.get(best - 1).cost() + penalty * best;
            best = cost < ofBest ? k : best;
        }
        if (best != announced) {
            findings.add(Finding.warning(
                    "levels-differ",
                    Place.in(file()),
                    announced + " levels were announced; " + best + " explain the trace better",
                    best < announced
                            ? "two neighbours may be one speed; look at the match and say what was ridden"
                            : "a level may be missing from runs.csv; look at the match and say what was ridden"));
        }
    }

    private List<Optional<MeanSpeed>> means(List<SteadyStretch> stretches) {
        var counting = stretches.stream()
                .filter(SteadyStretch::counts)
                .map(this::samples)
                .toList();
        var means = (counting.isEmpty() ? List.<MeanSpeed>of() : WanderMixture.means(counting)).iterator();
        return stretches.stream()
                .map(one -> one.counts() ? Optional.of(means.next()) : Optional.<MeanSpeed>empty())
                .toList();
    }

    private WanderMixture.Stretch samples(SteadyStretch stretch) {
        double[] times = new double[stretch.kept().length];
        for (int i = 0; i < times.length; i++) {
            times[i] = stretch.kept()[i];
        }
        return new WanderMixture.Stretch(times, trace.seconds().at(stretch.kept()));
    }

    private void addPass(Announced one, SteadyStretch stretch, Optional<MeanSpeed> mean) {
        String reason = reasonOr(one, stretch.refusal());
        var values = mean.map(m -> List.of(value("speed", "speed", m.speedMps(), m.standardUncertaintyMps())))
                .orElse(List.of());
        results.add(result(one.run(), reason, stretch.span(), values, List.of(stretch)));
        if (reason.isEmpty() && mean.isPresent()) {
            var m = mean.get();
            passes.add(new LevelPass(
                    one.run(),
                    LevelRole.levelOf(one.run().variant()),
                    m.speedMps(),
                    m.standardUncertaintyMps(),
                    m.degreesOfFreedom(),
                    trace.scale(),
                    Headings.of(trace.recording(), trace.seconds(), List.of(stretch)),
                    power(List.of(stretch))));
        }
    }

    /// One level for the whole recording: every steady stretch belongs to it.
    void allOf(Announced one) {
        var stretches = steady(AssistSpeed.levelWords(one.run().variant()));
        var means = means(stretches);
        var counting = stretches.stream().filter(SteadyStretch::counts).toList();
        var known = means.stream().flatMap(Optional::stream).toList();
        String none = stretches.isEmpty()
                ? "no stretch of " + AssistSpeedWords.seconds(rules.leastHeldS()) + " at one speed"
                : "none of " + stretches.size() + " stretches counts: "
                        + stretches.getFirst().refusal();
        String reason = !one.reason().isEmpty() ? one.reason() : counting.isEmpty() ? none : "";
        var span = new Span(0, trace.seconds().size());
        if (counting.isEmpty()) {
            results.add(result(one.run(), reason, span, List.of(), stretches));
        } else {
            var whole = StretchMean.of(counting, known);
            var value = value("speed", "speed", whole.speedMps(), whole.standardUncertaintyMps());
            results.add(result(one.run(), reason, span, List.of(value), stretches));
            if (reason.isEmpty()) {
                passes.add(new LevelPass(
                        one.run(),
                        LevelRole.levelOf(one.run().variant()),
                        whole.speedMps(),
                        whole.standardUncertaintyMps(),
                        whole.degreesOfFreedom(),
                        trace.scale(),
                        Headings.of(trace.recording(), trace.seconds(), counting),
                        power(counting)));
            }
        }
        for (int i = 0; i < stretches.size(); i++) {
            var run = part(one.run(), i + 1);
            String against = one.reason().isEmpty() ? stretches.get(i).refusal() : one.reason();
            results.add(result(
                    run, against, stretches.get(i).span(), values(means.get(i), run.id()), List.of(stretches.get(i))));
        }
    }

    /// Nobody said what was ridden: steady stretches are proposed, without a level.
    void proposed(String against) {
        var stretches = steady("this stretch");
        var means = means(stretches);
        for (int i = 0; i < stretches.size(); i++) {
            var stretch = stretches.get(i);
            String reason = against.isEmpty() ? stretch.refusal() : against;
            var run = proposal(stretch.span());
            results.add(result(run, reason, stretch.span(), values(means.get(i), run.id()), List.of(stretch)));
        }
    }

    private List<RunValue> values(Optional<MeanSpeed> mean, String run) {
        if (mean.isEmpty()) {
            return List.of();
        }
        var m = mean.get();
        return figures.alone(m, trace.scale(), run);
    }

    private List<SteadyStretch> steady(String name) {
        var moving = trace.moving(rules, rules.longestGapS());
        int seconds = moving.stream()
                .mapToInt(span -> trace.seconds().presentIn(span).length)
                .sum();
        double penalty = rules.changePenalty(seconds);
        return SteadyPieces.of(trace.seconds().speedMps(), moving, penalty, rules.mergeBelowMps()).stream()
                .filter(span -> span.lengthS() >= rules.leastShownS())
                .map(span -> SteadyStretch.judged(trace.seconds(), span, name, rules))
                .toList();
    }

    private static Run part(Run run, int number) {
        return new Run(
                run.id() + "/" + number,
                run.trial(),
                run.variant(),
                run.rider(),
                run.start(),
                run.course(),
                run.direction(),
                run.state(),
                run.reason(),
                run.note(),
                run.place());
    }

    /// Named by its time, so that it keeps its name when its neighbours become runs.
    private Run proposal(Span span) {
        return new Run(
                file() + "/" + (int) trace.seconds().timeS(span.from()) + " s",
                AssistSpeed.ID,
                Variant.NONE,
                "",
                Optional.empty(),
                "",
                "",
                Run.State.PROPOSED,
                "",
                "",
                Place.in(file()));
    }

    static RunValue value(String name, String title, double mps, double standardUncertaintyMps) {
        return new RunValue(name, title, QuantityKind.SPEED, mps, standardUncertaintyMps);
    }

    private RunResult result(Run run, String reason, Span span, List<RunValue> values, List<SteadyStretch> stretches) {
        var means = trace.seconds();
        double fromS = means.timeS(span.from());
        return new RunResult(
                run.id(),
                run.variant(),
                run.direction(),
                run.state(),
                reason.isEmpty(),
                reason,
                Optional.of(new RunResult.Stretch(file(), fromS, means.timeS(span.to()))),
                values,
                Optional.of(LevelPlot.of(file(), means, span, stretches)));
    }

    private double power(List<SteadyStretch> stretches) {
        var channel = trace.recording().channel(ChannelKind.POWER);
        double sum = 0;
        int count = 0;
        for (var stretch : stretches) {
            double fromS = trace.seconds().timeS(stretch.span().from());
            double toS = trace.seconds().timeS(stretch.span().to());
            for (double watt :
                    channel.map(one -> one.between(fromS, toS).values()).orElse(new double[0])) {
                sum += watt;
                count++;
            }
        }
        return count == 0 ? Double.NaN : sum / count;
    }

    /// The run's own rider power where it was recorded, for saying so.
    static OptionalDouble recordedPower(LevelPass pass) {
        return Double.isNaN(pass.powerW()) ? OptionalDouble.empty() : OptionalDouble.of(pass.powerW());
    }
}
