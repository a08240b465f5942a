/// Uncertainty budgets: what each input contributes, how they combine, and the interval that follows.
///
/// Read in this order: [Contribution], [Budget], [Uncertainty], [MonteCarlo].
/// Source: JCGM 100:2008 (GUM), clauses 5.1.2 (combination), G.4 (effective degrees of freedom), 7.2.6
/// (reporting).
@NullMarked
package org.measuredmile.quantity.budget;

import org.jspecify.annotations.NullMarked;
