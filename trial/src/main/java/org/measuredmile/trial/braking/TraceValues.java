package org.measuredmile.trial.braking;

import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.motion.InertialCurve;
import org.measuredmile.recording.motion.InertialStop;
import org.measuredmile.recording.motion.SpeedSource;

/// What one fitted stop gives, at the nominal entry speed and on level road.
///
/// Unit: metres, metres per second squared, seconds.
record TraceValues(TracedStop stop, double nominalMps, double slope) {
    private StopFit.Fitted fit() {
        return stop.fitted().orElseThrow();
    }

    /// From the onset of deceleration to rest.
    StopValue brakingDistance() {
        return derived(
                curve -> distance(curve.distanceM(), curve.entryMps()),
                (curve, onsetS) -> distance(curve.toRestM(onsetS), curve.speedMps(onsetS)));
    }

    private double distance(double metres, double entryMps) {
        return BrakingCorrection.levelDistance(
                BrakingCorrection.atNominal(metres, entryMps, nominalMps), nominalMps, slope);
    }

    StopValue meanDeceleration() {
        return derived(
                curve -> level(BrakingCorrection.meanDeceleration(curve.entryMps(), curve.distanceM())),
                (curve, onsetS) ->
                        level(BrakingCorrection.meanDeceleration(curve.speedMps(onsetS), curve.toRestM(onsetS))));
    }

    StopValue meanFullyDeveloped() {
        return derived(
                curve -> level(curve.meanFullyDevelopedMps2()),
                (curve, onsetS) -> level(fullyDeveloped(curve, curve.speedMps(onsetS))));
    }

    /// Between 0.8 and 0.1 of the entry speed, by distance.
    private static double fullyDeveloped(InertialCurve curve, double entryMps) {
        double between = curve.toRestM(curve.fallsToS(0.8 * entryMps)) - curve.toRestM(curve.fallsToS(0.1 * entryMps));
        return (0.64 - 0.01) * entryMps * entryMps / (2 * between);
    }

    StopValue entrySpeed() {
        return derived(StopCurve::entryMps, InertialCurve::speedMps);
    }

    private double level(double decelerationMps2) {
        return BrakingCorrection.levelDeceleration(decelerationMps2, slope);
    }

    /// By accelerometer and satellite speed where there are both, else by the model of a stop.
    private StopValue derived(ToDoubleFunction<StopCurve> byModel, InertialStop.Known.Quantity byBoth) {
        return stop.sharp()
                .<StopValue>map(sharp -> StopValue.Inertial.of(sharp, byBoth))
                .orElseGet(() -> fit().derive(byModel));
    }

    /// From the control's first movement to the onset of deceleration, with the receiver's delay taken off.
    /// Nothing without a lever channel, and nothing where nobody knows by how much the speed lags behind the
    /// lever: unknown, it is worth a metre.
    Optional<TakeUp> takeUp(Optional<Instrument> instrument) {
        if (stop.leverS().isPresent() && stop.sharp().isPresent() && stop.oneClock()) {
            var sharp = stop.sharp().get();
            double alike = sharp.onsetFromDiveSd();
            double own = Math.sqrt(Math.max(0, sharp.onsetSd() * sharp.onsetSd() - alike * alike));
            return Optional.of(new TakeUp(sharp.onsetS() - stop.leverS().getAsDouble(), own, alike));
        }
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
