/// The range ride: how far a full battery goes, what each kilometre costs it, and what it would be at reference
/// conditions.
///
/// Read in this order: [Range] (what is asked), [RangeReduction], [RiddenWay] (from recordings or by hand),
/// [EnergyOut] (log, wall or nominal), [EnergyModel] and [ReferenceRatio] (to reference conditions), [EarlyStop],
/// [RangeFigures].
@NullMarked
package org.measuredmile.trial.range;

import org.jspecify.annotations.NullMarked;
