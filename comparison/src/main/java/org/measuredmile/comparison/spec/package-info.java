/// The specification of a bike, line by line: what is claimed, what was seen on it, what was measured.
///
/// Read in this order: [SpecItem] (the items known, with their order, kind and band), [ClaimText] (what a line claims),
/// [Wanted] (what the figure would have to be), [SpecSlip] (what can be wrong with a line), [SpecSheet] (all lines with
/// their status), [Markings] (what the bike itself says), [TyreSize].
///
/// Source: what a line of spec.csv holds stands in docs/formats/bike.md.
///
/// May not know: the archive, files, clocks, pages.
@NullMarked
package org.measuredmile.comparison.spec;

import org.jspecify.annotations.NullMarked;
