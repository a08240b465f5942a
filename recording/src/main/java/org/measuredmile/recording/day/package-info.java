/// The crew's nouns: bike, configuration, test day, run, reading, instrument, course, rider, claim; and the plain files
/// they are kept in. Nothing here judges.
///
/// Read in this order: [TestDay], [Run], [Variant], [Reading], [Bike], [DayFolder], [DayReader], [DayFault],
/// [DayWriter], [DayEdit], [LedgerReader].
/// File formats: docs/formats/test-day.md, bike.md, course.md, ledger.md.
///
/// May not know: trials, figures, where the files lie.
@NullMarked
package org.measuredmile.recording.day;

import org.jspecify.annotations.NullMarked;
