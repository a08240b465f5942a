package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.quantity.statistics.LineFit;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.motion.ModelFit;
import org.measuredmile.recording.motion.ModelFit.Parameter;

/// The model of a start fitted to the raw samples of the first metres.
///
/// Shape: samples from rest to 3.5 m/s in, a [Fitted] out where the fit settles. Samples below half a
/// metre a second stay in: the model, not a threshold, knows that they say little.
/// Unit: times in the recording's seconds.
/// Source: handbook page of the trial, step 3.
final class StartFit {
    static final int MOTION = 0;
    static final int BUILD_UP = 1;
    static final int ACCELERATION = 2;
    static final int FADE = 3;

    private StartFit() {}

    /// A start that the fit settled on.
    record Fitted(StartCurve curve, double motionS, double restMps, ModelFit.Outcome.Settled settled) {
        double motionSd() {
            return Math.sqrt(settled.covariance()[MOTION][MOTION]);
        }

        /// Where full thrust, followed back, would have begun: half a build-up after the first movement.
        double rampS() {
            return motionS + curve.buildUpS() / 2;
        }

        /// What the receiver would show at a time of the recording.
        double shownMps(double timeS) {
            return shown(curve, timeS - motionS, restMps);
        }

        /// How well the beginning is known: by this run's samples, and by the priors, which all runs of a
        /// day share.
        Beginning motion() {
            return beginning(new double[] {1, 0, 0, 0});
        }

        Beginning ramp() {
            return beginning(new double[] {1, 0.5, 0, 0});
        }

        private Beginning beginning(double[] gradient) {
            double chiSquare = settled.reducedChiSquare();
            double wider = chiSquare > StandingStartRules.WIDENING_CHI_SQUARE ? Math.sqrt(chiSquare) : 1;
            double all = wider * settled.standardUncertainty(gradient);
            double buildUp = settled.fromPriorOf(BUILD_UP, gradient);
            double fade = settled.fromPriorOf(FADE, gradient);
            return new Beginning(Math.sqrt(Math.max(0, all * all - buildUp * buildUp - fade * fade)), buildUp, fade);
        }
    }

    /// Standard uncertainties of a beginning, in seconds.
    record Beginning(double ownSd, double fromBuildUp, double fromFade) {}

    /// What came of it.
    sealed interface Result {
        record Good(Fitted fitted) implements Result {}

        record Bad(String why) implements Result {}
    }

    /// Fits the model.
    ///
    /// Unit: `sigmaMps` the standard deviation of a sample, `restMps` what the receiver shows at rest.
    /// Shape: the samples may say anything of when the bike first moved; for the reference examples.
    static Result fit(Channel samples, double sigmaMps, double restMps) {
        return fit(samples, sigmaMps, restMps, parameters(samples));
    }

    /// The same with the last sample at rest, near which the first movement lies: without it, a bike that
    /// creeps away could have begun at any time.
    static Result fit(Channel samples, double sigmaMps, double restMps, double restEndS) {
        var parameters = new ArrayList<>(parameters(samples));
        parameters.set(
                MOTION,
                Parameter.known(
                        "first movement",
                        restEndS - StandingStartRules.MOVES_BEFORE_S,
                        StandingStartRules.MOVES_BEFORE_SD,
                        restEndS - 3,
                        restEndS + 3));
        return fit(samples, sigmaMps, restMps, parameters);
    }

    private static Result fit(Channel samples, double sigmaMps, double restMps, List<Parameter> parameters) {
        double[] times = samples.timesS();
        ModelFit.Model model = values -> {
            var curve = curveOf(values);
            double[] shown = new double[times.length];
            for (int i = 0; i < shown.length; i++) {
                shown[i] = shown(curve, times[i] - values[MOTION], restMps);
            }
            return shown;
        };
        return switch (ModelFit.fit(samples.values(), sigmaMps, model, parameters)) {
            case ModelFit.Outcome.Settled settled ->
                new Result.Good(new Fitted(curveOf(settled.values()), settled.values()[MOTION], restMps, settled));
            case ModelFit.Outcome.NotSettled(double lastCost) ->
                new Result.Bad("the fit of the start did not settle (last cost " + StandingStartWords.number(lastCost)
                        + ", at most 200 steps)");
        };
    }

    private static double shown(StartCurve curve, double u, double restMps) {
        double speed = Math.max(0, curve.speedMps(u));
        return Math.sqrt(speed * speed + restMps * restMps);
    }

    private static StartCurve curveOf(double[] p) {
        return new StartCurve(Math.max(p[BUILD_UP], 1e-6), p[ACCELERATION], p[FADE]);
    }

    /// Begins with the line through the samples that move.
    private static List<Parameter> parameters(Channel samples) {
        var moving = new ArrayList<Integer>();
        for (int i = 0; i < samples.size(); i++) {
            if (samples.value(i) > StandingStartRules.REST_MPS) {
                moving.add(i);
            }
        }
        double acceleration = 1.5;
        double motion = samples.timeS(samples.size() - 1) - StandingStartRules.CUT_MPS / acceleration;
        if (moving.size() >= 3) {
            var line = LineFit.through(
                    moving.stream().mapToDouble(samples::timeS).toArray(),
                    moving.stream().mapToDouble(samples::value).toArray());
            if (line.slope() > 0.2) {
                acceleration = Math.min(line.slope(), 8);
                motion = -line.intercept() / line.slope() - StandingStartRules.BUILD_UP_S / 2;
            }
        }
        return List.of(
                Parameter.free("first movement", motion, motion - 3, motion + 3),
                Parameter.known(
                        "build-up of thrust", StandingStartRules.BUILD_UP_S, StandingStartRules.BUILD_UP_SD, 0.01, 1.5),
                Parameter.free("acceleration", acceleration, 0.1, 10),
                Parameter.known(
                        "fading of acceleration", StandingStartRules.FADE_MPS3, StandingStartRules.FADE_SD, -3, 3));
    }
}
