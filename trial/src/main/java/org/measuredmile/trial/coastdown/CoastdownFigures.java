package org.measuredmile.trial.coastdown;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.RunMean;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;

/// The figures of a day of coasts: means over the pairs, what is common to them, and how they lean on each other.
final class CoastdownFigures {
    private static final double KMH = 3.6;
    private static final Variant AT_REFERENCE = Variant.of("at", "reference");
    /// How many pairs the usual leaning on each other is worth.
    private static final double USUAL_IS_WORTH = 12;

    private final TrialInput input;
    private final List<CoastRun> runs;
    private final List<CoastPair> pairs;
    private final List<CoastPair> counted;

    CoastdownFigures(TrialInput input, List<CoastRun> runs, List<CoastPair> pairs) {
        this.input = input;
        this.runs = List.copyOf(runs);
        this.pairs = List.copyOf(pairs);
        this.counted = pairs.stream().filter(CoastPair::counts).toList();
    }

    List<Figure> all() {
        if (counted.isEmpty()) {
            return List.of();
        }
        var all = new ArrayList<Figure>();
        var setting = setting();
        for (int kmh : Coastdown.SPEEDS_KMH) {
            force(
                            kmh,
                            Variant.NONE,
                            setting.setting(),
                            setting.massSdKg() / setting.setting().effectiveKg())
                    .ifPresent(all::add);
        }
        if (bothKnown()) {
            all.add(coefficient("rolling-coefficient", RoadLoad::rollingCoefficient, this::rollingParts));
            all.add(coefficient("drag-area", RoadLoad::dragAreaM2, this::areaParts));
        }
        var reference = setting.atReference(
                RoadSetting.riderKg(input, counted.getFirst().out().run()));
        for (int kmh : Coastdown.SPEEDS_KMH) {
            force(kmh, AT_REFERENCE, reference, setting.bikeSdKg() / reference.effectiveKg())
                    .ifPresent(all::add);
        }
        return all;
    }

    /// How the two coefficients lean on each other, moderated by what is usual.
    List<Correlation> correlations() {
        if (!bothKnown()) {
            return List.of();
        }
        double meanRolling = mean(load -> load.rollingCoefficient());
        double meanArea = mean(load -> load.dragAreaM2());
        double rollingSd = prior("rolling-coefficient");
        double areaSd = prior("drag-area");
        double both = 0;
        double rolling = 0;
        double area = 0;
        for (var pair : telling()) {
            var load = pair.found().orElseThrow().load();
            double a = (load.rollingCoefficient() - meanRolling) / meanRolling / rollingSd;
            double b = (load.dragAreaM2() - meanArea) / meanArea / areaSd;
            both += a * b;
            rolling += a * a;
            area += b * b;
        }
        both += USUAL_IS_WORTH * UsedLoad.USUAL_LEANING;
        rolling += USUAL_IS_WORTH;
        area += USUAL_IS_WORTH;
        double coefficient = Math.clamp(both / StrictMath.sqrt(rolling * area), -0.99, 0.99);
        return List.of(new Correlation(
                new FigureKey("coastdown.rolling-coefficient", Variant.NONE),
                new FigureKey("coastdown.drag-area", Variant.NONE),
                coefficient));
    }

    private static double prior(String name) {
        return Coastdown.DECLARATION.requireFigure("coastdown." + name).prior().betweenRuns();
    }

    private double mean(Function<RoadLoad, Double> take) {
        return telling().stream()
                .mapToDouble(pair -> take.apply(pair.found().orElseThrow().load()))
                .average()
                .orElseThrow();
    }

    private List<CoastPair> telling() {
        return counted.stream().filter(CoastPair::tellsApart).toList();
    }

    private boolean bothKnown() {
        return !telling().isEmpty();
    }

    private RoadSetting setting() {
        return counted.getFirst().out().setting();
    }

