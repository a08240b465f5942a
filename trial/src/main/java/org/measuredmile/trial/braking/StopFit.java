package org.measuredmile.trial.braking;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.motion.ModelFit;
import org.measuredmile.recording.motion.ModelFit.Parameter;
import org.measuredmile.recording.motion.Stops;

/// The whole model of a stop fitted to raw samples: entry, onset, build-up, braking, rest, and the receiver's
/// filter.
///
/// Shape: samples of speed around one stop in, a [Fitted] out where the fit settles. Times in the recording's
/// seconds.
/// Valid: one brake application with steady riding before it and rest after it.
/// Source: handbook page of the trial, step 3.
final class StopFit {
    static final int ENTRY = 0;
    static final int DRIFT = 1;
    static final int ONSET = 2;
    static final int BUILD_UP = 3;
    static final int DECELERATION = 4;
    static final int RISE = 5;
    static final int FILTER = 6;
    private static final int PARAMETERS = 7;

    private StopFit() {}

    /// What is known of every stop before its samples speak.
    ///
    /// Unit: seconds, m/s³; each mean and standard deviation.
    record Priors(double buildUpS, double buildUpSd, double riseMps3, double riseSd, double filterS, double filterSd) {}

    /// A stop that the fit settled on.
    record Fitted(StopCurve curve, double onsetS, double filterS, double restMps, ModelFit.Outcome.Settled settled) {
        /// The value and its sensitivity to each parameter, for something that follows from the curve.
        Derived derive(ToDoubleFunction<StopCurve> quantity) {
            double[] values = settled.values();
            double[] gradient = new double[PARAMETERS];
            for (int i = 0; i < PARAMETERS; i++) {
                double step = 1e-5 * Math.max(Math.abs(values[i]), 0.1);
                gradient[i] = (quantity.applyAsDouble(curveOf(moved(values, i, step)))
                                - quantity.applyAsDouble(curveOf(moved(values, i, -step))))
                        / (2 * step);
            }
            return new Derived(quantity.applyAsDouble(curve), gradient, settled);
        }

        private static double[] moved(double[] values, int index, double by) {
            double[] moved = values.clone();
            moved[index] += by;
            return moved;
        }

        double onsetSd() {
            return Math.sqrt(settled.covariance()[ONSET][ONSET]);
        }

        double restS() {
            return onsetS + curve.durationS();
        }

        /// What the receiver would show at a time of the recording.
        double shownMps(double timeS) {
            return shown(curve, timeS - onsetS, filterS, restMps);
        }
    }

    /// Something that follows from a fitted curve.
    record Derived(double value, double[] gradient, ModelFit.Outcome.Settled settled) implements StopValue {
        @Override
        public double standardUncertainty() {
            return settled.standardUncertainty(gradient);
        }

        /// What the prior of the build-up leaves open.
        @Override
        public double fromBuildUp() {
            return settled.fromPriorOf(BUILD_UP, gradient);
        }

        /// What the prior of the receiver's filter leaves open.
        @Override
        public double fromFilter() {
            return settled.fromPriorOf(FILTER, gradient);
        }

        /// What the prior of the deceleration's change leaves open.
        @Override
        public double fromRise() {
            return settled.fromPriorOf(RISE, gradient);
        }
    }

    /// What came of it.
    sealed interface Result {
        record Good(Fitted fitted) implements Result {}

        record Bad(String why) implements Result {}
    }

    /// Fits a stop with the build-up, the rise and the filter as the priors have them.
    static Result fit(Channel samples, Stops.Stop stop, double sigmaMps, Priors priors) {
        double restMps = restSpeedMps(samples, stop);
        return fit(samples, sigmaMps, restMps, start(samples, stop, priors));
    }

    /// Fits with given start values, priors and bounds; for the reference examples.
    static Result fit(Channel samples, double sigmaMps, double restMps, List<Parameter> parameters) {
        return fit(samples, sigmaMps, restMps, parameters, StopFit::curveOf);
    }

    /// What curve parameters make.
    interface Curves {
        StopCurve of(double[] parameters);
    }

