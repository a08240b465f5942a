package org.measuredmile.desk.coverage;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.IntConsumer;
import org.measuredmile.demo.ride.SimulatedDay;
import org.measuredmile.demo.ride.SimulatedDay.Truth;
import org.measuredmile.demo.ride.SimulatedTrial;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.quantity.statistics.StudentT;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.recording.reader.Readers;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.ReadingResolver;
import org.measuredmile.trial.ScatterRecord;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.Trials;

/// Simulates days, reduces them, and counts how often both intervals hold the truth.
///
/// Shape: the same trial, seed and number of days give the same counts.
public final class CoverageStudy {
    private final SortedMap<String, Tally> tallies = new TreeMap<>();
    private final SimulatedTrial simulated;
    private final long seed;
    private final int days;

    private CoverageStudy(SimulatedTrial simulated, long seed, int days) {
        this.simulated = simulated;
        this.seed = seed;
        this.days = days;
    }

    /// Runs a study; `progress` is told how many days are done.
    public static List<Coverage> run(SimulatedTrial simulated, long seed, int days, IntConsumer progress) {
        var study = new CoverageStudy(simulated, seed, days);
        for (int i = 0; i < days; i++) {
            study.add(simulated.day(new Seed(seed), i));
            progress.accept(i + 1);
        }
        return study.tallies.values().stream().map(study::coverage).toList();
    }

    private void add(SimulatedDay day) {
        var recordings = decoded(day);
        Map<String, Outcome> outcomes = new TreeMap<>();
        for (var truth : day.truths()) {
            var trial = Trials.delivering(truth.figure())
                    .orElseThrow(() -> new IllegalStateException("no trial delivers " + truth.figure()));
            var outcome = outcome(trial, day, recordings, outcomes);
            var tally = tallies.computeIfAbsent(
                    truth.figure() + " " + truth.variant().text(), _ -> new Tally(trial, truth));
            figure(outcome, truth).ifPresent(figure -> tally.add(figure, truth));
        }
    }

    /// A trial's outcome, after those of the trials that it uses.
    static Outcome outcome(
            Trial trial, SimulatedDay day, SortedMap<String, Recording> recordings, Map<String, Outcome> outcomes) {
        var declaration = trial.declaration();
        var done = outcomes.get(declaration.id());
        if (done != null) {
            return done;
        }
        var used = new TreeMap<FigureKey, Figure>();
        var correlations = new ArrayList<Correlation>();
        for (var use : declaration.uses()) {
            Trials.delivering(use.figure())
                    .filter(other -> !other.equals(trial))
                    .ifPresent(other -> {
                        var of = outcome(other, day, recordings, outcomes);
                        correlations.addAll(of.correlations());
                        of.figures().stream()
                                .filter(figure -> figure.key().figure().equals(use.figure()))
                                .forEach(figure -> used.put(figure.key(), figure));
                    });
        }
        var outcome = trial.reduce(input(trial, day, recordings, used, correlations));
        outcomes.put(declaration.id(), outcome);
        return outcome;
    }

    static SortedMap<String, Recording> decoded(SimulatedDay day) {
        var recordings = new TreeMap<String, Recording>();
        for (var file : day.recordings().entrySet()) {
            try {
                switch (Readers.decode(file.getKey(), new ByteArrayInputStream(file.getValue()))) {
                    case Decoding.Decoded(Recording recording) -> recordings.put(file.getKey(), recording);
                    case Decoding.Refused refused ->
                        throw new IllegalStateException(file.getKey() + ": " + refused.findings());
                }
            } catch (IOException broken) {
                throw new UncheckedIOException(file.getKey() + " in memory", broken);
            }
        }
        return recordings;
    }

    private static TrialInput input(
            Trial trial,
            SimulatedDay day,
            SortedMap<String, Recording> recordings,
            SortedMap<FigureKey, Figure> used,
            List<Correlation> correlations) {
        var declaration = trial.declaration();
        var runs = day.day().runs().stream()
                .filter(run -> run.trial().equals(declaration.id()))
                .toList();
        return new TrialInput(
                day.day(),
                day.bike(),
                runs,
                ReadingResolver.resolve(declaration, day.day()),
                recordings,
                ScatterRecord.DECLARED_PRIORS,
                used,
                correlations,
                List.of());
    }

    private static Optional<Figure> figure(Outcome outcome, Truth truth) {
        return outcome.figures().stream()
                .filter(figure -> figure.key().figure().equals(truth.figure()))
                .filter(figure -> figure.key().variant().equals(truth.variant()))
                .findFirst();
    }

    private Coverage coverage(Tally tally) {
        return new Coverage(
                simulated.title(),
                tally.figure,
                tally.variant,
                Trials.figure(tally.figure).orElseThrow().kind(),
                seed,
                days,
                tally.errors.size(),
                tally.heldThisDay,
                tally.heldAnyDay,
                mean(tally.errors),
                mean(tally.differences) / mean(tally.uncertainties),
                new Coverage.HalfWidths(median(tally.thisDay), median(tally.bestThisDay)),
                new Coverage.HalfWidths(median(tally.anyDay), median(tally.bestAnyDay)),
                ScatterDeciles.of(tally.byScatter));
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);
    }

    private static double median(List<Double> values) {
        double[] sorted = values.stream().mapToDouble(Double::doubleValue).toArray();
        Arrays.sort(sorted);
        return sorted.length == 0 ? Double.NaN : sorted[sorted.length / 2];
    }

    /// What came of one figure so far.
    private static final class Tally {
        private final String figure;
        private final Variant variant;
        private int heldThisDay;
        private int heldAnyDay;
        private final List<Double> errors = new ArrayList<>();
        private final List<Double> differences = new ArrayList<>();
        private final List<Double> uncertainties = new ArrayList<>();
        private final List<Double> thisDay = new ArrayList<>();
        private final List<Double> anyDay = new ArrayList<>();
        private final List<Double> bestThisDay = new ArrayList<>();
        private final List<Double> bestAnyDay = new ArrayList<>();
        private final List<ScatterDeciles.Day> byScatter = new ArrayList<>();

        Tally(Trial trial, Truth truth) {
            this.variant = truth.variant();
            this.figure = trial.declaration().requireFigure(truth.figure()).id();
        }

        void add(Figure found, Truth truth) {
            double normal = StudentT.twoSided95(Double.POSITIVE_INFINITY);
            heldThisDay += holds(found.thisDay(), truth.thisDay());
            heldAnyDay += holds(found.anyDay(), truth.anyDay());
            errors.add(found.value() / truth.thisDay() - 1);
            // Not relative: of a value that leans on what is usual, as it should where little was measured, value over
            // truth is above one on average though value less truth is not different from nothing.
            differences.add(found.value() - truth.thisDay());
            uncertainties.add(found.thisDay().standard());
            thisDay.add(found.thisDay().interval95().halfWidth());
            anyDay.add(found.anyDay().interval95().halfWidth());
            bestThisDay.add(normal * truth.sdThisDay());
            bestAnyDay.add(normal * truth.sdAnyDay());
            boolean held = holds(found.thisDay(), truth.thisDay()) == 1;
            found.scatterOfRuns().ifPresent(scatter -> byScatter.add(new ScatterDeciles.Day(scatter, held)));
        }

        private static int holds(Uncertainty uncertainty, double truth) {
            return uncertainty.interval95().contains(truth) ? 1 : 0;
        }
    }
}
