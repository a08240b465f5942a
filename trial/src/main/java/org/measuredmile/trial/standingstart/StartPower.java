package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.day.Run;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;

/// What the wheel did: force, power and work of a start, from the masses, the air and the road load of the kernel.
///
/// Formula: F = (m + m_w)·a + m·g·C_rr + ½·ρ·C_dA·v²; power over a stretch is the work of F over its time.
/// Unit: kilograms; watts; newtons.
record StartPower(RoadSetting road, UsedLoad usedLoad, double riderKg) {
    /// Speeds at the ends of a stretch are those of a line through the samples so far around, s.
    private static final double LINE_HALF_S = 0.4;
    /// Noise of such a speed, m/s.
    private static final double LINE_SD = 0.035;

    /// The masses of a run, where the rider's is known.
    static Optional<StartPower> of(TrialInput input, Run run) {
        var rider = input.day().rider(run.rider());
        if (rider.isEmpty() || rider.get().massAsRiddenKg().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new StartPower(
                RoadSetting.of(input, run),
                UsedLoad.of(input),
                rider.get().massAsRiddenKg().getAsDouble()));
    }

    Setting setting() {
        return road.setting();
    }

    /// The reference rider on the same bike in the reference air.
    Setting atReference() {
        return road.atReference(riderKg);
    }

    KnownLoad load() {
        return usedLoad.load();
    }

    double riderSdKg() {
        return road.riderSdKg();
    }

    double bikeSdKg() {
        return road.bikeSdKg();
    }

    double massSdKg() {
        return road.massSdKg();
    }

    double turningSdKg() {
        return road.turningSdKg();
    }

    double airSdKgPerM3() {
        return road.airSdKgPerM3();
    }

    double weightN() {
        return setting().massKg() * setting().gravityMps2();
    }

    double effectiveKg() {
        return setting().effectiveKg();
    }

    double roadLoadN(double speedMps) {
        return load().mean().forceN(setting(), speedMps);
    }

    /// What nobody measured.
    List<String> assumed() {
        var all = new ArrayList<>(road.assumed());
        all.addAll(usedLoad.assumed());
        all.add("3 ± 1 kg for the turning of the wheels");
        return all;
    }

    /// The figure with the figures that the masses and the load came from.
    Figure using(Figure figure) {
        var used = new ArrayList<>(figure.used());
        road.used().stream().filter(one -> !used.contains(one)).forEach(used::add);
        usedLoad.used().stream().filter(one -> !used.contains(one)).forEach(used::add);
        return new Figure(
                figure.key(),
                figure.kind(),
                figure.trial(),
                figure.version(),
                figure.value(),
                figure.thisDay(),
                figure.anyDay(),
                figure.runs(),
                figure.budget(),
                figure.narrows(),
                figure.assumed(),
                used,
                figure.findings(),
                figure.inputs());
    }

    /// What all runs of a day share of a power's standard uncertainty: masses, wheels, road load.
    Shared shared(Power power) {
        double dragW = power.perDragArea() * load().mean().dragAreaM2();
        double rollingW = power.perRolling() * load().mean().rollingCoefficient();
        double perTurningKg = Math.max(0, power.watts() - dragW - rollingW) / effectiveKg();
        double perKg = perTurningKg + rollingW / setting().massKg();
        double byAir = dragW / setting().airKgPerM3() * airSdKgPerM3();
        double byLoad = load().sd(power.perRolling(), power.perDragArea());
        return new Shared(perKg * massSdKg(), perTurningKg * turningSdKg(), StrictMath.hypot(byLoad, byAir));
    }

    /// Standard uncertainties by their causes, in watts.
    record Shared(double byMass, double byWheels, double byRoadLoad) {}

    /// A power, the standard uncertainty of this one run, what of it the day's runs share, and by how much the
    /// power answers to the rolling coefficient and, in W/m², to the drag area.
    record Power(double watts, double ownSd, double sharedSd, double perRolling, double perDragArea) {
        Power lessBy(double share) {
            return new Power(watts * (1 - share), ownSd, sharedSd, perRolling, perDragArea);
        }

        /// Of a day's powers: the mean of each, and of their own standard uncertainties the root mean square.
        static Power mean(List<Power> powers) {
            double own = mean(powers, one -> one.ownSd() * one.ownSd());
            return new Power(
                    mean(powers, Power::watts),
                    Math.sqrt(own),
                    mean(powers, Power::sharedSd),
                    mean(powers, Power::perRolling),
                    mean(powers, Power::perDragArea));
        }

        private static double mean(List<Power> powers, ToDoubleFunction<Power> what) {
            return powers.stream().mapToDouble(what).average().orElseThrow();
        }
    }

    /// The same with more of the masses and of the road load, for [ThrustFit].
    ThrustFit.Moved moved(double moreKg, double moreTurningKg, RoadLoad moreLoad) {
        var mean = load().mean();
        var other = new RoadLoad(
                mean.rollingCoefficient() + moreLoad.rollingCoefficient(), mean.dragAreaM2() + moreLoad.dragAreaM2());
        var heavier = setting().withMass(setting().massKg() + moreKg);
        return new ThrustFit.Moved(heavier.effectiveKg() + moreTurningKg, v -> other.forceN(heavier, v));
    }