    /// The same with another model of the build-up.
    static Result fit(Channel samples, double sigmaMps, double restMps, List<Parameter> parameters, Curves curves) {
        double[] times = samples.timesS();
        ModelFit.Model model = values -> {
            var curve = curves.of(values);
            double[] shown = new double[times.length];
            for (int i = 0; i < shown.length; i++) {
                shown[i] = shown(curve, times[i] - values[ONSET], values[FILTER], restMps);
            }
            return shown;
        };
        return switch (ModelFit.fit(samples.values(), sigmaMps, model, parameters)) {
            case ModelFit.Outcome.Settled settled ->
                new Result.Good(new Fitted(
                        curves.of(settled.values()),
                        settled.values()[ONSET],
                        settled.values()[FILTER],
                        restMps,
                        settled));
            case ModelFit.Outcome.NotSettled(double lastCost) ->
                new Result.Bad("the fit did not settle (last cost " + BrakingWords.number(lastCost) + ")");
        };
    }

    private static double shown(StopCurve curve, double u, double filterS, double restMps) {
        double mean = curve.meanSpeedMps(u, filterS);
        return Math.sqrt(mean * mean + restMps * restMps);
    }

    static StopCurve curveOf(double[] p) {
        return new StopCurve(p[ENTRY], p[DRIFT], Math.max(p[BUILD_UP], 1e-6), p[DECELERATION], p[RISE]);
    }

    /// A speed that is the length of a vector never reads zero: the middle of the last five samples at rest.
    private static double restSpeedMps(Channel samples, Stops.Stop stop) {
        var rest = samples.between(stop.restS(), stop.endS());
        int from = Math.max(0, rest.size() - 5);
        return rest.isEmpty() ? 0 : Stops.median(rest, rest.timeS(from), rest.timeS(rest.size() - 1));
    }

    private static List<Parameter> start(Channel samples, Stops.Stop stop, Priors priors) {
        double entry = stop.entryMps();
        double[] line = line(samples.between(stop.onsetS(), stop.restS()), 0.2 * entry, 0.8 * entry);
        double deceleration = Math.clamp(-line[1], 1.5, 11);
        double onset = (entry - line[0]) / line[1] - 0.1;
        double begin = Double.isFinite(onset) ? Math.clamp(onset, stop.onsetS() - 0.5, stop.restS()) : stop.onsetS();
        return parameters(entry, begin, deceleration, priors);
    }

    /// The seven parameters with their priors and bounds.
    static List<Parameter> parameters(double entryMps, double onsetS, double decelerationMps2, Priors priors) {
        return List.of(
                Parameter.free("entry speed", entryMps, 0, 40),
                Parameter.free("change of speed before", 0, -5, 5),
                Parameter.free("onset", onsetS, onsetS - 3, onsetS + 3),
                Parameter.known("build-up time", priors.buildUpS(), priors.buildUpSd(), 0, 0.9),
                Parameter.free("deceleration", decelerationMps2, 1, 12),
                Parameter.known("change of deceleration", priors.riseMps3(), priors.riseSd(), -10, 10),
                Parameter.known("receiver's filter", priors.filterS(), priors.filterSd(), 0.02, 0.9));
    }

    /// Least-squares line through the samples between two speeds: value at time 0 and slope.
    private static double[] line(Channel samples, double lowMps, double highMps) {
        double sumT = 0;
        double sumV = 0;
        int count = 0;
        for (int i = 0; i < samples.size(); i++) {
            if (samples.value(i) >= lowMps && samples.value(i) <= highMps) {
                sumT += samples.timeS(i);
                sumV += samples.value(i);
                count++;
            }
        }
        double meanT = sumT / count;
        double meanV = sumV / count;
        double above = 0;
        double below = 0;
        for (int i = 0; i < samples.size(); i++) {
            if (samples.value(i) >= lowMps && samples.value(i) <= highMps) {
                above += (samples.timeS(i) - meanT) * (samples.value(i) - meanV);
                below += (samples.timeS(i) - meanT) * (samples.timeS(i) - meanT);
            }
        }
        double slope = below > 0 ? above / below : -5;
        return new double[] {meanV - slope * meanT, slope};
    }
}
