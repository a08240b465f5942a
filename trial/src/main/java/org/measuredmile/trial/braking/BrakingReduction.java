package org.measuredmile.trial.braking;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.CandidateMatching;
import org.measuredmile.trial.CandidateMatching.Held;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.ResolvedReadings.Value;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunResult.RunValue;
import org.measuredmile.trial.RunScreen;
import org.measuredmile.trial.TrialInput;

/// One day's stops to figures: find them in the recordings, match them to the written runs, screen, fit, average.
final class BrakingReduction {
    private final TrialInput input;
    private final RunScreen screen;
    private final List<Finding> findings = new ArrayList<>();

    BrakingReduction(TrialInput input) {
        this.input = input;
        this.screen = new RunScreen(Braking.DECLARATION, input);
    }

    Outcome outcome() {
        var matching = CandidateMatching.of(input, StopFinder.in(input));
        if (input.runs().isEmpty() && matching.left().isEmpty()) {
            return new Outcome(List.of(), List.of(), matching.findings());
        }
        findings.addAll(screen.findings());
        findings.addAll(matching.findings());
        var runs = new ArrayList<BrakingRun>();
        for (var run : input.runs()) {
            runs.add(written(run, matching));
        }
        var groups = runs.stream().map(run -> traceGroup(run.run().variant())).toList();
        for (var stop : matching.left()) {
            runs.add(proposed(stop, groups));
        }
        findings.addAll(BrakingFindings.ofDay(input));
        runs.forEach(run -> findings.addAll(BrakingFindings.ofRun(input, run)));
        return new Outcome(
                new BrakingFigures(input, runs).all(),
                runs.stream().map(this::result).toList(),
                findings);
    }

    private BrakingRun written(Run run, CandidateMatching<TracedStop> matching) {
        var nominal = BrakingRules.Nominal.of(run.variant().get("nominal").orElse(""));
        return new BrakingRun(run, nominal, screen.reasonNotToCount(run), tape(run), matching.of(run), slope());
    }

    private Optional<BrakingRun.Tape> tape(Run run) {
        var entry = input.readings().of(run.id(), "entry-speed");
        var distance = input.readings().of(run.id(), "stopping-distance");
        return entry.isPresent() && distance.isPresent() && run.variant().has("method", "tape")
                ? Optional.of(new BrakingRun.Tape(entry.get(), distance.get()))
                : Optional.empty();
    }

    private double slope() {
        return input.readings().ofDay("slope").map(Value::si).orElse(0.0);
    }

    private static Variant traceGroup(Variant variant) {
        return variant.only(List.of("surface", "nominal"));
    }

    /// A stop that no written run claims: proposed to a person, and counted meanwhile only where nobody wrote any
    /// run of its kind.
    private BrakingRun proposed(TracedStop stop, List<Variant> written) {
        var nominal = BrakingRules.Nominal.TWENTY_FIVE_KMH.window().contains(stop.entryMps())
                ? BrakingRules.Nominal.TWENTY_FIVE_KMH
                : BrakingRules.Nominal.TWENTY_MPH;
        String surface = input.day().conditions().surface().equals("wet") ? "wet" : "dry";
        var variant = Variant.of("method", "trace").with("surface", surface);
        if (nominal.window().contains(stop.entryMps())) {
            variant = variant.with("nominal", nominal.id());
        }
        var run = CandidateMatching.proposal(stop, Braking.DECLARATION.id(), variant);
        String screened = "";
        if (stop.qualifies()) {
            screened = written.contains(traceGroup(variant))
                    ? CandidateMatching.BESIDE_WRITTEN
                    : screen.reasonNotToCount(run);
        }
        return new BrakingRun(run, nominal, screened, Optional.empty(), Held.found(stop), slope());
    }

    private RunResult result(BrakingRun run) {
        var stretch =
                run.traced().map(stop -> new RunResult.Stretch(stop.recording().name(), stop.onsetS(), stop.restS()));
        return new RunResult(
                        run.run().id(),
                        run.run().variant(),
                        run.run().direction(),
                        run.run().state(),
                        run.reason().isEmpty(),
                        run.reason(),
                        stretch,
                        values(run),
                        run.traced().flatMap(StopPlot::of))
                .within(input.windows().of(run.run().id()), input);
    }

    private List<RunValue> values(BrakingRun run) {
        var values = new ArrayList<RunValue>();
        double nominalMps = run.nominal().speedMps();
        run.tape().ifPresent(tape -> {
            values.add(new RunValue(
                    "entry-speed", "entry speed", QuantityKind.SPEED, tape.entryMps(), BrakingRules.ENTRY_MPS));
            values.add(new RunValue(
                    "taped-distance", "taped distance", QuantityKind.LENGTH, tape.distanceM(), BrakingRules.TAPE_M));
            values.add(new RunValue(
                    "braking.stopping-distance",
                    "stopping distance from " + run.nominal().words(),
                    QuantityKind.LENGTH,
                    run.tapedM().orElseThrow(),
                    tape.standardUncertaintyM(nominalMps)));
        });
        run.traceValues().ifPresent(trace -> values.addAll(traced(run, trace)));
        return values;
    }

    private List<RunValue> traced(BrakingRun run, TraceValues trace) {
        var values = new ArrayList<RunValue>();
        var stop = trace.stop();
        var fit = stop.fitted().orElseThrow();
        var takeUp = trace.takeUp(input.instrumentOf(stop.recording()));
        var braking = trace.brakingDistance();
        values.add(value("trace-entry-speed", "entry speed by the trace", QuantityKind.SPEED, trace.entrySpeed()));
        takeUp.ifPresent(one -> {
            double u = run.nominal().speedMps() * StrictMath.hypot(one.ownSd(), one.delaySd());
            double takeUpM = one.timeS() * run.nominal().speedMps();
            values.add(new RunValue("take-up", "take-up", QuantityKind.LENGTH, takeUpM, u));
            values.add(new RunValue(
                    "trace-stopping-distance",
                    "stopping distance by the trace",
                    QuantityKind.LENGTH,
                    takeUpM + braking.value(),
                    StrictMath.hypot(u, braking.standardUncertainty())));
        });
        values.add(value("braking.braking-distance", "braking distance", QuantityKind.LENGTH, braking));
        values.add(value(
                "braking.mean-deceleration", "mean deceleration", QuantityKind.ACCELERATION, trace.meanDeceleration()));
        values.add(value(
                "braking.mfdd",
                "mean fully developed deceleration",
                QuantityKind.ACCELERATION,
                trace.meanFullyDeveloped()));
        values.add(value(
                "peak-deceleration",
                "peak deceleration",
                QuantityKind.ACCELERATION,
                fit.derive(StopCurve::peakDecelerationMps2)));
        values.add(value("build-up-time", "build-up time", QuantityKind.TIME, fit.derive(StopCurve::buildUpS)));
        values.add(
                value("stopping-time", "time from onset to rest", QuantityKind.TIME, fit.derive(StopCurve::durationS)));
        return values;
    }

    private static RunValue value(String name, String title, QuantityKind kind, StopValue derived) {
        return new RunValue(name, title, kind, derived.value(), derived.standardUncertainty());
    }
}
