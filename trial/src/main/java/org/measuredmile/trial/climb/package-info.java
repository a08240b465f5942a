/// Climb: the time up a surveyed hill by throttle alone and pedalling, what the wheel gave for it, and what it would
/// have been at reference conditions.
///
/// Read in this order: [Climb] (what is declared), [ClimbRules] (the numbers), [ClimbReduction] (the order of steps),
/// [ClimbSearch] and [TracedClimb] (the passes found), [HandClimb] and [ClimbRun] (what each run gave), [ClimbPower]
/// and [ClimbModel] (the physics), [ClimbFigures], [ReferenceFigures], [PedallingGain], [SteepestStart],
/// [ClimbFindings], [ImpliedLengths] and [GradeAgreement].
///
/// Formula: time between the gates; mean speed = surveyed length / time; wheel power = the hill's, the rolling's, the
/// air's and the speeding-up's energy over the time.
/// Valid: hills of 20 s or more, ridden without a stop.
/// Versions: 1.
///
/// May not know: other trials.
@NullMarked
package org.measuredmile.trial.climb;

import org.jspecify.annotations.NullMarked;
