package org.measuredmile.trial.braking;

import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.motion.SpeedSource;

/// What one fitted stop gives, at the nominal entry speed and on level road.
///
/// Unit: metres, metres per second squared, seconds.
record TraceValues(TracedStop stop, double nominalMps, double slope) {
    private StopFit.Fitted fit() {
        return stop.fitted().orElseThrow();
    }

    /// From the onset of deceleration to rest.
    StopFit.Derived brakingDistance() {
        return derived(curve -> BrakingCorrection.levelDistance(
                BrakingCorrection.atNominal(curve.distanceM(), curve.entryMps(), nominalMps), nominalMps, slope));
    }

    StopFit.Derived meanDeceleration() {
        return derived(curve -> BrakingCorrection.levelDeceleration(
                BrakingCorrection.meanDeceleration(curve.entryMps(), curve.distanceM()), slope));
    }

    StopFit.Derived meanFullyDeveloped() {
        return derived(curve -> BrakingCorrection.levelDeceleration(curve.meanFullyDevelopedMps2(), slope));
    }

    private StopFit.Derived derived(ToDoubleFunction<StopCurve> quantity) {
        return fit().derive(quantity);
    }

    /// From the control's first movement to the onset of deceleration, with the receiver's delay taken off.
    /// Nothing without a lever channel, and nothing where nobody knows by how much the speed lags behind the
    /// lever: unknown, it is worth a metre.
    Optional<TakeUp> takeUp(Optional<Instrument> instrument) {
        if (stop.leverS().isEmpty() || !knowsDelay(instrument)) {
            return Optional.empty();
        }
        double delayS = instrument
                .filter(one -> one.delayS().isPresent())
                .map(one -> one.delayS().getAsDouble())
                .orElse(0.0);
        return Optional.of(new TakeUp(
                fit().onsetS() - delayS - stop.leverS().getAsDouble(), fit().onsetSd(), BrakingRules.STATED_DELAY_SD));
    }

    /// A wheel's own speed has no delay; a receiver's must be stated.
    private boolean knowsDelay(Optional<Instrument> instrument) {
        return stop.source().kind() == SpeedSource.Kind.WHEEL
                || instrument.filter(one -> one.delayS().isPresent()).isPresent();
    }

    /// Take-up time, its own standard uncertainty, and that of the delay which all runs share.
    record TakeUp(double timeS, double ownSd, double delaySd) {}
}
