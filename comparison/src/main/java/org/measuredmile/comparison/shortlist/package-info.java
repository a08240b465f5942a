/// A reader's shortlist: what a bike must do, written as a list of wishes, and of each bike whether it surely does, may
/// do, or does not.
///
/// Read in this order: [WishList], [Wish], [WishTerm], [Shortlist], [Answer], [ClimbingAbility].
///
/// May not know: the archive, files, clocks, pages.
/// Source: JCGM 106:2012, 7.2 for the probability that a limit is kept, with Student's t for few runs (7.2.3).
@NullMarked
package org.measuredmile.comparison.shortlist;

import org.jspecify.annotations.NullMarked;
