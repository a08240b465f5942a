/// Braking: how far a bike takes to stop from a stated speed, both brakes, on the level.
@NullMarked
package org.measuredmile.trial.braking;

import org.jspecify.annotations.NullMarked;
