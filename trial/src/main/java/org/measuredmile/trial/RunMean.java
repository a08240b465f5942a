package org.measuredmile.trial;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.Sample;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.Figure.Narrowing;

/// A figure that is the mean of its runs: the plain mean, or the mean of the two directions where runs go both ways.
///
/// The scatter is a moderated variance, (ν₀s₀² + νs²)/(ν₀ + ν), of the stated scatter and of these runs; what is common
/// to all runs of the day is added whole and never divided by their number. The any-day interval adds the scatter
/// between days.
///
/// Source: JCGM 100:2008, 4.2.3 and 5.1.2; docs/handbook/intervals.md. The moderated variance is that of Smyth (2004),
/// Statistical Applications in Genetics and Molecular Biology 3(1), section 3, from memory.
public final class RunMean {
    private final Declaration declaration;
    private final FigureSpec spec;
    private final Variant variant;
    private Scatter scatter;
    private double blurSd;
    private double late;
    private boolean matchingTails;
    private final List<FigureRun> runs = new ArrayList<>();
    private final List<String> directions = new ArrayList<>();
    private final List<Contribution> common = new ArrayList<>();
    private final List<String> assumed = new ArrayList<>();
    private final List<Figure.Used> used = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();
    private boolean inPairs;

    private RunMean(Declaration declaration, FigureSpec spec, Variant variant, Scatter scatter) {
        this.declaration = declaration;
        this.spec = spec;
        this.variant = variant;
        this.scatter = scatter;
    }

    /// The figure of an id in a variant, with the scatter that the input's record or the declaration states.
    public static RunMean of(Declaration declaration, String figureId, Variant variant, ScatterRecord record) {
        var spec = declaration.requireFigure(figureId);
        return new RunMean(declaration, spec, variant.only(spec.variantKeys()), record.of(spec));
    }

    /// That runs give a value in pairs, one out and one back: of a pair that counts one run has the value and
    /// the other none, so that it enters once.
    public RunMean ofPairs() {
        inPairs = true;
        return this;
    }

    /// A run, counted or not, in order.
    public RunMean run(FigureRun run, String direction) {
        runs.add(run);
        directions.add(direction);
        return this;
    }

    /// Every run of the figure's variant that gave it a value, by the figure's name without its trial.
    public RunMean runs(List<RunResult> results) {
        for (var result : results) {
            var value = result.value(spec.name());
            if (value.isPresent() && result.variant().covers(variant)) {
                var number = OptionalDouble.of(value.get().value());
                run(
                        new FigureRun(result.run(), result.state(), result.counted(), result.reason(), number),
                        result.direction());
            }
        }
        return this;
    }

    /// The first run that counts.
    public Optional<String> firstCounted() {
        return runs.stream().filter(FigureRun::counted).map(FigureRun::run).findFirst();
    }

    /// Something that all runs of the day share: it does not average out.
    public RunMean common(Contribution contribution) {
        if (contribution.standardUncertainty() > 0) {
            common.add(contribution);
        }
        return this;
    }

    /// That every run was read off one instrument, whose calibration is common to all and whose step averages
    /// out only as far as the runs scatter across it.
    ///
    /// Unit: `perUnit` is the figure's change for a change of the reading by one of its SI units.
    /// Shape: call it when all runs are there. An instrument without a calibration is taken to be right within
    /// `uncalibrated`, relative, and the figure says that it was assumed.
    /// Source: JCGM 100:2008, F.2.2.1 (a step d contributes d/√12). Of n readings that scatter by σ the part
    /// c = d/√12·exp(−2π²σ²/d²) stays and the rest is divided by √n: first harmonic of the rounding error,
    /// worked out here.
    public RunMean readOff(ResolvedReadings.Value read, double perUnit, double uncalibrated) {
        calibration(read, perUnit * read.si(), uncalibrated);
        return common(Contribution.typeB("step of the instrument", steps(Math.abs(perUnit) * read.resolution())));
    }

    /// That every run is one reading's share p of two together.
    ///
    /// Two instruments err independently and move it by p(1 − p) of their relative error each; one
    /// instrument errs alike in both and does not move it. A step moves it by (1 − p) of its part of
    /// the whole where it is in the one reading, by p where it is in the other.
    /// Shape: as in [#readOff].
    /// Source: JCGM 100:2008, 5.1.2, on p = x/(x + y).
    public RunMean shareOff(ResolvedReadings readings, String part, String rest, double uncalibrated) {
        String first = firstCounted().orElse("");
        var one = readings.of(first, part);
        var other = readings.of(first, rest);
        if (one.isPresent() && other.isPresent()) {
            shareOff(one.get(), other.get(), uncalibrated);
        }
        return this;
    }

