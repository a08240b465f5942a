/// Recordings: what an instrument wrote, as channels on a time base, with everything the tool noticed about it.
///
/// Read in this order: [Recording], [Channel], [ChannelKind], [Segment], [Finding], [Place], [Inspection].
///
/// May not know: files (bytes come in as streams), clocks, frameworks, trials.
@NullMarked
package org.measuredmile.recording;

import org.jspecify.annotations.NullMarked;
