package org.measuredmile.trial.climb;

import org.measuredmile.trial.Scatter;

/// The numbers of the trial, version 1. Those without a source beside them are house values.
///
/// Unit: SI; standard uncertainties.
final class ClimbRules {
    /// A watch started and stopped on sight of the rider at a mark, s a run.
    ///
    /// Source: 0 ± 0.10 s for start and stop together, a published study of hand timing, as the crew's practice
    /// page has it.
    static final double HAND_OWN_S = 0.10;
    /// The part of a reaction that all runs of one watch holder share, s.
    static final double HAND_COMMON_S = 0.05;
    /// A receiver's or wheel's speed that nobody calibrated, relative.
    static final double SPEED_SCALE = 0.003;
    /// A display that nobody calibrated, relative.
    static final double DISPLAY_SCALE = 0.01;
    /// The speed at a gate by a line through the samples within a second of it, m/s.
    static final double END_SPEED_SD = 0.05;
    static final double END_SPEED_HALF_S = 1.5;
    /// The same from positions alone, m/s.
    static final double END_SPEED_BY_FIXES_SD = 0.3;
    /// The speed at an end that nobody wrote down, around the mean, m/s.
    static final double END_SPEED_UNKNOWN_SD = 1.0;
    /// The lowest speed is the lowest mean over so long, s.
    static final double LOWEST_OVER_S = 10;
    /// Noise of such a mean, m/s.
    static final double LOWEST_SD = 0.02;
    /// Before this share of the length the entry speed is still being used up, or the start got over.
    static final double LOWEST_FROM_SHARE = 0.25;
    /// The lowest of many noisy means lies so much too low; it is added. By simulation at a sample a second, m/s.
    static final double LOWEST_TOO_LOW_MPS = 0.007;
    /// A slope that nobody surveyed swells and eases by so much of itself, relative, over so long a wave, m.
    static final double SWELL = 0.15;
    static final double SWELL_WAVE_M = 180;
    /// A shorter climb says little about a hill, s.
    static final double SHORTEST_S = 20;
    /// Wind along a hill that nobody wrote down, m/s.
    static final double WIND_UNKNOWN_SD = 1.5;
    /// What a written wind leaves open at a rider's height and place: at least this, m/s, and a share of it.
    static final double WIND_LEAST_SD = 0.5;
    static final double WIND_SHARE_SD = 0.3;
    static final double MOST_WIND_MPS = 3;
    /// The drive's force near the hill's speed falls as the speed to the power −k: 0 is a force at its limit, 1 a
    /// power at its limit.
    static final double FALL = 1.0;
    static final double FALL_SD = 0.35;
    /// Where assistance ends it does so over this range of speed, m/s.
    static final double TAPER_MPS = 0.8;
    /// Two things that should agree are said not to beyond so many standard uncertainties of their difference.
    static final double DISAGREE_BEYOND = 2.5;
    /// A grade read off a level or a phone, as rise over run.
    static final double GRADE_READ_SD = 0.004;
    /// A length read off a display or a map, relative.
    static final double LENGTH_READ_SD = 0.002;
    /// A height difference between two fixes of a receiver, m.
    static final double RECORDED_RISE_SD = 7;

    /// A drive's strength differs by so much from day to day, relative: what standing starts differ by.
    static final double DRIVE_BETWEEN_DAYS = 0.025;
    /// Of what pedalled climbs differ by between days the part that the motor brings, and the rider's own part.
    static final double MOTORS_PART = 0.8;
    static final double RIDERS_PART = 0.6;
    /// The wind along a hill on the days that crews ride it, m/s.
    static final double WIND_OF_DAYS_SD = 0.75;

    /// Source of the run scatter: riders repeat a time trial or a hill within 1.1 to 1.4 % of its time, as the
    /// crew's practice page has it. Between days the drive's strength and the wind along the hill, both house
    /// values, as a usual hill answers to them; where a rise is known, as that hill does.
    static final Scatter TIME = new Scatter(0.013, 8, 0.034, 12, true);
    static final Scatter LOWEST = new Scatter(0.016, 8, 0.040, 12, true);
    static final Scatter POWER = new Scatter(0.015, 8, 0.025, 8, true);
    /// How much what pedalling gained differs between days where no rise is known, relative to the time by
    /// throttle.
    static final double GAIN_BETWEEN_DAYS = 0.015;

    private ClimbRules() {}
}
