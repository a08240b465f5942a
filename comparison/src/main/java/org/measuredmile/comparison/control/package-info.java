/// What days and testers do to a figure: the control bike, ridden again and again, day by day on a chart
/// with limits, and the standard deviations between testers and between days.
///
/// Read in this order: [ControlDay], [ControlChart]; then [Observation], [DayAndTester], [AgainstControl],
/// and below them [MixedModel], [Reml], [SequentialSquares] and [RandomEffects].
///
/// The formulas: limits at the mean ± 2.66 times the mean moving range (3/1.128); components of variance by
/// restricted maximum likelihood, bikes fixed, testers and days random, and by sequential sums of squares,
/// which also say whether a component can be estimated at all. A component of zero is an answer. Testers
/// are known by their codes, and nothing here tells one tester's effect.
///
/// May not know: the archive, files, clocks, pages, names of people.
/// Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2 (individuals chart and rules); ISO
/// 7870-2, from memory; the criterion as in Bates, Mächler, Bolker and Walker, Journal of Statistical
/// Software 67 (2015), section 3.
@NullMarked
package org.measuredmile.comparison.control;

import org.jspecify.annotations.NullMarked;
