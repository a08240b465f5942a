package org.measuredmile.trial.standingstart;

import java.util.Optional;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;
import org.measuredmile.recording.Channel;

/// When a speed was reached: where a parabola through the samples around it crosses the speed.
///
/// Unit: `timeS` in the recording's seconds; `slopeMps2` the parabola's there; `residualMps` the
/// residual standard deviation; `leverage` the variance of the parabola at its middle in units of that of one
/// sample.
record Crossing(double timeS, double slopeMps2, double residualMps, double leverage) {
    static final int FEWEST_SAMPLES = 4;
    private static final int ROUNDS = 3;

    /// Standard uncertainty of the time, for samples of a standard deviation: what the parabola leaves of their
    /// noise, and what lasts too long to average out.
    double sd(double sigmaMps) {
        double speedSd = StrictMath.hypot(
                Math.min(sigmaMps, residualMps) * Math.sqrt(leverage), StandingStartRules.SLOW_NOISE_MPS);
        return speedSd / slopeMps2;
    }

    /// Standard uncertainty of the distance until then: noise that lasts a while hastens the crossing and
    /// lengthens the way to it at once.
    double distanceSd(double speedMps, double timeSd) {
        return Math.max(0, speedMps - slopeMps2 * StandingStartRules.NOISE_LASTS_S) * timeSd;
    }

    /// The crossing near a time, through the samples within a window on either side; nothing when there
    /// are fewer than [#FEWEST_SAMPLES] or the parabola does not reach the speed.
    static Optional<Crossing> of(Channel speed, double thresholdMps, double halfWindowS, double nearS) {
        double timeS = nearS;
        Optional<Crossing> found = Optional.empty();
        for (int round = 0; round < ROUNDS; round++) {
            found = once(speed.between(timeS - halfWindowS, timeS + halfWindowS), thresholdMps, timeS);
            if (found.isEmpty() || Math.abs(found.get().timeS - timeS) > halfWindowS) {
                return Optional.empty();
            }
            timeS = found.get().timeS;
        }
        return found;
    }

    private static Optional<Crossing> once(Channel samples, double thresholdMps, double centreS) {
        if (samples.size() < FEWEST_SAMPLES) {
            return Optional.empty();
        }
        double[][] rows = new double[samples.size()][2];
        for (int i = 0; i < rows.length; i++) {
            double t = samples.timeS(i) - centreS;
            rows[i][0] = t;
            rows[i][1] = t * t;
        }
        var regression = new OLSMultipleLinearRegression();
        regression.newSampleData(samples.values(), rows);
        double[] beta = regression.estimateRegressionParameters();
        double missing = thresholdMps - beta[0];
        double discriminant = beta[1] * beta[1] + 4 * beta[2] * missing;
        if (discriminant < 0) {
            return Optional.empty();
        }
        double root = 2 * missing / (beta[1] + Math.sqrt(discriminant));
        if (!Double.isFinite(root)) {
            return Optional.empty();
        }
        return Optional.of(new Crossing(
                centreS + root,
                beta[1] + 2 * beta[2] * root,
                Math.sqrt(regression.estimateErrorVariance()),
                regression.estimateRegressionParametersVariance()[0][0]));
    }
}
