package org.measuredmile.demo.ride;

import java.util.function.ToDoubleFunction;

/// How well the best of analysts could know a bike's braking on one day from what was recorded of its stops.
///
/// The analyst knows the noise of the instruments and how runs scatter, and of everything else what is usual: build-up
/// 0.225 ± 0.045 s, a change of deceleration of −10 to +20 %, receivers that average as [SimulatedBraking] has them,
/// bikes that dive by up to 2°. Of the deceleration itself nothing is known beforehand. Entry speed, onset and every
/// run's own deceleration and build-up are open.
/// Shape: linearised about the day's mean stop; a lag counts as an average of the same spread.
final class StopInformation {
    private static final int ENTRY = 0;
    private static final int DRIFT = 1;
    private static final int ONSET = 2;
    private static final int OWN_DECELERATION = 3;
    private static final int OWN_BUILD_UP = 4;
    /// From here on parameters that all stops of the day share.
    private static final int SHARED = 5;
    private static final int DECELERATION = 5;
    private static final int RISE = 6;
    private static final int BUILD_UP = 7;
    private static final int SMOOTHED = 8;
    private static final int CLOCK = 9;
    private static final int SCALE = 10;
    private static final int DIVE = 11;
    private static final int ALL = 12;
    private static final double[] STEPS = {
        0.01, 0.01, 0.005, 0.005, 0.005, 0.005, 0.02, 0.005, 0.001, 0.005, 0.005, 1e-3
    };

    /// Mean square spread in time of the receivers' averages, from one to another, s².
    private static final double SMOOTHED_SD = 0.0051;

    private static final double CLOCK_SD = 0.08;
    private static final double SCALE_SD = 0.01;
    private static final double MOST_DIVE_PER_MPS2 = Math.toRadians(2) / 6;
    private static final double SHAKES_MPS2 = 0.65;
    private static final double GRAVITY_MPS2 = 9.80665;
    private static final double SLOPE_SD = 0.003;
    private static final double FROM_S = -3;
    private static final double INERTIAL_STEP_S = 0.01;

    private final BrakedBike today;
    private final double entryMps;
    private final Information shared;

    private StopInformation(BrakedBike today, double entryMps, Information shared) {
        this.today = today;
        this.entryMps = entryMps;
        this.shared = shared;
    }

    /// Of so many stops seen by a receiver.
    static StopInformation byReceiver(BrakedBike today, double entryMps, int stops, ReceiverModel receiver) {
        return of(today, entryMps, stops, receiver, false);
    }

    /// Of so many stops seen by a receiver and an accelerometer beside it.
    static StopInformation byBoth(BrakedBike today, double entryMps, int stops, ReceiverModel receiver) {
        return of(today, entryMps, stops, receiver, true);
    }

    private static StopInformation of(
            BrakedBike today, double entryMps, int stops, ReceiverModel receiver, boolean withAccelerometer) {
        double[] at = {entryMps, 0, 0, 0, 0, 0, today.riseShare(), today.buildUpS(), spread(receiver), 0, 1, 0};
        at[DIVE] = MOST_DIVE_PER_MPS2 / 2;
        var model = new Seen(today.decelerationMps2(), entryMps);
        var one = new Information(ALL);
        one.known(ENTRY, 0.15);
        one.known(DRIFT, 0.12);
        one.known(ONSET, 10);
        one.known(OWN_DECELERATION, today.runScatter());
        one.known(OWN_BUILD_UP, 0.02);
        double toS = model.stop(at).restS() + 0.5;
        int epochs = (int) ((toS - FROM_S) * receiver.rateHz());
        double[][] byReceiver = sensitivities(at, p -> model.shown(p, epochs, receiver.rateHz()));
        for (double[] row : whitened(byReceiver, receiver)) {
            one.observed(row);
        }
        if (withAccelerometer) {
            int readings = (int) ((toS - FROM_S) / INERTIAL_STEP_S);
            double[][] byInertia = sensitivities(at, p -> model.felt(p, readings));
            for (int i = 1; i < readings; i++) {
                double moving = Math.min(1, model.stop(at).speedMps(FROM_S + i * INERTIAL_STEP_S) / 4);
                double fresh = Math.sqrt(0.75) * (0.03 + SHAKES_MPS2 * moving);
                double[] row = new double[ALL];
                for (int p = 0; p < ALL; p++) {
                    row[p] = (byInertia[p][i] - 0.5 * byInertia[p][i - 1]) / fresh;
                }
                one.observed(row);
            }
        }
        var shared = one.without(SHARED).times(stops);
        shared.known(RISE - SHARED, 0.3 / Math.sqrt(12));
        shared.known(BUILD_UP - SHARED, 0.045);
        shared.known(SMOOTHED - SHARED, SMOOTHED_SD);
        shared.known(CLOCK - SHARED, CLOCK_SD);
        shared.known(SCALE - SHARED, SCALE_SD);
        shared.known(DIVE - SHARED, MOST_DIVE_PER_MPS2 / Math.sqrt(12));
        return new StopInformation(today, entryMps, shared);
    }

