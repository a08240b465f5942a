package org.measuredmile.trial.braking;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.TrialInput;

/// What all runs of a day share and what therefore does not average out: scales, slope, wind, mark, and the
/// priors of the fit.
///
/// Unit: contributions in the SI unit of the figure.
final class BrakingBudget {
    private final TrialInput input;

    BrakingBudget(TrialInput input) {
        this.input = input;
    }

    /// Common to a mean of taped distances at the nominal speed.
    List<Contribution> ofTape(double meanM, List<BrakingRun> counted, BrakingRules.Nominal nominal) {
        var all = new ArrayList<Contribution>();
        var entry = counted.getFirst().tape().orElseThrow().entry().instrument();
        all.add(scale(entry, 2 * meanM, "entry speed"));
        all.add(Contribution.typeB(
                "mark against the control's first movement", nominal.speedMps() * BrakingRules.MARK_COMMON_S));
        counted.getFirst()
                .tape()
                .flatMap(tape -> tape.distance().instrument())
                .filter(tape -> tape.calibration().isPresent())
                .ifPresent(tape -> all.add(scale(Optional.of(tape), meanM, "tape")));
        all.addAll(road(meanM, BrakingCorrection.meanDeceleration(nominal.speedMps(), meanM)));
        return all;
    }

    /// Common to a mean of what fits of traces gave. Distances and decelerations alike go with the speed scale
    /// once.
    List<Contribution> ofTrace(double mean, double decelerationMps2, List<TraceValues> counted, Derivation derivation) {
        var all = new ArrayList<Contribution>();
        var first = counted.getFirst().stop();
        all.add(scale(input.instrumentOf(first.recording()), mean, first.sourceTitle()));
        all.add(fromPrior("build-up of the brakes (assumed)", counted, derivation, StopValue::fromBuildUp));
        all.add(fromPrior("receiver's filter (assumed)", counted, derivation, StopValue::fromFilter));
        all.add(fromPrior("change of deceleration (assumed)", counted, derivation, StopValue::fromRise));
        all.add(fromPrior("accelerometer's scale and pitch", counted, derivation, StopValue::fromScale));
        all.add(fromPrior("onset on a fork that dives (assumed)", counted, derivation, StopValue::fromOnset));
        all.addAll(road(mean, decelerationMps2));
        return all;
    }

    /// What shaking leaves open of each stop by itself, where an accelerometer was used: it is beside the
    /// scatter that stops by satellite speed alone are known to have.
    static double ofSingleStops(List<TraceValues> counted, Derivation derivation) {
        double squares = 0;
        for (var values : counted) {
            if (values.stop().sharp().isPresent()) {
                double u = derivation.of(values).standardUncertainty();
                squares += u * u;
            }
        }
        return Math.sqrt(squares / counted.size());
    }

    /// How a figure follows from a fit.
    interface Derivation {
        StopValue of(TraceValues values);
    }

    /// All runs of a day share brakes and receiver, so that what a prior leaves open has one sign in all of them.
    private static Contribution fromPrior(
            String title, List<TraceValues> counted, Derivation derivation, ToDoubleFunction<StopValue> part) {
        double sum = 0;
        for (var values : counted) {
            sum += part.applyAsDouble(derivation.of(values));
        }
        return Contribution.typeB(title, sum / counted.size());
    }

    private static Contribution scale(Optional<Instrument> instrument, double sensitivity, String what) {
        var calibration = instrument.flatMap(Instrument::calibration);
        if (calibration.isPresent()) {
            String id = instrument.orElseThrow().id();
            return Contribution.typeB(
                            "calibration of " + id + " (" + what + ")",
                            Math.abs(sensitivity) * calibration.get().standardUncertainty())
                    .sharedAs("calibration of " + id);
        }
        return Contribution.typeB(
                "scale of the " + what + " (not calibrated)", Math.abs(sensitivity) * assumedScale(instrument, what));
    }

    private static double assumedScale(Optional<Instrument> instrument, String what) {
        boolean isWheel = instrument
                .map(one -> one.kind() == Instrument.Kind.WHEEL)
                .orElse(what.equals(SpeedSource.Kind.WHEEL.title()));
        return isWheel ? BrakingRules.WHEEL_SCALE : BrakingRules.RECEIVER_SCALE;
    }

    private List<Contribution> road(double mean, double decelerationMps2) {
        boolean isRead = input.readings().ofDay("slope").isPresent();
        double slope = isRead ? BrakingRules.READ_SLOPE : BrakingRules.LEVEL_SLOPE;
        var all = new ArrayList<Contribution>();
        all.add(Contribution.typeB(
                isRead ? "slope of the road" : "slope of the road (taken for level)",
                Math.abs(mean) * BrakingRules.GRAVITY_MPS2 * slope / decelerationMps2));
        var wind = input.readings().ofDay("wind-speed");
        if (wind.isEmpty()) {
            all.add(Contribution.typeB(
                    "wind (not written down)",
                    Math.abs(mean) * BrakingRules.PER_WIND_MPS * BrakingRules.UNKNOWN_WIND_MPS));
        } else if (wind.get().si() > BrakingRules.MOST_WIND_MPS) {
            all.add(Contribution.typeB(
                    "wind above the limit",
                    Math.abs(mean) * BrakingRules.PER_WIND_MPS * wind.get().si()));
        }
        return all;
    }
}
