package org.measuredmile.trial.braking;

import org.measuredmile.recording.motion.InertialStop;

/// Something that follows from a traced stop, and the parts of its uncertainty that all runs of a day share.
///
/// Unit: those of the value; `fromBuildUp`, `fromRise` and `fromFilter` are what the priors of the fit leave open,
/// `fromScale` what the accelerometer's scale and pitch do, `fromOnset` what an unknown dive of the fork does to the
/// onset.
interface StopValue {
    double value();

    double standardUncertainty();

    double fromBuildUp();

    double fromFilter();

    double fromRise();

    default double fromScale() {
        return 0;
    }

    default double fromOnset() {
        return 0;
    }

    /// By accelerometer and satellite speed together: neither build-up nor rise is assumed. The standard
    /// uncertainty is of this stop by itself: what all stops of a day share stands beside it.
    record Inertial(double value, double standardUncertainty, double fromFilter, double fromScale, double fromOnset)
            implements StopValue {
        static Inertial of(InertialStop.Known stop, InertialStop.Known.Quantity quantity) {
            var derived = stop.derive(quantity);
            double later = quantity.of(stop.curve(), stop.onsetS() + stop.onsetFromDiveSd());
            double fromOnset = Math.abs(later - derived.value());
            double shared = StrictMath.hypot(StrictMath.hypot(derived.fromFilter(), derived.fromScale()), fromOnset);
            double whole = derived.standardUncertainty();
            return new Inertial(
                    derived.value(),
                    Math.sqrt(Math.max(0, whole * whole - shared * shared)),
                    derived.fromFilter(),
                    derived.fromScale(),
                    fromOnset);
        }

        @Override
        public double fromBuildUp() {
            return 0;
        }

        @Override
        public double fromRise() {
            return 0;
        }
    }
}
