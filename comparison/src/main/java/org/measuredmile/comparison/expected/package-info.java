/// Expected-value lines: what a bike could be expected to do for what it carries, and which bikes do
/// otherwise.
///
/// Read in this order: [Lines] (which there are), [ExpectedLine] and [Coordinate] (how one is declared),
/// [Expectation] (what comes of it), [JudgedBike], and below them [TheilSen], [RobustScale] and [Band].
///
/// The formulas: the slope is the median of all slopes between two bikes; its interval comes from Kendall's
/// count of concordant pairs; the band for a further bike is the robust scale of the residuals, widened for
/// what is not known of the line, times Student's t. A line ends where its bikes end.
///
/// May not know: the archive, files, clocks, pages.
/// Source: Sen, Journal of the American Statistical Association 63 (1968) 1379–1389; Rousseeuw and Croux,
/// ibid. 88 (1993) 1273–1283; the band's degrees of freedom by simulation of our own (`BandPropertyTest`).
@NullMarked
package org.measuredmile.comparison.expected;

import org.jspecify.annotations.NullMarked;
