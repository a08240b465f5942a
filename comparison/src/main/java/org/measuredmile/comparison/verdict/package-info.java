/// What the data say of a claim: meets, falls short or can't tell, as measured and at the claim's own
/// conditions.
///
/// Read in this order: [org.measuredmile.comparison.verdict.DecisionRule], the rule;
/// [org.measuredmile.comparison.verdict.ClaimVerdict], what is said of one claim;
/// [org.measuredmile.comparison.verdict.Claims], all of a bike;
/// [org.measuredmile.comparison.verdict.Wording], the sentences.
///
/// May not know: the archive, files, clocks, pages.
/// Source: JCGM 106:2012, evaluation of measurement data, the role of measurement uncertainty in conformity
/// assessment.
@NullMarked
package org.measuredmile.comparison.verdict;

import org.jspecify.annotations.NullMarked;
