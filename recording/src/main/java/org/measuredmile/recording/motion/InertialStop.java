package org.measuredmile.recording.motion;

import java.util.function.ToDoubleFunction;
import org.measuredmile.recording.Channel;

/// A hard stop by accelerometer and satellite speed together: the accelerometer says when and how, the satellite
/// speed how fast.
///
/// The forward acceleration, less its own reading at rest, is added up backwards from rest. Its scale (which the
/// bike's pitch under braking changes too), its zero while riding, its slow errors in steps of a tenth of a second,
/// the receiver's lag and the time that the receiver averages over are fitted to the receiver's samples. The onset is
/// where a ramp begins in the raw acceleration, felt on a bike whose fork dives. No shape of the braking itself is
/// assumed.
/// Unit: seconds of the accelerometer on the recording's time base, m, m/s, m/s².
/// Source: integration with zero speed at rest is common practice; the least squares are those of [ModelFit]; priors
/// are house values.
public sealed interface InertialStop {
    /// A worse agreement between the two is refused.
    double MOST_CHI_SQUARE = 2.5;
    /// A scale further from 1 is refused.
    double MOST_SCALE_ERROR = 0.15;
    /// Least rest after the stop, s.
    double REST_S = 1.0;

    /// The stop, with everything it leaves open.
    ///
    /// Shape: `onsetS` and `buildUpS` with standard uncertainties, `onsetFromDiveSd` the part of
    /// the onset's that an unknown dive of the fork leaves open, alike in all stops of a bike;
    /// `curve` is the motion.
    record Known(
            Mounting.Known mounting,
            double onsetS,
            double onsetSd,
            double onsetFromDiveSd,
            double buildUpS,
            double buildUpSd,
            InertialCurve curve,
            ModelFit.Outcome.Settled settled)
            implements InertialStop {
        /// Something that follows from the motion and its onset.
        public interface Quantity {
            double of(InertialCurve curve, double onsetS);
        }

        /// A value, its standard uncertainty, and the parts of it that priors leave open: these do not
        /// shrink when stops of one day are averaged.
        public record Derived(double value, double standardUncertainty, double fromScale, double fromFilter) {}

        /// By how much the receiver's speed comes later than the accelerometer.
        public double lagS() {
            return settled.values()[InertialCurve.LAG];
        }

        public Derived derive(Quantity quantity) {
            double value = quantity.of(curve, onsetS);
            double[] parameters = settled.values();
            double[] gradient = new double[parameters.length];
            for (int i = 0; i < gradient.length; i++) {
                double step = 1e-3 * Math.max(Math.abs(parameters[i]), 0.1);
                gradient[i] = (quantity.of(curve.moved(i, step), onsetS) - quantity.of(curve.moved(i, -step), onsetS))
                        / (2 * step);
            }
            double stepS = 0.002;
            double perOnset = (quantity.of(curve, onsetS + stepS) - quantity.of(curve, onsetS - stepS)) / (2 * stepS);
            double wider = Math.sqrt(Math.max(1, settled.reducedChiSquare()));
            return new Derived(
                    value,
                    StrictMath.hypot(wider * settled.standardUncertainty(gradient), perOnset * onsetSd),
                    settled.fromPriorOf(InertialCurve.SCALE, gradient),
                    settled.fromPriorOf(InertialCurve.FILTER, gradient));
        }

        /// The same for what needs no onset.
        public Derived derive(ToDoubleFunction<InertialCurve> quantity) {
            return derive((one, _) -> quantity.applyAsDouble(one));
        }

        /// Speed and distance at a time, with the uncertainty of each.
        public Smoother.State at(double timeS) {
            var speed = derive(one -> one.speedMps(timeS));
            var way = derive((one, onset) -> one.toRestM(onset) - one.toRestM(timeS));
            return new Smoother.State(
                    timeS,
                    way.value(),
                    speed.value(),
                    curve.accelerationMps2(timeS),
                    way.standardUncertainty(),
                    speed.standardUncertainty());
        }
    }

    /// No such stop, and why.
    record Refused(String reason) implements InertialStop {}

    /// A stop that a receiver's speed shows, made sharp by an accelerometer.
    ///
    /// Unit: `sigmaMps` the standard deviation of one sample of the speed.
    static InertialStop of(Accelerations accelerations, Channel speed, double sigmaMps, Stops.Stop stop) {
        return new InertialSearch(accelerations, speed, sigmaMps, stop).found();
    }
}
