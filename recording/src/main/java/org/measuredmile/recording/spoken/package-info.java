/// What was said in a clip: numbers in words or digits, with the time they were said, as candidates for readings; and
/// the offset between the clip's clock and a recording's, by the speeds that both have.
///
/// Read in this order: [SpokenReading], [SpokenReadings], [CameraOffset], [SpokenAgainstTrace]. English only.
///
/// May not know: files, clocks, frameworks, trials. Nothing here becomes a reading without a person.
@NullMarked
package org.measuredmile.recording.spoken;

import org.jspecify.annotations.NullMarked;
