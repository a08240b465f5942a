package org.measuredmile.trial.braking;

import java.util.List;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.motion.ModelFit.Parameter;
import org.measuredmile.recording.motion.Stops;

/// One stop of a ride and its fit as the braking trial does it, for whoever measures how long that takes.
///
/// Shape: the samples around the stop, and the parameters with their starts, priors and bounds.
public record BrakedStop(Channel samples, double sigmaMps, double restMps, List<Parameter> parameters) {
    private static final double SIGMA_MPS = 0.08;

    /// The first stop of a ride that came to rest.
    ///
    /// Error: IllegalArgumentException where the ride has none.
    public static BrakedStop firstOf(Channel speed) {
        var stop = Stops.find(speed).stream()
                .filter(Stops.Stop::cameToRest)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no stop in " + speed.name()));
        var samples = speed.between(
                stop.onsetS() - BrakingRules.CUT_BEFORE_S,
                Math.min(stop.endS(), stop.restS() + BrakingRules.CUT_AFTER_S));
        double rest = Stops.median(samples, stop.restS(), samples.timeS(samples.size() - 1));
        var parameters =
                StopFit.parameters(stop.entryMps(), stop.onsetS(), stop.roughDecelerationMps2(), BrakingRules.RECEIVER);
        return new BrakedStop(samples, SIGMA_MPS, rest, parameters);
    }

    /// Twice the cost, the seven parameters, and their standard uncertainties.
    ///
    /// Error: IllegalStateException where the fit does not settle.
    public double[] fitted() {
        return switch (StopFit.fit(samples, sigmaMps, restMps, parameters)) {
            case StopFit.Result.Good(var good) -> {
                double[] values = good.settled().values();
                double[] all = new double[1 + 2 * values.length];
                all[0] = good.settled().cost();
                for (int i = 0; i < values.length; i++) {
                    all[1 + i] = values[i];
                    all[1 + values.length + i] = Math.sqrt(good.settled().covariance()[i][i]);
                }
                yield all;
            }
            case StopFit.Result.Bad(var why) -> throw new IllegalStateException(why);
        };
    }
}
