/// Motion: speed, distance and events out of a recording's channels.
///
/// May not know: trials, files, clocks.
/// Source: docs/handbook; Rauch, Tung and Striebel (1965), AIAA Journal 3(8), for the smoother.
@NullMarked
package org.measuredmile.recording.motion;

import org.jspecify.annotations.NullMarked;