    /// The mean power from rest to a speed.
    Power mean(Target target, TracedStart start, TracedStart.Reached.Yes reached) {
        var fit = start.fitted().orElseThrow();
        double v = target.speedMps();
        double cubes = cubes(start.samples(), fit.motionS(), reached.crossing().timeS());
        double perRolling = weightN() * reached.distanceM() / reached.timeS();
        double perArea = setting().airKgPerM3() * cubes / 2 / reached.timeS();
        var mean = load().mean();
        double watts = effectiveKg() * v * v / 2 / reached.timeS()
                + perRolling * mean.rollingCoefficient()
                + perArea * mean.dragAreaM2();
        double sd = watts * StrictMath.hypot(fit.motion().ownSd(), reached.crossingSd()) / reached.timeS();
        double sharedS = StrictMath.hypot(fit.motion().fromBuildUp(), StandingStartRules.FILTER_S);
        return new Power(watts, sd, watts * sharedS / reached.timeS(), perRolling, perArea);
    }

    /// ∫ v³ dt.
    private static double cubes(Channel samples, double fromS, double toS) {
        double sum = 0;
        for (int i = samples.indexAtOrAfter(fromS); i < samples.size() && samples.timeS(i) <= toS; i++) {
            double v = samples.value(i);
            double stepS = i == 0 ? 0 : Math.min(samples.timeS(i) - samples.timeS(i - 1), samples.timeS(i) - fromS);
            sum += v * v * v * stepS;
        }
        return sum;
    }

    /// The highest mean over two seconds between the start and the end of a run; nothing when the run is
    /// shorter than four.
    ///
    /// The highest of many noisy means is too high. So the place of the peak is found over four
    /// seconds, and its value is the mean over the two in their middle, whose ends have noise of their
    /// own. And where one place is as good as another, that one stands whose power is known best, most
    /// often the earlier, for the drag of the air grows with the cube of the speed: the place is where
    /// the power less its standard uncertainty is highest.
    Optional<Power> peak(Channel samples, double fromS) {
        double margin = (StandingStartRules.PEAK_WITHIN_S - StandingStartRules.MEAN_OVER_S) / 2;
        double highest = Double.NEGATIVE_INFINITY;
        double atS = Double.NaN;
        for (int i = 0; i < samples.size(); i++) {
            double toS = samples.timeS(i) + StandingStartRules.PEAK_WITHIN_S;
            boolean inside = samples.timeS(i) >= fromS && toS <= samples.timeS(samples.size() - 1) + 1e-9;
            double watts = inside ? surely(over(samples, samples.timeS(i), toS)) : highest;
            if (watts > highest) {
                highest = watts;
                atS = samples.timeS(i) + margin;
            }
        }
        return Double.isNaN(atS)
                ? Optional.empty()
                : Optional.of(over(samples, atS, atS + StandingStartRules.MEAN_OVER_S)
                        .lessBy(StandingStartRules.PEAK_TOO_HIGH));
    }

    private double surely(Power power) {
        return power.watts() - load().sd(power.perRolling(), power.perDragArea());
    }

    private Power over(Channel samples, double fromS, double toS) {
        double from = speedAt(samples, fromS);
        double to = speedAt(samples, toS);
        double middle = speedAt(samples, (fromS + toS) / 2);
        // By Simpson's rule: a cubic of a nearly quadratic speed.
        double perRolling = weightN() * (from + 4 * middle + to) / 6;
        double cubes = (from * from * from + 4 * middle * middle * middle + to * to * to) / 6;
        double perArea = setting().airKgPerM3() * cubes / 2;
        double watts = effectiveKg() * (to * to - from * from) / 2 / (toS - fromS)
                + perRolling * load().mean().rollingCoefficient()
                + perArea * load().mean().dragAreaM2();
        double sd = effectiveKg() * LINE_SD * StrictMath.hypot(from, to) / (toS - fromS);
        return new Power(watts, sd, 0, perRolling, perArea);
    }

    private static double speedAt(Channel samples, double timeS) {
        var near = samples.between(timeS - LINE_HALF_S, timeS + LINE_HALF_S);
        return near.size() < 3
                ? samples.value(Math.min(samples.indexAtOrAfter(timeS), samples.size() - 1))
                : org.measuredmile.quantity.statistics.LineFit.through(near.timesS(), near.values())
                        .at(timeS);
    }

    /// The tractive force where a speed was crossed, and its standard uncertainty.
    Force force(Target target, Crossing crossing) {
        double newtons = effectiveKg() * crossing.slopeMps2() + roadLoadN(target.speedMps());
        double slopeSd = StandingStartRules.SLOW_NOISE_MPS / target.halfWindowS();
        double massSd = crossing.slopeMps2() * StrictMath.hypot(massSdKg(), turningSdKg());
        return new Force(newtons, StrictMath.hypot(effectiveKg() * slopeSd, massSd));
    }

    /// Newtons.
    record Force(double newtons, double standardUncertainty) {}
}
