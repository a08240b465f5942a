/// What the recordings of one test day say against each other and against the day: the same ride twice, files that
/// overlap, clocks that are apart, dates of another day. Nothing is repaired; what is left out is said.
@NullMarked
package org.measuredmile.recording.check;

import org.jspecify.annotations.NullMarked;