    private void shareOff(ResolvedReadings.Value part, ResolvedReadings.Value rest, double uncalibrated) {
        double whole = part.si() + rest.si();
        double share = part.si() / whole;
        boolean isOne = part.instrument().isPresent() && part.instrument().equals(rest.instrument());
        if (!isOne) {
            calibration(part, share * (1 - share), uncalibrated);
            calibration(rest, share * (1 - share), uncalibrated);
        }
        double ofPart = (1 - share) * steps(part.resolution() / whole);
        double ofRest = share * steps(rest.resolution() / whole);
        common(Contribution.typeB("step of the instruments", StrictMath.hypot(ofPart, ofRest)));
    }

    private void calibration(ResolvedReadings.Value read, double perRelative, double uncalibrated) {
        var calibration = read.instrument().flatMap(Instrument::calibration);
        double relative =
                calibration.map(Instrument.Calibration::standardUncertainty).orElse(uncalibrated);
        String id = read.instrument().map(Instrument::id).orElse("");
        common(Contribution.typeB(
                        "calibration of the instrument" + (id.isEmpty() ? "" : " " + id),
                        Math.abs(perRelative * relative))
                .sharedAs(id.isEmpty() ? "" : "calibration of " + id));
        String words = "the instrument is right within " + ReadingResolver.plain(uncalibrated * 100)
                + " % (standard uncertainty): no calibration is written down";
        if (calibration.isEmpty() && !assumed.contains(words)) {
            assumed(words);
        }
    }

    private double steps(double step) {
        if (step == 0 || !hasRuns()) {
            return step / Math.sqrt(12);
        }
        var own = Sample.of(runs.stream()
                .filter(FigureRun::counted)
                .mapToDouble(run -> run.value().orElseThrow())
                .toArray());
        double stated = scatter.betweenRunsAt(value());
        // Readings that all say the same have averaged no step away, whatever earlier days scattered by.
        double across = (own.n() < 2 ? stated : Math.min(stated, own.standardDeviation())) / step;
        double stays = StrictMath.exp(-2 * Math.PI * Math.PI * across * across);
        double count = runs.stream().filter(FigureRun::counted).count();
        return step / Math.sqrt(12) * Math.sqrt(stays * stays + (1 - stays * stays) / count);
    }

    public RunMean assumed(String what) {
        assumed.add(what);
        return this;
    }

    /// That this variant answers so many times as strongly as the usual one to whatever scatters between runs
    /// and between days.
    public RunMean answering(double times) {
        scatter = new Scatter(
                scatter.betweenRuns() * times,
                scatter.runDegreesOfFreedom(),
                scatter.betweenDays() * times,
                scatter.dayDegreesOfFreedom(),
                scatter.relative());
        return this;
    }

    /// That each run's value is itself known no better than this, beside the scatter that is
    /// stated: the runs' own scatter shows both, so that it is stated whole and not added a second
    /// time.
    ///
    /// Unit: a standard deviation in the figure's SI unit. Shape: call it when all runs are there.
    public RunMean runsKnownWithin(double sd) {
        scatter = sd > 0 ? scatter.withRunsKnownWithin(sd, value()) : scatter;
        return this;
    }

    /// That days differ in this variant by so many times what they do in the usual one: fewer where a cause of
    /// theirs is budgeted apart.
    public RunMean answeringByDay(double times) {
        scatter = new Scatter(
                scatter.betweenRuns(),
                scatter.runDegreesOfFreedom(),
                scatter.betweenDays() * times,
                scatter.dayDegreesOfFreedom(),
                scatter.relative());
        return this;
    }

    /// That each run's value is blurred by so much besides what the stated scatter speaks of: by its own timing or
    /// by noise, no two runs alike.
    ///
    /// The runs' own scatter shows it as well, so that it is not added to that once more: it widens what is
    /// expected of the runs before they speak.
    /// Unit: standard deviation of one run's value, in the figure's SI unit.
    public RunMean blurredBy(double ofOneRun) {
        blurSd = ofOneRun;
        return this;
    }

    /// That both intervals have the tails of [MatchedTails]: where scatter of few degrees of freedom, between
    /// runs and between days, is most of them.
    public RunMean withMatchedTails() {
        matchingTails = true;
        return this;
    }

    /// That the mean of the runs is so much too large by something known, which is taken off.
    ///
    /// Unit: the figure's SI unit.
    /// Source: JCGM 100:2008, 3.2.4: a known systematic effect is corrected for.
    public RunMean lessBy(double tooLarge) {
        late = tooLarge;
        return this;
    }

    /// A figure of another trial that this one was computed with.
    public RunMean using(Figure figure) {
        used.add(figure.asUsed());
        return this;
    }

    public RunMean finding(Finding finding) {
        findings.add(finding);
        return this;
    }

    /// Whether any run counts, without which there is no figure.
    public boolean hasRuns() {
        return runs.stream().anyMatch(this::enters);
    }

