package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.day.Run;
import org.measuredmile.roadload.KnownLoad;
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

    /// Standard uncertainty of the road load at a speed, that of the air in it.
    double roadLoadSdN(double speedMps) {
        double byAir = load().mean().dragAreaM2() * speedMps * speedMps / 2 * road.airSdKgPerM3();
        return StrictMath.hypot(load().forceSdN(setting(), speedMps), byAir);
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
    ///
    /// Unit: watts, of a power at a mean speed.
    Shared shared(double powerW, double speedMps) {
        double drag = setting().airKgPerM3() * speedMps * speedMps * speedMps / 2;
        double perKg = Math.max(0, powerW - drag * load().mean().dragAreaM2()) / effectiveKg();
        return new Shared(perKg * massSdKg(), perKg * turningSdKg(), roadLoadSdN(speedMps) * speedMps);
    }

    /// Standard uncertainties by their causes, in watts.
    record Shared(double byMass, double byWheels, double byRoadLoad) {}

    /// A power, the mean speed it was delivered at, the standard uncertainty of this one run, and what of it the
    /// day's runs share.
    record Power(double watts, double speedMps, double ownSd, double sharedSd) {
        Power lessBy(double share) {
            return new Power(watts * (1 - share), speedMps, ownSd, sharedSd);
        }
    }

    /// The mean power from rest to a speed.
    Power mean(Target target, TracedStart start, TracedStart.Reached.Yes reached) {
        var fit = start.fitted().orElseThrow();
        double v = target.speedMps();
        double work = effectiveKg() * v * v / 2
                + roadWorkJ(start.samples(), fit.motionS(), reached.crossing().timeS());
        double watts = work / reached.timeS();
        double sd = watts * StrictMath.hypot(fit.motion().ownSd(), reached.crossingSd()) / reached.timeS();
        double sharedS = StrictMath.hypot(fit.motion().fromBuildUp(), StandingStartRules.FILTER_S);
        return new Power(watts, reached.distanceM() / reached.timeS(), sd, watts * sharedS / reached.timeS());
    }

    private double roadWorkJ(Channel samples, double fromS, double toS) {
        double joules = 0;
        for (int i = samples.indexAtOrAfter(fromS); i < samples.size() && samples.timeS(i) <= toS; i++) {
            double v = samples.value(i);
            double stepS = i == 0 ? 0 : Math.min(samples.timeS(i) - samples.timeS(i - 1), samples.timeS(i) - fromS);
            joules += roadLoadN(v) * v * stepS;
        }
        return joules;
    }

    /// The highest mean over two seconds between the start and the end of a run; nothing when the run is
    /// shorter than four.
    ///
    /// The highest of many noisy means is too high. So the place of the peak is that of the highest mean over four
    /// seconds, and its value the mean over the two in their middle, whose ends have noise of their own.
    Optional<Power> peak(Channel samples, double fromS) {
        double margin = (StandingStartRules.PEAK_WITHIN_S - StandingStartRules.MEAN_OVER_S) / 2;
        double highest = Double.NEGATIVE_INFINITY;
        double atS = Double.NaN;
        for (int i = 0; i < samples.size(); i++) {
            double toS = samples.timeS(i) + StandingStartRules.PEAK_WITHIN_S;
            boolean inside = samples.timeS(i) >= fromS && toS <= samples.timeS(samples.size() - 1) + 1e-9;
            double watts = inside ? over(samples, samples.timeS(i), toS).watts() : highest;
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

    private Power over(Channel samples, double fromS, double toS) {
        double from = speedAt(samples, fromS);
        double to = speedAt(samples, toS);
        double middle = speedAt(samples, (fromS + toS) / 2);
        // By Simpson's rule: v·R(v) is a cubic of a nearly quadratic speed.
        double roadW = (from * roadLoadN(from) + 4 * middle * roadLoadN(middle) + to * roadLoadN(to)) / 6;
        double watts = effectiveKg() * (to * to - from * from) / 2 / (toS - fromS) + roadW;
        double sd = effectiveKg() * LINE_SD * StrictMath.hypot(from, to) / (toS - fromS);
        return new Power(watts, middle, sd, 0);
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
