package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.RunMean;
import org.measuredmile.trial.TrialInput;

/// Launch force and power limit of a drive, from the starts of a day, and how the two lean on each other: what the
/// road-load model takes for the bike's thrust.
final class StartThrust {
    static final String LAUNCH = "standingstart.launch-force";
    static final String POWER = "standingstart.power-limit";
    /// Where the force and the power are read, for what slope and wind do to them.
    private static final double LAUNCH_MPS = 2;
    private static final double POWER_MPS = 6;

    private final TrialInput input;
    private final Variant variant;
    private final List<StartRun> runs;
    private final List<ThrustFit.Outcome.Known> known = new ArrayList<>();
    private final List<ThrustFit.Outcome> outcomes = new ArrayList<>();
    private Optional<StartPower> moved = Optional.empty();

    StartThrust(TrialInput input, String drive, List<StartRun> runs) {
        this.input = input;
        this.variant = Variant.of("drive", drive);
        this.runs = List.copyOf(runs);
        for (var run : runs) {
            var outcome = run.thrust();
            outcomes.add(outcome);
            if (run.screened().isEmpty() && outcome instanceof ThrustFit.Outcome.Known one) {
                known.add(one);
                moved = moved.or(run::power);
            }
        }
    }

    /// Both figures with their correlation; nothing where no start tells them.
    record Pair(Figure launch, Figure power, Correlation correlation) {}

    Optional<Pair> figures() {
        if (known.isEmpty() || moved.isEmpty()) {
            return Optional.empty();
        }
        var answers = answers();
        var launch =
                figure(LAUNCH, ThrustFit.Outcome.Known::launchN, value -> shared(value, answers.launch(), LAUNCH_MPS));
        var power = figure(POWER, ThrustFit.Outcome.Known::powerW, value -> shared(value, answers.power(), POWER_MPS));
        double correlation = correlation(launch, power, ThrustAnswers.alikeByRoadLoad(answers, moved.get()));
        return Optional.of(new Pair(launch, power, new Correlation(launch.key(), power.key(), correlation)));
    }

    double launchN() {
        return mean(ThrustFit.Outcome.Known::launchN);
    }

    double powerW() {
        return mean(ThrustFit.Outcome.Known::powerW);
    }

    boolean isKnown() {
        return !known.isEmpty();
    }

    private double mean(Function<ThrustFit.Outcome.Known, ThrustFit.Found> which) {
        return known.stream()
                .mapToDouble(one -> which.apply(one).value())
                .average()
                .orElse(Double.NaN);
    }

    private interface Shared {
        List<Contribution> of(double mean);
    }

    private Figure figure(String id, Function<ThrustFit.Outcome.Known, ThrustFit.Found> which, Shared shared) {
        var mean = RunMean.of(StandingStart.DECLARATION, id, variant, input.scatter());
        double squares = 0;
        double buildUp = 0;
        for (int i = 0; i < runs.size(); i++) {
            var run = runs.get(i);
            var found = outcomes.get(i) instanceof ThrustFit.Outcome.Known one
                            && run.screened().isEmpty()
                    ? Optional.of(which.apply(one))
                    : Optional.<ThrustFit.Found>empty();
            squares += found.map(one -> one.ownSd() * one.ownSd()).orElse(0.0);
            buildUp += found.map(ThrustFit.Found::fromBuildUp).orElse(0.0) / known.size();
            mean.run(
                    new FigureRun(
                            run.run().id(),
                            run.run().state(),
                            found.isPresent(),
                            found.isPresent() ? "" : why(run, outcomes.get(i)),
                            found.map(one -> OptionalDouble.of(one.value())).orElse(OptionalDouble.empty())),
                    run.run().direction());
        }
        mean.withMatchedTails()
                .blurredBy(Math.sqrt(squares / known.size()))
                .common(Contribution.typeB("build-up of thrust (assumed)", buildUp));
        shared.of(mean.value()).forEach(mean::common);
        moved.orElseThrow().assumed().forEach(mean::assumed);
        mean.assumed("thrust is the lesser of one force and one power over the speed");
        var figure = mean.figure();
        return moved.orElseThrow().using(figure);
    }

