package org.measuredmile.recording.motion;

import org.measuredmile.recording.Channel;

/// How an accelerometer sits on the bike: which way is up, which way is forward, and by how much the receiver's speed
/// comes later than it.
///
/// Up is where gravity points in the rests; forward is where, across that, the accelerations go with the rate of the
/// receiver's own speed; the lag is the one at which they go together best.
/// Unit: directions of length 1 in the instrument's axes; seconds; `share` of the rate's variance that the
/// accelerations explain.
public sealed interface Mounting {
    /// A worse likeness of acceleration and rate of speed is refused.
    double LEAST_SHARE = 0.5;
    /// Gravity may turn by this much between rests: the road's slope and the stand do that.
    double MOST_TURN_DEGREES = 4;

    /// A mounting that was found.
    record Known(double[] up, double[] forward, double lagS, double share) implements Mounting {}

    /// None, and why.
    record Refused(String reason) implements Mounting {}

    /// From a stretch that holds changes of speed and at least one rest.
    static Mounting of(Accelerations accelerations, Channel speed) {
        return new MountingSearch(accelerations, speed).found();
    }
}