    /// The least standard deviation of an estimate of what the day's mean stop gives, from the nominal speed.
    double sd(ToDoubleFunction<BrakedStop> quantity) {
        double[] gradient = new double[ALL - SHARED];
        double logStep = 0.01;
        gradient[DECELERATION - SHARED] =
                (at(today.changed(logStep), quantity) - at(today.changed(-logStep), quantity)) / (2 * logStep);
        double riseStep = 0.02;
        gradient[RISE - SHARED] = (at(risen(riseStep), quantity) - at(risen(-riseStep), quantity)) / (2 * riseStep);
        double buildStep = 0.01;
        gradient[BUILD_UP - SHARED] =
                (at(built(buildStep), quantity) - at(built(-buildStep), quantity)) / (2 * buildStep);
        double perSlope = gradient[DECELERATION - SHARED] * GRAVITY_MPS2 / today.decelerationMps2();
        return StrictMath.hypot(Math.sqrt(shared.variance(gradient)), perSlope * SLOPE_SD);
    }

    private double at(BrakedBike bike, ToDoubleFunction<BrakedStop> quantity) {
        return quantity.applyAsDouble(BrakedStop.of(bike, new BrakedStop.Entry(entryMps, 0, 0)));
    }

    private BrakedBike risen(double by) {
        return new BrakedBike(
                today.decelerationMps2(),
                today.riseShare() + by,
                today.takeUpS(),
                today.buildUpS(),
                today.runScatter(),
                today.dayScatter());
    }

    private BrakedBike built(double by) {
        return today.timed(today.takeUpS(), today.buildUpS() + by);
    }

    /// Mean square spread in time of what a receiver averages over, s².
    private static double spread(ReceiverModel receiver) {
        return switch (receiver.filter()) {
            case ReceiverModel.Filter.None() -> 0;
            case ReceiverModel.Filter.Lag(double timeConstantS) -> timeConstantS * timeConstantS;
            case ReceiverModel.Filter.MovingAverage(double widthS) -> widthS * widthS / 12;
        };
    }

    private interface Observed {
        double[] of(double[] parameters);
    }

    /// One row of sensitivities a parameter.
    private static double[][] sensitivities(double[] at, Observed observed) {
        double[][] all = new double[ALL][];
        for (int p = 0; p < ALL; p++) {
            double[] more = at.clone();
            double[] less = at.clone();
            more[p] += STEPS[p];
            // No receiver averages over less than nothing.
            less[p] -= p == SMOOTHED ? 0 : STEPS[p];
            double[] high = observed.of(more);
            double[] low = observed.of(less);
            all[p] = new double[high.length];
            for (int i = 0; i < high.length; i++) {
                all[p][i] = (high[i] - low[i]) / (more[p] - less[p]);
            }
        }
        return all;
    }

