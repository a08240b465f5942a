/// The archive: test days and ledgers as they came in, everything that was done to them, and their figures.
///
/// Inputs (files by content hash) and history (append-only) are the truth. A figure is a cache: it names its inputs by
/// hash and can be thrown away and computed again.
///
/// Read in this order: [Archive], [Act], [Revision], [ContentStore], [StoredFigure], [Recomputation], [DayFolders].
///
/// May not know: pages, commands, any trial by name.
@NullMarked
package org.measuredmile.archive;

import org.jspecify.annotations.NullMarked;
