package org.measuredmile.trial.braking;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.RunMean;
import org.measuredmile.trial.TrialInput;

/// The figures of a braking day, each the mean of its runs.
final class BrakingFigures {
    private final TrialInput input;
    private final BrakingBudget budget;
    private final List<BrakingRun> runs;

    BrakingFigures(TrialInput input, List<BrakingRun> runs) {
        this.input = input;
        this.budget = new BrakingBudget(input);
        this.runs = List.copyOf(runs);
    }

    List<Figure> all() {
        var figures = new ArrayList<Figure>();
        for (var group : by("braking.stopping-distance").entrySet()) {
            if (group.getKey().has("method", "tape")) {
                taped(group).ifPresent(figures::add);
            } else {
                stoppingByTrace(group).ifPresent(figures::add);
            }
        }
        for (var group : by("braking.braking-distance").entrySet()) {
            if (group.getValue().stream().anyMatch(run -> run.traceValues().isPresent())) {
                figures.add(traced("braking.braking-distance", group, TraceValues::brakingDistance));
                figures.add(traced("braking.mean-deceleration", group, TraceValues::meanDeceleration));
                figures.add(traced("braking.mfdd", group, TraceValues::meanFullyDeveloped));
            }
        }
        return figures;
    }

    private SortedMap<Variant, List<BrakingRun>> by(String figure) {
        var keys = Braking.DECLARATION.requireFigure(figure).variantKeys();
        var groups = new TreeMap<Variant, List<BrakingRun>>();
        for (var run : runs) {
            if (keys.stream().allMatch(key -> run.run().variant().get(key).isPresent())) {
                groups.computeIfAbsent(run.run().variant().only(keys), _ -> new ArrayList<>())
                        .add(run);
            }
        }
        return groups;
    }

    private Optional<Figure> taped(Map.Entry<Variant, List<BrakingRun>> group) {
        var mean = mean("braking.stopping-distance", group.getKey());
        for (var run : group.getValue()) {
            boolean counts = run.screened().isEmpty() && run.tapedM().isPresent();
            mean.run(part(run, counts, run.screened(), run.tapedM()), run.run().direction());
        }
        if (!mean.hasRuns()) {
            return Optional.empty();
        }
        var counted = group.getValue().stream()
                .filter(run -> run.screened().isEmpty() && run.tape().isPresent())
                .toList();
        budget.ofTape(mean.value(), counted, counted.getFirst().nominal()).forEach(mean::common);
        mean.assumed("the whole distance goes with the square of the entry speed, inside the entry window only");
        assumeRoad(mean);
        return Optional.of(mean.figure().noting(BrakingFindings.ofStoppingDistance(mean.figure())));
    }

    private Optional<Figure> stoppingByTrace(Map.Entry<Variant, List<BrakingRun>> group) {
        var mean = mean("braking.stopping-distance", group.getKey());
        double delaySd = 0;
        var counted = new ArrayList<TraceValues>();
        for (var run : group.getValue()) {
            var takeUp = run.traceValues()
                    .flatMap(values ->
                            values.takeUp(input.instrumentOf(values.stop().recording())));
            var stopping = takeUp.map(one -> one.timeS() * run.nominal().speedMps()
                    + run.traceValues().orElseThrow().brakingDistance().value());
            boolean counts = takeUp.isPresent() && isTakeUp(takeUp.get());
            mean.run(
                    part(run, counts, stoppingReason(run, takeUp), stopping),
                    run.run().direction());
            if (counts) {
                delaySd = Math.max(delaySd, takeUp.get().delaySd());
                counted.add(run.traceValues().orElseThrow());
            }
        }
        if (!mean.hasRuns()) {
            return Optional.empty();
        }
        double nominalMps = group.getValue().getFirst().nominal().speedMps();
        double deceleration = BrakingCorrection.meanDeceleration(nominalMps, mean.value());
        mean.runsKnownWithin(BrakingBudget.ofSingleStops(counted, TraceValues::brakingDistance));
        budget.ofTrace(mean.value(), deceleration, counted, TraceValues::brakingDistance)
                .forEach(mean::common);
        mean.common(Contribution.typeB("receiver's delay", nominalMps * delaySd));
        BrakingFindings.ofSource(counted).ifPresent(mean::finding);
        assumeFit(mean, counted);
        assumeRoad(mean);
        return Optional.of(mean.figure().noting(BrakingFindings.ofStoppingDistance(mean.figure())));
    }

