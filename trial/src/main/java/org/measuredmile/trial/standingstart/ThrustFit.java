package org.measuredmile.trial.standingstart;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.motion.ModelFit;
import org.measuredmile.recording.motion.ModelFit.Parameter;

/// Launch force and power limit of one start: the equation of motion fitted to its speed.
///
/// Formula: (m + m_w)·dv/dt = c(t)·(min(F₀, P/v) − R(v)), c rising evenly from 0 to 1 over the build-up, R the road
/// load on the level in still air.
/// Shape: samples from rest to nine tenths of the highest speed in, an [Outcome] out.
/// Unit: newtons and watts at the wheel; standard uncertainties are those of this one run, `fromBuildUp` what the
/// build-up's prior leaves open and all runs share.
/// Source: handbook page of the trial, step 5.
final class ThrustFit {
    private static final int MOTION = 0;
    private static final int BUILD_UP = 1;
    private static final int LAUNCH = 2;
    private static final int POWER = 3;
    private static final double STEP_S = 0.02;
    private static final double MOTION_SD = 0.25;
    /// Looser than this, a speed-up says nothing of a force or a power.
    private static final double MOST_RELATIVE = 0.25;
    /// Nearer to the highest speed, help may be fading.
    private static final double OF_HIGHEST = 0.9;

    private ThrustFit() {}

    /// A force or a power, its own standard uncertainty and that from the prior of the build-up.
    record Found(double value, double ownSd, double fromBuildUp) {}

    /// What a start says of both, and how the two lean on each other in this one run.
    sealed interface Outcome {
        record Known(Found launchN, Found powerW, double correlation) implements Outcome {}

        record None(String why) implements Outcome {}
    }

    /// What is moved: the mass with its wheels' turning, and the road load at a speed in newtons.
    record Moved(double effectiveKg, DoubleUnaryOperator roadLoad) {
        double roadLoadN(double speedMps) {
            return roadLoad.applyAsDouble(speedMps);
        }
    }

    /// Fits a start that qualifies.
    static Outcome of(TracedStart start, Moved moved) {
        var first = start.fitted().orElseThrow();
        var samples = cut(start, first.motionS());
        if (samples.size() < 12) {
            return new Outcome.None(
                    "only " + samples.size() + " samples of the start, at least 12 needed for its force");
        }
        double launchN = moved.effectiveKg() * first.curve().accelerationMps2() + moved.roadLoadN(1);
        double topMps = OF_HIGHEST * start.highestMps();
        double powerW = Math.max(100, 0.6 * launchN * topMps);
        double lastS = samples.timeS(samples.size() - 1);
        var parameters = List.of(
                Parameter.known("first movement", first.motionS(), MOTION_SD, first.motionS() - 2, first.motionS() + 2),
                Parameter.known(
                        "build-up of thrust", StandingStartRules.BUILD_UP_S, StandingStartRules.BUILD_UP_SD, 0.05, 1.5),
                Parameter.free("launch force", launchN, 10, 3000),
                new Parameter("power limit", powerW, powerW, 3 * powerW, 20, 20_000));
        double[] times = samples.timesS();
        ModelFit.Model model = p -> shown(times, lastS, p, moved, first.restMps());
        double sigma = start.source().sigmaMps() * lasting(samples.medianStepS());
        return switch (ModelFit.fit(samples.values(), sigma, model, parameters)) {
            case ModelFit.Outcome.NotSettled _ -> new Outcome.None("the fit of force and power did not settle");
            case ModelFit.Outcome.Settled settled -> judged(settled);
        };
    }

    private static Channel cut(TracedStart start, double motionS) {
        double topMps = OF_HIGHEST * start.highestMps();
        var after = start.samples().between(motionS - 1, Double.MAX_VALUE);
        int last = 0;
        while (last < after.size() && (after.timeS(last) < start.cutEndS() || after.value(last) < topMps)) {
            last++;
        }
        return last == 0 ? after : after.between(after.timeS(0), after.timeS(Math.min(last, after.size() - 1)));
    }

    /// How much wider a sample counts because the receiver's noise lasts a while.
    private static double lasting(double stepS) {
        double kept = StrictMath.exp(-stepS / StandingStartRules.NOISE_LASTS_S);
        double share = 1.0 / 3;
        return Math.sqrt(1 - share + share * (1 + kept) / (1 - kept));
    }

    /// Speeds by the midpoint rule, brought to the samples' times on straight lines.
    private static double[] shown(double[] times, double lastS, double[] p, Moved moved, double restMps) {
        double[] shown = new double[times.length];
        double v = 0;
        double timeS = p[MOTION];
        int next = 0;
        while (next < times.length && times[next] <= timeS) {
            shown[next++] = restMps;
        }
        while (timeS < lastS && next < times.length) {
            double half = v + rate(timeS - p[MOTION], v, p, moved) * STEP_S / 2;
            double after = Math.max(0, v + rate(timeS - p[MOTION] + STEP_S / 2, Math.max(0, half), p, moved) * STEP_S);
            while (next < times.length && times[next] <= timeS + STEP_S) {
                double at = v + (after - v) * (times[next] - timeS) / STEP_S;
                shown[next++] = Math.sqrt(at * at + restMps * restMps);
            }
            v = after;
            timeS += STEP_S;
        }
        while (next < times.length) {
            shown[next++] = v;
        }
        return shown;
    }

    private static double rate(double u, double v, double[] p, Moved moved) {
        double share = Math.clamp(u / p[BUILD_UP], 0, 1);
        double force = v * p[LAUNCH] <= p[POWER] ? p[LAUNCH] : p[POWER] / v;
        return share * (force - moved.roadLoadN(v)) / moved.effectiveKg();
    }

    private static Outcome judged(ModelFit.Outcome.Settled settled) {
        if (settled.reducedChiSquare() > StandingStartRules.MOST_CHI_SQUARE) {
            return new Outcome.None("no one force and power describe the start: reduced χ² of the fit "
                    + StandingStartWords.number(settled.reducedChiSquare()) + ", at most "
                    + StandingStartWords.number(StandingStartRules.MOST_CHI_SQUARE));
        }
        var launch = found(settled, LAUNCH);
        var power = found(settled, POWER);
        for (var one : List.of(launch, power)) {
            double relative = StrictMath.hypot(one.ownSd(), one.fromBuildUp()) / one.value();
            if (!settled.onBound().isEmpty() || relative > MOST_RELATIVE) {
                return new Outcome.None(
                        "the start does not tell force from power: known to " + Math.round(100 * relative)
                                + " %, at most " + Math.round(100 * MOST_RELATIVE) + " % is of use");
            }
        }
        double covariance = settled.covariance()[LAUNCH][POWER];
        double sds = Math.sqrt(settled.covariance()[LAUNCH][LAUNCH] * settled.covariance()[POWER][POWER]);
        return new Outcome.Known(launch, power, sds > 0 ? Math.clamp(covariance / sds, -1, 1) : 0);
    }

    private static Found found(ModelFit.Outcome.Settled settled, int parameter) {
        double[] gradient = new double[settled.values().length];
        gradient[parameter] = 1;
        double all = settled.standardUncertainty(gradient);
        double shared = settled.fromPriorOf(BUILD_UP, gradient);
        return new Found(settled.values()[parameter], Math.sqrt(Math.max(0, all * all - shared * shared)), shared);
    }
}