    /// Rows an epoch, with the noise's own correlation taken out: L⁻¹ of the covariance's Cholesky factor L.
    private static double[][] whitened(double[][] byParameter, ReceiverModel receiver) {
        var noise = receiver.noise();
        int n = byParameter[0].length;
        double[][] factor = new double[n][n];
        double[][] rows = new double[n][ALL];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k <= i; k++) {
                double covariance = noise.correlatedMps()
                        * noise.correlatedMps()
                        * StrictMath.exp(-(i - k) / receiver.rateHz() / noise.correlationS());
                covariance += i == k ? noise.whiteMps() * noise.whiteMps() : 0;
                for (int j = 0; j < k; j++) {
                    covariance -= factor[i][j] * factor[k][j];
                }
                factor[i][k] = i == k ? Math.sqrt(covariance) : covariance / factor[k][k];
            }
            for (int p = 0; p < ALL; p++) {
                double value = byParameter[p][i];
                for (int j = 0; j < i; j++) {
                    value -= factor[i][j] * rows[j][p];
                }
                rows[i][p] = value / factor[i][i];
            }
        }
        return rows;
    }

    /// A stop as a smooth function of its parameters.
    private record Seen(double decelerationMps2, double nominalMps) {
        private static final int POINTS = 24;

        Stop stop(double[] p) {
            double a = decelerationMps2 * StrictMath.exp(p[DECELERATION] + p[OWN_DECELERATION]);
            return new Stop(
                    p[ENTRY], p[DRIFT], p[ONSET], a, p[RISE] * a * a / nominalMps, p[BUILD_UP] + p[OWN_BUILD_UP]);
        }

        double[] shown(double[] p, int epochs, double rateHz) {
            var stop = stop(p);
            double widthS = Math.sqrt(12 * Math.max(0, p[SMOOTHED]));
            double[] shown = new double[epochs];
            for (int i = 0; i < epochs; i++) {
                double timeS = FROM_S + (i + 0.5) / rateHz;
                for (int k = 0; k < POINTS; k++) {
                    shown[i] += stop.speedMps(timeS + widthS * ((k + 0.5) / POINTS - 0.5)) / POINTS;
                }
            }
            return shown;
        }

        /// The forward part of what an accelerometer feels on a bike that dives and swings back.
        double[] felt(double[] p, int readings) {
            var stop = stop(p);
            double[] felt = new double[readings];
            double pitch = -p[DIVE] * p[DRIFT];
            double swing = 0;
            for (int i = 0; i < readings; i++) {
                double timeS = FROM_S + i * INERTIAL_STEP_S - p[CLOCK];
                double half = INERTIAL_STEP_S / 2;
                double ahead = (stop.speedMps(timeS + half) - stop.speedMps(timeS - half)) / INERTIAL_STEP_S;
                swing += (-180 * (pitch + p[DIVE] * ahead) - 14 * swing) * INERTIAL_STEP_S;
                pitch += swing * INERTIAL_STEP_S;
                felt[i] = p[SCALE] * (ahead - GRAVITY_MPS2 * pitch);
            }
            return felt;
        }
    }

    /// Speed over time: steady but for a drift, a deceleration that builds up, and rest.
    private record Stop(double entryMps, double driftMps2, double onsetS, double a, double risePerS, double buildUpS) {
        double speedMps(double timeS) {
            double u = timeS - onsetS;
            if (u <= 0) {
                return entryMps + driftMps2 * u;
            }
            double building = Math.min(u, buildUpS);
            double grown = Math.max(0, u - buildUpS);
            double speed =
                    entryMps - a * building * building / (2 * buildUpS) - a * grown - risePerS * grown * grown / 2;
            return Math.max(0, speed);
        }

        double restS() {
            double low = onsetS;
            double high = onsetS + 10;
            for (int i = 0; i < 40; i++) {
                double middle = (low + high) / 2;
                if (speedMps(middle) > 0) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return high;
        }
    }
}