    private static boolean isTakeUp(TraceValues.TakeUp takeUp) {
        double slackS = 2 * StrictMath.hypot(takeUp.ownSd(), takeUp.delaySd());
        return takeUp.timeS() >= -slackS && takeUp.timeS() <= BrakingRules.MOST_TAKE_UP_S + slackS;
    }

    private static String stoppingReason(BrakingRun run, Optional<TraceValues.TakeUp> takeUp) {
        if (!run.traceReason().isEmpty()) {
            return run.traceReason();
        }
        if (takeUp.isEmpty()) {
            return "no lever channel, or one whose receiver states no delay: a trace alone gives the braking "
                    + "distance; write the delay in day.yaml, or use a tape";
        }
        return isTakeUp(takeUp.get())
                ? ""
                : "take-up of " + BrakingWords.seconds(takeUp.get().timeS()) + " is outside 0 to "
                        + BrakingWords.seconds(BrakingRules.MOST_TAKE_UP_S)
                        + ": the lever and the speed are not of one stop or one clock";
    }

    private Figure traced(
            String figure, Map.Entry<Variant, List<BrakingRun>> group, BrakingBudget.Derivation derivation) {
        var mean = mean(figure, group.getKey());
        var counted = new ArrayList<TraceValues>();
        for (var run : group.getValue()) {
            var values = run.traceValues();
            var value = values.map(one -> derivation.of(one).value());
            mean.run(
                    part(run, value.isPresent(), run.traceReason(), value),
                    run.run().direction());
            values.ifPresent(counted::add);
        }
        double deceleration = 0;
        for (var values : counted) {
            deceleration += values.meanDeceleration().value() / counted.size();
        }
        mean.runsKnownWithin(BrakingBudget.ofSingleStops(counted, derivation));
        budget.ofTrace(mean.value(), deceleration, counted, derivation).forEach(mean::common);
        BrakingFindings.ofSource(counted).ifPresent(mean::finding);
        assumeFit(mean, counted);
        assumeRoad(mean);
        return mean.figure();
    }

    private RunMean mean(String figure, Variant variant) {
        return RunMean.of(Braking.DECLARATION, figure, variant, input.scatter());
    }

    private static FigureRun part(BrakingRun run, boolean counts, String reason, Optional<Double> value) {
        return new FigureRun(
                run.run().id(),
                run.run().state(),
                counts,
                counts ? "" : reason,
                value.map(OptionalDouble::of).orElse(OptionalDouble.empty()));
    }

    private static void assumeFit(RunMean mean, List<TraceValues> counted) {
        if (counted.stream().allMatch(one -> one.stop().sharp().isPresent())) {
            mean.assumed("the accelerometer is mounted firmly, its scale right within 5 %");
            return;
        }
        var priors = BrakingRules.RECEIVER;
        mean.assumed("build-up of the brakes " + BrakingWords.number(priors.buildUpS()) + " ± "
                + BrakingWords.seconds(priors.buildUpSd()) + ", where the samples do not say better");
        mean.assumed("the receiver averages over a time that the fit finds, with a wide prior");
    }

    private void assumeRoad(RunMean mean) {
        if (input.readings().ofDay("slope").isEmpty()) {
            mean.assumed("level road, within 0.3 %");
        }
        if (input.readings().ofDay("wind-speed").isEmpty()) {
            mean.assumed("wind not above 3 m/s");
        }
    }
}
