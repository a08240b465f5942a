/// Standing start: the time and distance from rest to set speeds, on level ground, both ways, under each
/// declared drive.
///
/// Read in this order: [StandingStart] (what is declared), [StandingStartRules] (the numbers),
/// [StandingStartReduction] (the order of steps), [StartFinder] and [TracedStart] (the starts found), [StartFit],
/// [StartCurve] and [StartTimes] (the model and the crossings), [StartRun], [StandingStartFigures],
/// [StandingStartBudget], [StartPower], [ThrustFit] and [StartThrust] (launch force and power limit), [StartModel] and
/// [StartAtReference], [StandingStartFindings].
///
/// Formula: time = crossing of the speed by a local parabola less the fitted first movement.
/// Valid: traces of 5 Hz or more from a second at rest; by hand at any speed that a display shows.
/// Versions: 1.
///
/// May not know: other trials.
@NullMarked
package org.measuredmile.trial.standingstart;

import org.jspecify.annotations.NullMarked;
