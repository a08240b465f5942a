/// How the motor sets in and lets go: crank angle and time from the first pedal movement to thrust, time and way from
/// the last one until the thrust is gone.
///
/// Read in this order: [Engagement] (what is asked), [EngagementReduction], [PushFinder] and [TracedPush] (in
/// recordings), [ThrustChange] (the fit), [EngagementRun], [EngagementFigures].
@NullMarked
package org.measuredmile.trial.engagement;

import org.jspecify.annotations.NullMarked;
