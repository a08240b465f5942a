/// Standings: where each bike's result lies in a stated population, and how much of that order the data support.
///
/// Read in this order: [Population] and [Band], [Entrant] and [Traits], [Standing], [StandingRow], [Ties],
/// [Percentile], [Spread], [Contrast] and [Neighbours], [RankDraws], [DrawColumns], [DrawOrder], [Beating].
///
/// May not know: the archive, files, clocks, pages.
/// Source: docs/handbook; JCGM 100:2008 for the difference of two results, JCGM 101:2008 for the draws.
@NullMarked
package org.measuredmile.comparison.standing;

import org.jspecify.annotations.NullMarked;
