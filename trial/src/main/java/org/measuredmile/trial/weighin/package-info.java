/// What the bike weighs, with and without its battery, where its weight sits, and what it may still carry.
///
/// Read: [WeighIn], the whole trial. Each placement on the scale is a run: the thing is lifted off and put on again.
/// Formula: mass = calibration factor × mean of the placements' readings; front share = front / (front + rear).
/// May not know: other trials.
@NullMarked
package org.measuredmile.trial.weighin;

import org.jspecify.annotations.NullMarked;
