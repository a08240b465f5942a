/// The trial contract: what a trial declares once, what it is given, and what it gives back.
///
/// Read in this order: [Trial], [Declaration], [TrialInput], [Outcome], [Figure], [RunResult], [Trials].
/// Forms, tables, CSV, JSON, handbook pages and the vocabulary of prose follow from the declaration; nothing outside
/// a trial's own package knows it by name.
///
/// May not know: files, clocks, frameworks, the archive, and (for each trial) the other trials.
@NullMarked
package org.measuredmile.trial;

import org.jspecify.annotations.NullMarked;
