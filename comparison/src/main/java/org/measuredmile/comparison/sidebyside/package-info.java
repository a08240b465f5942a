/// Side by side: two to six bikes, figure by figure, with their differences and which of them are real.
///
/// Read in this order: [SideBySide], [FigureRow], [Cell], [Difference], [Holm], [Saying], [FactRow].
///
/// May not know: the archive, files, clocks, pages.
/// Source: JCGM 100:2008, 5.2.2 for a difference of two results; Holm (1979) for the many pairs of one row.
@NullMarked
package org.measuredmile.comparison.sidebyside;

import org.jspecify.annotations.NullMarked;
