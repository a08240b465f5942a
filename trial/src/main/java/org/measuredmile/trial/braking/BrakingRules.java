package org.measuredmile.trial.braking;

import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.Unit;

/// The numbers of the trial's version 1, each with where it comes from.
///
/// Unit: SI; `relative` uncertainties as a share of the value.
final class BrakingRules {
    /// Half-width of the entry-speed window. Source: EN 14766:2005, 4.6.7.5.1.10, II and III (1.5 km/h).
    private static final double WINDOW_MPS = Unit.KILOMETRE_PER_HOUR.toSi(1.5);

    /// Standard acceleration of free fall, m/s². Source: 3rd CGPM (1901).
    static final double GRAVITY_MPS2 = 9.80665;

    /// Under 19 ft from a true 20 mph is beyond the textbook pitch-over limit of an upright bicycle. Source:
    /// practice page of the crew; 0.71 g was the most of eight bicycles in SAE 2020-01-0876 (abstract).
    static final double PITCH_OVER_MPS2 = square(Unit.MILE_PER_HOUR.toSi(20)) / (2 * Unit.FOOT.toSi(19));

    /// Least samples a second of a trace, and the slack for a clock that runs a little slow.
    static final double LEAST_RATE_HZ = 10;

    static final double RATE_SLACK = 1.05;
    /// Least samples between nine tenths of the entry speed and standing.
    static final int LEAST_SAMPLES = 5;
    /// Least time of steady riding before, and at rest after, s.
    static final double STEADY_S = 1.0;

    static final double REST_S = 0.5;
    /// Most change of speed before the brakes, m/s².
    static final double STEADY_MPS2 = 0.6;
    /// A softer stop is no brake test, m/s².
    static final double LEAST_DECELERATION_MPS2 = 1.5;
    /// Longest step in the braking phase, in sample times.
    static final double GAP_STEPS = 1.6;
    /// As many equal speeds in a row say that the receiver holds its last value.
    static final int HELD_SAMPLES = 3;
    /// Above, the model does not describe the run; above the second, its covariance is widened.
    static final double MOST_CHI_SQUARE = 2.5;

    static final double WIDENING_CHI_SQUARE = 1.5;
    /// The stretch that is fitted reaches so far before onset and after rest, s.
    static final double CUT_BEFORE_S = 3.0;

    static final double CUT_AFTER_S = 2.0;

    /// What is known of a stop by a receiver before its samples speak: house values, to be replaced by the crew's
    /// own accelerometer values. The build-up covers about 0.15 to 0.30 s.
    static final StopFit.Priors RECEIVER = new StopFit.Priors(0.225, 0.045, 0.2, 0.4, 0.25, 0.25);

    /// The same by a wheel, whose speed is taken over less time.
    static final StopFit.Priors WHEEL = new StopFit.Priors(0.225, 0.045, 0.2, 0.4, 0.1, 0.08);

    /// Time of a mark against the control's first movement: each run's own error and the part common to all, s.
    /// House.
    static final double MARK_RUN_S = 0.02;

    static final double MARK_COMMON_S = 0.01;
    /// Reading a tape from mark to tyre, m. House.
    static final double TAPE_M = 0.02;
    /// Reading an entry speed, m/s. House.
    static final double ENTRY_MPS = 0.06;
    /// Relative scale of a speed without a calibration: a receiver's, and a wheel's set from a size table. House.
    static final double RECEIVER_SCALE = 0.002;

    static final double WHEEL_SCALE = 0.01;
    /// A road taken for level is so within this slope. House.
    static final double LEVEL_SLOPE = 0.003;

    static final double READ_SLOPE = 0.001;
    /// Relative effect on distance of each metre a second of head wind, and the wind that is feared when none was
    /// written down. Source: 3 m/s about 2.4 %, computed on the crew's practice page.
    static final double PER_WIND_MPS = 0.008;

    static final double UNKNOWN_WIND_MPS = 1.5;
    static final double MOST_WIND_MPS = 3;
    /// How well a stated delay of a receiver behind the lever is known, s.
    static final double STATED_DELAY_SD = 0.02;
    /// A take-up longer than this between control and onset is no take-up, s.
    static final double MOST_TAKE_UP_S = 0.6;

    private BrakingRules() {}

    /// A speed to stop from.
    enum Nominal {
        TWENTY_MPH("20-mph", "20 mph", Unit.MILE_PER_HOUR.toSi(20)),
        TWENTY_FIVE_KMH("25-kmh", "25 km/h", Unit.KILOMETRE_PER_HOUR.toSi(25));

        private final String id;
        private final String words;
        private final double speedMps;

        Nominal(String id, String words, double speedMps) {
            this.id = id;
            this.words = words;
            this.speedMps = speedMps;
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

        /// Entry speeds that count, both ends belonging to it.
        Interval window() {
            return Interval.around(speedMps, WINDOW_MPS);
        }

        static Nominal of(String id) {
            return TWENTY_FIVE_KMH.id.equals(id) ? TWENTY_FIVE_KMH : TWENTY_MPH;
        }
    }

    static double square(double value) {
        return value * value;
    }
}
