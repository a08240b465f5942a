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

    /// From the control's first movement to the onset of deceleration, with the receiver's delay taken off; nothing
    /// without a lever channel.
    Optional<TakeUp> takeUp(Optional<Instrument> instrument) {
        if (stop.leverS().isEmpty()) {
            return Optional.empty();
        }
        var stated = instrument.filter(one -> one.delayS().isPresent());
        boolean isWheel = stop.source().kind() == SpeedSource.Kind.WHEEL;
        double unknownDelayS = isWheel ? 0 : BrakingRules.DELAY_S;
        double delayS = stated.map(one -> one.delayS().getAsDouble()).orElse(unknownDelayS);
        double delaySd = stated.isPresent() || isWheel ? BrakingRules.STATED_DELAY_SD : BrakingRules.DELAY_SD;
        return Optional.of(new TakeUp(fit().onsetS() - delayS - stop.leverS().getAsDouble(), fit().onsetSd(), delaySd));
    }

    /// Take-up time, its own standard uncertainty, and that of the delay which all runs share.
    record TakeUp(double timeS, double ownSd, double delaySd) {}
}