    private Optional<Figure> force(int kmh, Variant variant, Setting setting, double massShare) {
        double speedMps = kmh / KMH;
        var mean =
                begun("force-at-" + kmh + "-kmh", variant, pair -> pair.forceN(speedMps, own(pair, variant, setting)));
        if (!mean.hasRuns()) {
            return Optional.empty();
        }
        double newtons = mean.value();
        var known = setting();
        double drag = counted.getFirst().found().orElseThrow().load().dragN(setting, speedMps, 0);
        // As ridden the force is mass times deceleration. At reference the coefficients are moved there, and the
        // density ridden in and the bike's own mass stay in.
        mean.common(Contribution.typeB("mass of bike and rider", newtons * massShare));
        mean.common(Contribution.typeB(
                "turning of the wheels (assumed)", newtons * known.turningSdKg() / setting.effectiveKg()));
        mean.common(Contribution.typeB("gusts (assumed)", gustsN()));
        if (!variant.equals(Variant.NONE)) {
            double airShare = known.airSdKgPerM3() / known.setting().airKgPerM3();
            double riderShare = known.riderSdKg() / known.setting().massKg();
            mean.common(Contribution.typeB(
                    "air density and rider's mass of the day", drag * StrictMath.hypot(airShare, riderShare)));
        }
        // A scale that is wrong by a share lengthens the rolling part by it and shortens the air's.
        double byScale = Math.abs(newtons - 2 * drag) / newtons;
        finish(mean, newtons, byScale, CoastdownRules.HAND_ON_FORCE.get(Coastdown.SPEEDS_KMH.indexOf(kmh)));
        return Optional.of(mean.figure());
    }

    private Setting own(CoastPair pair, Variant variant, Setting setting) {
        return variant.equals(Variant.NONE) ? CoastPair.setting(pair.out(), pair.back()) : setting;
    }

    private interface Parts {
        List<Contribution> of(double value);
    }

    private Figure coefficient(String name, Function<RoadLoad, Double> take, Parts parts) {
        var mean = begun(
                name,
                Variant.NONE,
                pair -> pair.found().filter(_ -> pair.tellsApart()).map(found -> take.apply(found.load())));
        double value = mean.value();
        parts.of(value).forEach(mean::common);
        boolean isArea = name.equals("drag-area");
        finish(mean, value, 1, isArea ? CoastdownRules.HAND_ON_AREA : CoastdownRules.HAND_ON_ROLLING);
        return mean.figure();
    }

    /// Standard uncertainty of the force by what gusts add to it, in newtons.
    private double gustsN() {
        var load = counted.getFirst().found().orElseThrow().load();
        return setting().setting().airKgPerM3() * load.dragAreaM2() * CoastdownRules.GUSTS_SD_M2PS2 / 2;
    }

    /// C_rr goes with m_eff/m, and C_dA with m_eff/ρ.
    private List<Contribution> rollingParts(double value) {
        var known = setting();
        double mass = known.setting().massKg();
        double byMass = known.massSdKg()
                * known.setting().turningKg()
                / mass
                / known.setting().effectiveKg();
        return List.of(
                Contribution.typeB("mass of bike and rider", value * byMass),
                Contribution.typeB(
                        "turning of the wheels (assumed)",
                        value * known.turningSdKg() / known.setting().effectiveKg()));
    }

    private List<Contribution> areaParts(double value) {
        var known = setting();
        return List.of(
                Contribution.typeB(
                        "mass of bike and rider",
                        value * known.massSdKg() / known.setting().effectiveKg()),
                Contribution.typeB(
                        "turning of the wheels (assumed)",
                        value * known.turningSdKg() / known.setting().effectiveKg()),
                Contribution.typeB(
                        "air density",
                        value * known.airSdKgPerM3() / known.setting().airKgPerM3()));
    }

    private RunMean begun(String name, Variant variant, Function<CoastPair, Optional<Double>> take) {
        var mean = RunMean.of(Coastdown.DECLARATION, "coastdown." + name, variant, input.scatter())
                .ofPairs();
        for (var run : runs) {
            var pair = pairs.stream()
                    .filter(one -> one.out().equals(run) || one.back().equals(run))
                    .findFirst();
            String reason = CoastdownReduction.reason(run, pair);
            Optional<Double> value = reason.isEmpty() ? pair.flatMap(take) : Optional.empty();
            if (reason.isEmpty() && value.isEmpty()) {
                reason = "its speeds do not carry this figure";
            }
            boolean speaks = pair.filter(one -> one.out().equals(run)).isPresent();
            mean.run(
                    new FigureRun(
                            run.run().id(),
                            run.run().state(),
                            reason.isEmpty(),
                            reason,
                            speaks && value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty()),
                    run.direction());
        }
        return mean;
    }

