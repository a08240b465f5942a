/// The speed the bike settles at on the level, at each assist level, with the motor off and by throttle.
///
/// Read in this order: [AssistSpeed] (what the trial is), [RecordedLevels] (from a recording to levels),
/// [AnnouncedPlateaus] (where the speed is steady, when the levels were announced), [LevelFigures] (from passes to
/// figures
/// and their budget). Steady pieces that nobody announced, and how well a mean is known when speeds a second apart are
/// alike, come from `recording.motion`.
/// Source: docs/handbook/assistspeed.md.
/// May not know: other trials.
@NullMarked
package org.measuredmile.trial.assistspeed;

import org.jspecify.annotations.NullMarked;
