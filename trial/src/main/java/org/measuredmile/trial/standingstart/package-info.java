/// Acceleration from rest: the time and distance from a standing start to set speeds, on level
/// ground, both ways, under each declared drive state.
@NullMarked
package org.measuredmile.trial.standingstart;

import org.jspecify.annotations.NullMarked;
