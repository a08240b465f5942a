/// Small-sample statistics that the trials share: means and scatter, Student's t, moderated scatter, seeded
/// draws.
@NullMarked
package org.measuredmile.quantity.statistics;

import org.jspecify.annotations.NullMarked;
