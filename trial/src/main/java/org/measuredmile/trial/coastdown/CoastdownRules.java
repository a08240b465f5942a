package org.measuredmile.trial.coastdown;

import java.util.List;
import org.measuredmile.roadload.Gusts;
import org.measuredmile.roadload.RoadLoad;

/// Limits and house values of the coast-down.
///
/// Source: house values, settled on simulated days, where no other source stands.
final class CoastdownRules {
    /// Least samples a second.
    static final double LEAST_RATE_HZ = 1;
    static final double RATE_SLACK = 1.05;
    /// A coast begins at this speed or above, and is followed down to this one, m/s.
    static final double BEGINS_MPS = 25 / 3.6;
    static final double FOLLOWED_TO_MPS = 6 / 3.6;
    /// Shorter falls of speed are no candidates.
    static final double LEAST_LOSS_MPS = 3;
    static final double SHORTEST_S = 12;
    /// Faster than this is a brake, m/s²; this much upwards is a pedal or a push.
    static final double BRAKED_MPS2 = 0.9;
    static final double PUSHED_MPS2 = 0.08;
    /// The slope is that of a line over this time, s; what a change of slope blurs is cut off at both ends.
    static final double SLOPE_OVER_S = 3;
    static final double TRIM_S = 1.0;
    /// Both coefficients need speeds this far apart, down to this speed.
    static final double LEAST_SPEED_RATIO = 2.8;
    static final double LOWEST_AT_MOST_MPS = 12.5 / 3.6;
    static final double GAP_STEPS = 3;
    /// Samples are averaged over so long, s, less what rounding of times takes.
    static final double AVERAGED_OVER_S = 0.499;
    /// Standard deviation of a receiver's mean over that time, gusts apart, m/s.
    static final double SAMPLE_SD_MPS = 0.06;
    /// A display's speed at the moment it is read has no error beside its scale and the watch's; no 0, for the
    /// equations' sake. m/s.
    static final double AS_SHOWN_MPS = 0.001;
    /// What is known beforehand of the wind along the road, m/s: so little that it is not pulled to nothing.
    static final double WIND_SD_MPS = 5;
    /// Gusts along a road on a day of less than 3 m/s of wind, and how the mean differs from run to run.
    static final Gusts GUSTS = new Gusts(0.4, 8, 0.4);
    /// Standard deviation of a sample against the equation of motion as if gusts left no trace, m/s.
    static final double ANY_SD_MPS = 0.10;
    /// A bike that coasts slows at least so much, m/s², for what a watch's error comes to.
    static final double LEAST_FALL_MPS2 = 0.03;
    /// What gusts and watches meet before anything is found.
    static final RoadLoad USUAL_LOAD = new RoadLoad(0.009, 0.6);
    /// Above, a pair is not two coasts under one wind.
    static final double MOST_CHI_SQUARE = 12;
    static final double MOST_WIND_MPS = 3;
    static final double MOST_MEASURED_WIND_MPS = 3;
    /// Beyond these no bike on a road has been.
    static final double LEAST_ROLLING = 0.002;
    static final double MOST_ROLLING = 0.03;
    static final double LEAST_DRAG_AREA_M2 = 0.2;
    static final double MOST_DRAG_AREA_M2 = 1.2;
    /// Mean square of what the wind departs from the day's, by gusts and from run to run as in [#GUSTS]: it adds to
    /// the drag as if it were rolling. (m/s)², and its standard deviation.
    static final double GUSTS_M2PS2 = GUSTS.sdMps() * GUSTS.sdMps() + GUSTS.changeMps() * GUSTS.changeMps();
    static final double GUSTS_SD_M2PS2 = 0.12;
    /// Relative scale of a speed without a calibration.
    static final double RECEIVER_SCALE = 0.002;
    static final double WHEEL_SCALE = 0.01;
    /// Timed by hand between shown speeds: standard deviation of a time, s, and of the display's own lag
    /// between its two readings, which mostly cancels.
    static final double HAND_S = 0.15;
    /// What such a split does to a pair's coefficients and force, relative standard deviations.
    static final double HAND_ON_ROLLING = 0.081;
    static final double HAND_ON_AREA = 0.045;
    /// The force's, at each of the speeds that it is told for: least where rolling and air make up for each
    /// other.
    static final List<Double> HAND_ON_FORCE = List.of(0.012, 0.012, 0.022, 0.035);

    private CoastdownRules() {}
}