    /// What every figure shares: scale of the speed, timing by hand, what was assumed.
    ///
    /// Unit: `byScale` the relative change for a relative change of the scale.
    private void finish(RunMean mean, double value, double byScale, double byHandRelative) {
        var known = setting();
        mean.common(scale(value * byScale));
        var byHand = counted.stream()
                .flatMap(pair -> pair.out().timed().filter(_ -> pair.isByHand()).stream())
                .toList();
        if (!byHand.isEmpty()) {
            double worst =
                    byHand.stream().mapToDouble(CoastRun.Timed::splitSdS).max().orElseThrow();
            double relative = byHandRelative * worst / CoastdownRules.HAND_S;
            mean.common(Contribution.typeB(
                    "timing by hand, of " + byHand.size() + (byHand.size() == 1 ? " pair" : " pairs"),
                    value * relative * Math.sqrt(byHand.size()) / counted.size()));
            mean.assumed("a hand and a watch good to 0.15 s a split (standard uncertainty)");
        }
        known.assumed().forEach(mean::assumed);
        mean.assumed("3 ± 1 kg for the turning of the wheels");
        mean.assumed("gusts of 0.4 m/s that last 8 s, and as much from run to run, beside a pair's own wind");
        mean.assumed("wind along the road 0 ± 5 m/s and grade 0 ± 1 %, free in every pair");
        if (!known.used().isEmpty()) {
            Optional.ofNullable(input.used().get(new FigureKey(RoadSetting.WEIGHED, Variant.of("battery", "in"))))
                    .ifPresent(mean::using);
        }
    }

    private Contribution scale(double value) {
        var traced = counted.getFirst().out().traced();
        if (traced.isEmpty()) {
            return Contribution.typeB("scale of the display (not calibrated)", value * CoastdownRules.WHEEL_SCALE);
        }
        var instrument = input.instrumentOf(traced.get().recording());
        var calibration = instrument.flatMap(Instrument::calibration);
        if (calibration.isPresent()) {
            String id = "calibration of " + instrument.orElseThrow().id();
            return Contribution.typeB(id, value * calibration.get().standardUncertainty())
                    .sharedAs(id);
        }
        var kind = traced.get().source().kind();
        double relative = kind == SpeedSource.Kind.WHEEL ? CoastdownRules.WHEEL_SCALE : CoastdownRules.RECEIVER_SCALE;
        return Contribution.typeB("scale of the " + kind.title() + " (not calibrated)", value * relative);
    }

    List<Finding> findings() {
        var findings = new ArrayList<Finding>();
        if (!runs.isEmpty() && input.readings().ofDay("wind-speed").isEmpty()) {
            findings.add(Finding.warning(
                    "condition-missing",
                    new Place("day.yaml", "conditions.wind-speed"),
                    "wind speed is not written down: nobody can tell whether it was below the limit of 3 m/s",
                    "write it in day.yaml or as a reading of the day"));
        }
        boolean usable = runs.stream().anyMatch(CoastRun::isUsable);
        if (usable && pairs.isEmpty() && runs.stream().anyMatch(run -> run.run().state() == Run.State.CONFIRMED)) {
            findings.add(Finding.refused(
                    "one-way-only",
                    Place.NOWHERE,
                    "no coast has one the other way to pair it with: no figure",
                    "ride the other direction too; one way alone can be wrong by half"));
        }
        if (!counted.isEmpty()) {
            findings.add(Finding.note("wind-not-told-from-grade", Place.NOWHERE, windAndGrade()));
        }
        if (!counted.isEmpty() && !bothKnown()) {
            var first = counted.getFirst();
            findings.add(Finding.warning(
                    "speeds-too-close",
                    Place.NOWHERE,
                    String.format(
                            Locale.ROOT,
                            "the pairs coasted from %.0f to %.0f km/h: too close together to tell rolling from air",
                            first.highestMps() * KMH,
                            first.lowestMps() * KMH),
                    "coast from 35 to 10 km/h"));
        }
        return findings;
    }

    /// What the pairs took for wind and grade, and how surely these two trade with each other.
    private String windAndGrade() {
        double wind = 0;
        double grade = 0;
        double trade = 0;
        for (var pair : counted) {
            var found = pair.found().orElseThrow();
            wind += found.headWindMps() / counted.size();
            grade += found.grade() / counted.size();
            trade += found.covariance()[2][3]
                    / Math.sqrt(found.covariance()[2][2] * found.covariance()[3][3])
                    / counted.size();
        }
        return String.format(
                Locale.ROOT,
                "a head wind of %.1f m/s and a grade of %.2f %% on the way out explain the pairs, but "
                        + "either could stand"
                        + " for the other (correlation %.2f): neither is a result, and both are out of the figures",
                wind,
                100 * grade,
                trade);
    }
}
