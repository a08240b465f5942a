package org.measuredmile.trial.standingstart;

import java.util.Optional;
import org.measuredmile.quantity.Unit;

/// The numbers of the trial's version 1, each with where it comes from. Where nothing is said they are
/// the house's own, no published source.
///
/// Unit: SI; relative uncertainties as a share of the value.
final class StandingStartRules {
    /// Least samples a second, and the slack for a clock that runs a little slow. Slow receivers also lag: by up
    /// to 2.16 s at one sample a second.
    static final double LEAST_RATE_HZ = 5;
    static final double RATE_SLACK = 1.05;
    /// At or below this a bike counts as standing; a satellite speed below it says nothing.
    static final double REST_MPS = 0.5;
    /// Least time at rest before the start, s.
    static final double REST_S = 1.0;
    /// A bike that was no faster for so long after its rest, s, crept before it went.
    static final double CREEPS_MPS = 1.0;

    static final double CREEPS_S = 1.0;
    /// The start is fitted from so long before to the sample that first exceeds this speed.
    static final double CUT_BEFORE_S = 3.0;
    static final double CUT_MPS = 3.5;
    /// A rise from a speed above this is riding, and no candidate at all.
    static final double SLOW_MPS = 2.0;
    static final int FEWEST_SAMPLES = 4;
    /// Longest time from the end of rest to [#CUT_MPS], s.
    static final double LONGEST_START_S = 12;
    /// Most that the speed may fall back below [#CUT_MPS], m/s.
    static final double FALL_BACK_MPS = 0.35;
    /// A fall of so much ends the run, m/s.
    static final double RUN_ENDS_MPS = 1.0;
    /// Longest step between samples, in sample times.
    static final double GAP_STEPS = 1.6;
    /// Above, the model does not describe the start; above the second, its covariance is widened.
    static final double MOST_CHI_SQUARE = 2.5;
    static final double WIDENING_CHI_SQUARE = 1.5;
    /// Least acceleration at a speed whose time is asked for, m/s².
    static final double LEAST_SLOPE_MPS2 = 0.1;
    /// What is known of every start before its samples speak.
    static final double BUILD_UP_S = 0.40;
    static final double BUILD_UP_SD = 0.12;
    /// The first movement lies so long before the last sample at rest.
    static final double MOVES_BEFORE_S = 0.4;
    static final double MOVES_BEFORE_SD = 0.5;
    static final double FADE_MPS3 = 0.10;
    static final double FADE_SD = 0.15;
    /// The part of a receiver's noise that a second of samples does not average out, m/s.
    static final double SLOW_NOISE_MPS = 0.05;
    /// How long it lasts, s.
    static final double NOISE_LASTS_S = 0.4;
    /// What an unknown filter of the receiver adds to a time; a delay alone cancels, s.
    static final double FILTER_S = 0.02;
    static final double DISTANCE_FILTER_S = 0.002;
    /// What a filter does to a force or a power that is fitted, relative.
    static final double FORCE_FILTER = 0.005;
    /// Relative scale of a speed without a calibration: a receiver's, and a wheel's set from a size table.
    static final double RECEIVER_SCALE = 0.002;
    static final double WHEEL_SCALE = 0.01;
    /// A stopwatch from first movement to a shown speed: each run's own error. Source: start and stop together 0 ±
    /// 0.10 s, published study of hand timing, from the crew's practice page.
    static final double HAND_RUN_S = 0.10;
    /// The same, common to all runs of a timekeeper; and the display that shows a speed late, s.
    static final double HAND_COMMON_S = 0.05;
    static final double DISPLAY_LATE_S = 0.20;
    /// A road taken for level is so within this slope.
    static final double LEVEL_SLOPE = 0.003;
    /// Standard acceleration of free fall, m/s². Source: 3rd CGPM (1901).
    static final double GRAVITY_MPS2 = 9.80665;
    /// Change of acceleration for each metre a second of speed and of wind along the road, 1/m: ρ·C_dA/m of a
    /// rider of 80 kg on a bike of 28 kg.
    static final double DRAG_PER_M = 0.0064;
    /// Deceleration by rolling, m/s²: 0.009 of the weight, what is usual of a tyre of unknown width, over the
    /// mass with its turning wheels.
    static final double ROLLING_MPS2 = 0.086;
    /// Wind along the road: feared when none was written down, and the share of a written one.
    static final double UNKNOWN_WIND_MPS = 1.5;
    static final double ALONG_SHARE = 0.7;
    static final double MOST_WIND_MPS = 3;
    /// Relative, when the state of charge was not written down.
    static final double UNKNOWN_CHARGE = 0.01;
    /// Averaging time of the highest speed and of the peak power, and of the stretch that says where the peak
    /// is, s.
    static final double MEAN_OVER_S = 2.0;
    static final double PEAK_WITHIN_S = 4.0;
    /// The highest of several noisy means is still so much too high, relative; it is taken off. By simulation at
    /// ten samples a second.
    static final double PEAK_TOO_HIGH = 0.008;
    /// Acceleration at a speed as a share of the mean one until then, where only a watch was used: at rest, and at
    /// 10, 15 and 20 mph.
    static final double AT_REST_SHARE = 1.4;

    private StandingStartRules() {}

    /// A speed to reach.
    enum Target {
        TEN("10-mph", "10 mph", 10, 0.5, 0.85),
        FIFTEEN("15-mph", "15 mph", 15, 0.7, 0.6),
        TWENTY("20-mph", "20 mph", 20, 1.0, 0.4);

        private final String id;
        private final String words;
        private final double speedMps;
        private final double halfWindowS;
        private final double slopeShare;

        Target(String id, String words, double mph, double halfWindowS, double slopeShare) {
            this.id = id;
            this.words = words;
            this.speedMps = Unit.MILE_PER_HOUR.toSi(mph);
            this.halfWindowS = halfWindowS;
            this.slopeShare = slopeShare;
        }

        String id() {
            return id;
        }

        String words() {
            return words;
        }

        double speedMps() {
            return speedMps;
        }

        /// Samples so far to either side of the crossing make its parabola.
        double halfWindowS() {
            return halfWindowS;
        }

        double slopeShare() {
            return slopeShare;
        }

        static Optional<Target> of(String id) {
            return java.util.Arrays.stream(values())
                    .filter(one -> one.id.equals(id))
                    .findFirst();
        }
    }
}