    /// The mean of the runs that count.
    ///
    /// Error: IllegalStateException when none does; ask [#hasRuns()] first.
    public double value() {
        return spread().mean() - late;
    }

    /// The figure, where any run counts.
    public Optional<Figure> figureIfAny() {
        return hasRuns() ? Optional.of(figure()) : Optional.empty();
    }

    /// The figure.
    ///
    /// Error: IllegalStateException when no run counts.
    public Figure figure() {
        var spread = spread();
        double value = value();
        var thisDay = new Budget(with(spread, 0));
        var betweenDays = new Contribution(
                "between days",
                Contribution.Evaluation.B,
                scatter.betweenDaysAt(spread.mean()),
                scatter.dayDegreesOfFreedom(),
                "");
        var anyDay = thisDay.plus(betweenDays);
        noteRuns(spread);
        return new Figure(
                new FigureKey(spec.id(), variant),
                spec.kind(),
                declaration.id(),
                declaration.version(),
                value,
                around(thisDay, value),
                around(anyDay, value),
                runs,
                anyDay.byWeight(),
                narrowings(spread, betweenDays),
                assumed,
                used,
                findings,
                List.of());
    }

    private Uncertainty around(Budget budget, double value) {
        return matchingTails ? MatchedTails.around(budget, value) : budget.around(value);
    }

    private List<Contribution> with(RunSpread spread, int more) {
        var all = new ArrayList<Contribution>();
        all.add(spread.typeA(scatter, blurSd, more, inPairs ? "pair" : "run"));
        all.addAll(common);
        return all;
    }

    private RunSpread spread() {
        Map<String, List<Double>> byDirection = new TreeMap<>();
        for (int i = 0; i < runs.size(); i++) {
            if (enters(runs.get(i))) {
                String way = declaration.runs().bothDirections() && !inPairs ? directions.get(i) : "";
                byDirection
                        .computeIfAbsent(way, _ -> new ArrayList<>())
                        .add(runs.get(i).value().orElseThrow());
            }
        }
        if (byDirection.isEmpty()) {
            throw new IllegalStateException(spec.id() + ": no run counts");
        }
        return RunSpread.of(byDirection.values());
    }

    private boolean enters(FigureRun run) {
        return run.counted() && !(inPairs && run.value().isEmpty());
    }

    private List<Narrowing> narrowings(RunSpread spread, Contribution betweenDays) {
        var narrowings = new ArrayList<Narrowing>();
        int more = spread.ways() == 2 || declaration.runs().bothDirections() ? 4 : 3;
        narrowings.add(narrowing(
                more + (inPairs ? " more pairs" : " more runs"), new Budget(with(spread, more)).plus(betweenDays)));
        var asNow = new Budget(with(spread, 0));
        common.stream()
                .max(Comparator.comparingDouble(Contribution::standardUncertainty))
                .ifPresent(largest -> narrowings.add(narrowing(
                        largest.input() + " known twice as well", halving(asNow.plus(betweenDays), largest))));
        if (betweenDays.standardUncertainty() > 0) {
            var halved = halved(betweenDays, Math.sqrt(0.5));
            narrowings.add(narrowing("the same on one more day", asNow.plus(halved)));
        }
        narrowings.sort(Comparator.comparingDouble(one -> one.intervalThen().halfWidth()));
        return narrowings;
    }

    private Narrowing narrowing(String what, Budget then) {
        return new Narrowing(what, around(then, value()).interval95());
    }

    private static Budget halving(Budget budget, Contribution which) {
        return new Budget(budget.contributions().stream()
                .map(one -> one.equals(which) ? halved(one, 0.5) : one)
                .toList());
    }

    private static Contribution halved(Contribution one, double factor) {
        return new Contribution(
                one.input(),
                one.evaluation(),
                one.standardUncertainty() * factor,
                one.degreesOfFreedom(),
                one.shared());
    }

    private void noteRuns(RunSpread spread) {
        if (runs.stream().anyMatch(run -> run.counted() && run.state() == Run.State.PROPOSED)) {
            findings.add(Finding.warning(
                    "not-confirmed",
                    Place.NOWHERE,
                    "runs found by the tool are in this figure and nobody has confirmed them",
                    "confirm, move or void each run"));
        }
        int ridden = inPairs ? 2 * spread.count() : spread.count();
        if (ridden < declaration.runs().usual()) {
            findings.add(Finding.note(
                    "few-runs",
                    Place.NOWHERE,
                    ridden + " of the " + declaration.runs().usual() + " runs planned count"));
        }
        if (declaration.runs().bothDirections() && !inPairs && spread.ways() == 1) {
            findings.add(Finding.warning(
                    "unpaired",
                    Place.NOWHERE,
                    "ridden one way only, so wind and slope are in the figure",
                    "ride the other direction too"));
        }
    }
}