    private static String why(StartRun run, ThrustFit.Outcome outcome) {
        if (!run.screened().isEmpty()) {
            return run.screened();
        }
        return outcome instanceof ThrustFit.Outcome.None(String reason) ? reason : "";
    }

    /// How both answer to what the fit was given, by the first start that tells them.
    private ThrustAnswers.Both answers() {
        for (int i = 0; i < runs.size(); i++) {
            if (runs.get(i).screened().isEmpty() && outcomes.get(i) instanceof ThrustFit.Outcome.Known one) {
                return ThrustAnswers.of(runs.get(i), one, moved.orElseThrow());
            }
        }
        throw new IllegalStateException("no start tells a force");
    }

    private List<Contribution> shared(double value, ThrustAnswers answers, double speedMps) {
        var with = moved.orElseThrow();
        boolean isForce = speedMps == LAUNCH_MPS;
        double perNewton = isForce ? 1 : speedMps;
        double perScale = isForce ? 1 : 2;
        var all = new ArrayList<Contribution>();
        all.add(Contribution.typeB("mass of bike and rider", Math.abs(value * answers.perKg()) * with.massSdKg()));
        all.add(Contribution.typeB(
                "turning of the wheels (assumed)", Math.abs(value * answers.perTurningKg()) * with.turningSdKg()));
        all.add(Contribution.typeB("road load", value * answers.byRoadLoad(with)));
        all.add(Contribution.typeB(
                "scale of the speed, not calibrated", perScale * value * StandingStartRules.RECEIVER_SCALE));
        all.add(Contribution.typeB("receiver's filter (assumed)", value * StandingStartRules.FORCE_FILTER));
        if (!isBothWays()) {
            all.add(Contribution.typeB(
                    "slope of the road (taken for level)",
                    perNewton * with.weightN() * StandingStartRules.LEVEL_SLOPE));
            all.add(Contribution.typeB(
                    "wind along the road",
                    perNewton
                            * with.effectiveKg()
                            * StandingStartRules.DRAG_PER_M
                            * speedMps
                            * StandingStartRules.UNKNOWN_WIND_MPS));
        }
        return all;
    }

    private boolean isBothWays() {
        return runs.stream()
                        .filter(run -> run.screened().isEmpty())
                        .map(run -> run.run().direction())
                        .distinct()
                        .count()
                == 2;
    }

    /// Inputs of one name move both the same way; scatter does so mostly, and as the fit says where it is noise.
    private double correlation(Figure launch, Figure power, Optional<Double> byRoadLoad) {
        double noise = noiseShare(LAUNCH, ThrustFit.Outcome.Known::launchN)
                * noiseShare(POWER, ThrustFit.Outcome.Known::powerW);
        double own = Math.sqrt((1 - noiseShare(LAUNCH, ThrustFit.Outcome.Known::launchN))
                * (1 - noiseShare(POWER, ThrustFit.Outcome.Known::powerW)));
        double byFit = byFit();
        return Correlation.byInputs(launch, power, input -> {
            if (input.startsWith("scatter")) {
                return own * Correlation.ofScatter(input) + Math.sqrt(noise) * byFit;
            }
            if (input.equals("road load")) {
                return byRoadLoad.orElse(0.0);
            }
            return input.startsWith("build-up") ? byFit : Correlation.ofScatter(input);
        });
    }

    /// How much of the variance that is expected between runs is noise.
    private double noiseShare(String id, Function<ThrustFit.Outcome.Known, ThrustFit.Found> which) {
        double noise = known.stream()
                .mapToDouble(one -> which.apply(one).ownSd() * which.apply(one).ownSd())
                .average()
                .orElse(0);
        double own =
                input.scatter().of(StandingStart.DECLARATION.requireFigure(id)).betweenRunsAt(mean(which));
        return noise == 0 ? 0 : noise / (noise + own * own);
    }

    private double byFit() {
        return known.stream()
                .mapToDouble(ThrustFit.Outcome.Known::correlation)
                .average()
                .orElse(0);
    }
}
