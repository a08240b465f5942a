/// Braking: how far a bike takes to stop from a stated speed, both brakes, on level road.
///
/// Read in this order: [Braking] (what is declared), [BrakingRules] (the numbers), [BrakingReduction] (the order of
/// steps), [StopFinder] and [TracedStop] (the stops found), [StopFit] and [StopCurve] (the model),
/// [BrakingFigures] and [BrakingBudget], [BrakingFindings].
///
/// Formula: corrected = S · (v_n/v_0)² (EN 14766:2005, 4.6.7.5.1.9); the model of a stop in [StopCurve].
/// Valid: entry speed within 1.5 km/h of nominal; traces of 10 Hz or more; one brake application.
/// Versions: 1.
///
/// May not know: other trials.
@NullMarked
package org.measuredmile.trial.braking;

import org.jspecify.annotations.NullMarked;
