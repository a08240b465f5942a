/// Coast-down: what holds the bike back, from freewheeling both ways.
@NullMarked
package org.measuredmile.trial.coastdown;

import org.jspecify.annotations.NullMarked;
