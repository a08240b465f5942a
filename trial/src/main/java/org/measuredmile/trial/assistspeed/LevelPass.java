package org.measuredmile.trial.assistspeed;

import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;

/// One passage at one level in one direction: what its speed was and how well its own wander lets it be known.
///
/// Shape: `variant` holds drive and level; `eastShare` and `northShare` are the mean of its unit headings, both 0 where
/// it went all ways alike, and `headingKnown` false where no positions say; `powerW` is the rider's recorded mean
/// power, NaN where none was.
/// Unit: metres per second; degrees of freedom of the wander.
record LevelPass(
        Run run,
        Variant variant,
        double speedMps,
        double wanderMps,
        double degreesOfFreedom,
        SpeedScale scale,
        Heading heading,
        double powerW) {
    /// The mean of the unit headings of what was ridden.
    record Heading(double east, double north, boolean isKnown) {
        static final Heading UNKNOWN = new Heading(0, 0, false);
    }

    String direction() {
        return run.direction();
    }
}
