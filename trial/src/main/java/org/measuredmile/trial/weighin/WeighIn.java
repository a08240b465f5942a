package org.measuredmile.trial.weighin;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Handbook;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.RunMean;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunScreen;
import org.measuredmile.trial.Scatter;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.VariantKey;

/// The weigh-in: placements on a scale, of the bike with its battery, without it, and of the battery alone.
public final class WeighIn implements Trial {
    private static final double RIDER_KG = 80;
    private static final FigureSpec MASS = of("mass", "mass", QuantityKind.MASS, Better.LESS, 0.05);
    private static final FigureSpec BATTERY = of("battery-mass", "battery mass", QuantityKind.MASS, Better.LESS, 0.05);
    private static final FigureSpec FRONT = of("front-share", "front share", QuantityKind.RATIO, Better.NEITHER, 0.002);
    private static final FigureSpec PAYLOAD = of("payload", "payload", QuantityKind.MASS, Better.MORE, 0.05);
    private static final Declaration DECLARATION = Declaration.of("weighin", 1, "Weigh-in")
            .purpose("What must be lifted, where the weight sits, and what the bike may still carry.")
            .caution("Two people lift a heavy bike, with its battery out.")
            .voidWhen("touched", "somebody or something touched the bike")
            .variant(VariantKey.of("battery", "battery", "in", "out", "alone").usually("in"))
            .runs(3, 1, false)
            .reading(load("mass", "mass on the scale").mustBeGiven())
            .reading(load("front-axle", "load on the front axle"))
            .reading(load("rear-axle", "load on the rear axle"))
            .figures(MASS.by("battery").called("weight", "weighs").speaksForTheTrial(), BATTERY, FRONT, PAYLOAD)
            .says("mass", "With the {battery}, {bike} weighs {value}")
            .handbook(new Handbook(
                    "The mass of the bike in its stated configuration, and of its battery.",
                    "m = f · mean reading; front share = front / (front + rear); payload = permitted total − m − 80 kg",
                    List.of(
                            "Zero the scale, put the thing on, write the reading, lift it off; three times.",
                            "Without a calibration the scale's factor f = 1 ± 0.3 %. A step d adds d/√12 at most.",
                            "In less out must agree with the battery alone within twice the uncertainty."),
                    List.of("Step: JCGM 100:2008, F.2.2.1. Scatter, day effect, 0.3 %: common practice, no source."),
                    "27.4, 27.5 and 27.4 kg on a scale with f = 1.002 give 27.488 kg.",
                    "Mud, water and bags are weighed too: write what was fitted."));

    private static FigureSpec of(String name, String title, QuantityKind kind, Better better, double betweenDays) {
        return FigureSpec.of("weighin." + name, title, kind, better, Chapter.CARRYING)
                .scatter(new Scatter(0.6 * betweenDays, 12, betweenDays, 12, false));
    }

    private static ReadingSpec load(String name, String title) {
        var spec = ReadingSpec.ofRun(name, title, QuantityKind.MASS);
        return spec.plausible(0.5, 250).by(Instrument.Kind.SCALE, 0.05);
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome reduce(TrialInput input) {
        var screen = new RunScreen(DECLARATION, input);
        var findings = new ArrayList<>(screen.findings());
        var permitted = input.bike().claimed("permitted-total", QuantityKind.MASS);
        var runs = new ArrayList<RunResult>();
        for (var run : input.runs()) {
            boolean whole = run.variant().has("battery", "in");
            double mass = kg(input, run.id(), "mass");
            double share = 1 / (1 + kg(input, run.id(), "rear-axle") / kg(input, run.id(), "front-axle"));
            runs.add(RunResult.of(run, screen.reasonNotToCount(run), List.of())
                    .with(run.variant().has("battery", "alone") ? BATTERY : MASS, mass)
                    .with(FRONT, whole ? share : Double.NaN)
                    .with(PAYLOAD, whole ? permitted.orElse(Double.NaN) - mass - RIDER_KG : Double.NaN));
        }
        var in = mean(input, runs, MASS, "in");
        var out = mean(input, runs, MASS, "out");
        var alone = mean(input, runs, BATTERY, "alone");
        in.flatMap(i -> out.flatMap(o -> alone.flatMap(a -> disagreement(i, o, a))))
                .ifPresent(findings::add);
        var figures = Stream.of(in, out, alone, mean(input, runs, FRONT, "in"), mean(input, runs, PAYLOAD, "in"));
        return new Outcome(figures.flatMap(Optional::stream).toList(), runs, findings);
    }

    private static double kg(TrialInput input, String run, String reading) {
        return input.readings().of(run, reading).map(read -> read.si()).orElse(Double.NaN);
    }

    private static Optional<Figure> mean(TrialInput input, List<RunResult> runs, FigureSpec spec, String battery) {
        var mean = RunMean.of(DECLARATION, spec.id(), Variant.of("battery", battery), input.scatter());
        var first = mean.runs(runs).firstCounted();
        if (spec.equals(FRONT)) {
            return mean.shareOff(input.readings(), "front-axle", "rear-axle", 0.003)
                    .figureIfAny();
        }
        first.flatMap(run -> input.readings().of(run, "mass")).ifPresent(one -> mean.readOff(one, 1, 0.003));
        return mean.figureIfAny();
    }

    private static Optional<Finding> disagreement(Figure in, Figure out, Figure alone) {
        double gap = in.value() - out.value() - alone.value();
        var budgets = Stream.of(in, out, alone).mapToDouble(one -> one.thisDay().standard());
        double limit = 2 * Math.sqrt(budgets.map(u -> u * u).sum());
        String words = String.format(Locale.ROOT, "in less out is %.2f kg off the battery, limit %.2f", gap, limit);
        var finding = Finding.warning("battery-mass", words, "weigh what was left on or taken off");
        return Math.abs(gap) > limit ? Optional.of(finding) : Optional.empty();
    }
}
