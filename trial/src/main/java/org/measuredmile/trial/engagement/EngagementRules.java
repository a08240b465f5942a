package org.measuredmile.trial.engagement;

/// The numbers that the trial's current version works with.
///
/// Source: house values, no published source.
final class EngagementRules {
    /// Cranks that turn slower than this stand, revolutions a second.
    static final double STILL_HZ = 0.03;
    /// The cranks must have stood so long before, and turned so long, s.
    static final double STOOD_S = 1.0;

    static final double TURNED_S = 1.5;
    /// What is looked at before and after the cranks change, s.
    static final double BEFORE_S = 0.8;

    static final double AFTER_S = 3.0;
    /// The least rates, samples a second.
    static final double LEAST_ACCELERATION_HZ = 20;

    static final double LEAST_CRANK_HZ = 5;
    static final double RATE_SLACK = 1.05;
    /// A thrust that changes less than this cannot be told from the rider's own push, m/s².
    static final double LEAST_CHANGE_MPS2 = 0.12;
    /// Nor one that stands less than so many standard uncertainties out of the noise.
    static final double LEAST_SIGNIFICANCE = 6;
    /// The rider's own push comes and goes within this, s.
    static final double PUSH_S = 0.15;
    /// A motor's thrust comes or goes within these, s.
    static final double[] RAMPS_S = {0.02, 0.06, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55};
    /// A clock of a camera or a hand: one frame either way is in the reading's own resolution.
    static final double HAND_S = 0.10;
    /// So many times the spread over the grid is a fit's standard uncertainty: simulated pushes were that much
    /// further off than the spread, which takes the shaking for white and the list of ramps for all there are.
    static final double WIDER_THAN_GRID = 1.15;
    /// Relative scale of a speed that nobody calibrated.
    static final double SPEED_SCALE = 0.01;
    /// What a motor's push, less what holds the bike back, comes to over an overrun as a steady acceleration.
    static final double PUSHED_ON_MPS2 = 0.75;
    static final double PUSHED_ON_SD_MPS2 = 0.25;
    /// The scatter of the overrun's distance is told for this speed, m/s: it is the time's, and goes with speed.
    static final double USUAL_MPS = 3;

    private EngagementRules() {}
}
